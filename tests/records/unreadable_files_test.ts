import { deepEqual } from "node:assert/strict";
import { unreadableFiles } from "sagbook/records/unreadable_files.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { withFolder } from "./_bench_of_cases.ts";

Deno.test("unreadableFiles() tells of files what readPieceFolder() tells when it reads them", async () => {
  const header = "session,zeroing,zone,reading\nS1,1,centre,0.715\n";
  await withFolder({ files: { "readings.csv": header } }, async (path) => {
    deepEqual(await unreadableFiles(path), []);
    await Deno.mkdir(`${path}/sheets/evening.csv`, { recursive: true });
    await Deno.writeTextFile(`${path}/sheets/empty.csv`, "");
    const { problems } = await readPieceFolder(path);
    const shut = problems.filter(({ code }) => code === "unreadable");
    deepEqual(await unreadableFiles(path), shut);
    deepEqual(shut.map(({ file }) => file), ["sheets/evening.csv"]);
  });
});
