import { deepEqual, equal, rejects } from "node:assert/strict";
import { checkCellsOnce } from "sagbook/cells/check_cells_once.ts";

/** A checker that cannot be started: whoever asks it fails. */
const BROKEN = { folder: "file:///n/", program: "/no/such/program" };
const WORKING = { folder: "file:///n/" };

async function memory() {
  const folder = await Deno.makeTempDir();
  const library = `${folder}/library`;
  await Deno.mkdir(`${library}/deep`, { recursive: true });
  await Deno.writeTextFile(`${library}/deep/a.ts`, "1");
  return { folder: `${folder}/marks`, dependsOn: [library] };
}

Deno.test("checkCellsOnce() asks again when cells, library or runtime differ, and only then", async () => {
  const where = await memory();
  const cells = ["const a = 1;", "a + 1"];
  deepEqual(await checkCellsOnce(cells, WORKING, where), [[], []]);
  deepEqual(await checkCellsOnce(cells, BROKEN, where), [[], []]);
  await rejects(checkCellsOnce(["const a = 2;", "a + 1"], BROKEN, where));
  await Deno.writeTextFile(`${where.dependsOn[0]}/deep/a.ts`, "12");
  await rejects(checkCellsOnce(cells, BROKEN, where));
  await checkCellsOnce(cells, WORKING, where);
  await checkCellsOnce(cells, BROKEN, where);
  await Deno.writeTextFile(`${where.dependsOn[0]}/b.ts`, "");
  await rejects(checkCellsOnce(cells, BROKEN, where));
});

Deno.test("checkCellsOnce() remembers nothing that has not passed, and no cell with a file beside it", async () => {
  const where = await memory();
  const [found] = await checkCellsOnce(
    ["const a: string = 1;"],
    WORKING,
    where,
  );
  equal(found[0].code, 2322);
  await rejects(checkCellsOnce(["const a: string = 1;"], BROKEN, where));
  await rejects(checkCellsOnce(["import './own.ts'"], BROKEN, where));
});
