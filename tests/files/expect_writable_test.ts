import { deepEqual, rejects } from "node:assert/strict";
import { expectWritable } from "sagbook/files/expect_writable.ts";

Deno.test("expectWritable() makes the folder, leaves nothing in it, and says why it cannot", async () => {
  const path = await Deno.makeTempDir();
  await expectWritable(`${path}/a/report`, "the report");
  deepEqual([...Deno.readDirSync(`${path}/a/report`)], []);
  await Deno.writeTextFile(`${path}/file`, "");
  await rejects(
    expectWritable(`${path}/file`, "the page"),
    /Cannot write the page as \S+\/file must be a folder that can be written: there is something of that name already \(.*\)\. Nothing was changed\. Rename it/,
  );
  await Deno.remove(path, { recursive: true });
});
