import { deepEqual, equal, rejects } from "node:assert/strict";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
import { writeTextAtomically } from "sagbook/notebook/write_text_atomically.ts";

const listed = (folder: string) =>
  Array.from(Deno.readDirSync(folder), (entry) => entry.name).sort();

Deno.test("writeTextAtomically() replaces a file, keeps its mode and leaves no other", async () => {
  const folder = await Deno.makeTempDir();
  const path = `${folder}/a.html`;
  await Deno.writeTextFile(path, "old");
  await Deno.chmod(path, 0o640);
  await writeTextAtomically(path, "new — ½");
  equal(await Deno.readTextFile(path), "new — ½");
  equal((await Deno.stat(path)).mode! & 0o777, 0o640);
  deepEqual(listed(folder), ["a.html"]);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("writeTextAtomically() leaves nothing behind when the rename fails", async () => {
  const folder = await Deno.makeTempDir();
  await Deno.mkdir(`${folder}/a.html/full`, { recursive: true });
  await rejects(() => writeTextAtomically(`${folder}/a.html`, "new"));
  deepEqual(listed(folder), ["a.html"]);
  await rejects(() => writeTextAtomically(`${folder}/none/a.html`, "new"));
  await Deno.remove(folder, { recursive: true });
});

Deno.test("writeNotebook() shows a reader the old file or the new one, never a part", async () => {
  const folder = await Deno.makeTempDir();
  const path = `${folder}/a.ipynb`;
  const notebook = (source: string) => ({
    metadata: {},
    cells: [{ cell_type: "raw" as const, id: "a", metadata: {}, source }],
  });
  const texts = ["x".repeat(3e6), "y".repeat(2e6)];
  await writeNotebook(path, notebook(texts[0]));
  let writing = true;
  const writer = (async () => {
    for (let i = 1; i <= 10; i++) {
      await writeNotebook(path, notebook(texts[i % 2]));
    }
    writing = false;
  })();
  while (writing) {
    const { cells } = JSON.parse(await Deno.readTextFile(path));
    equal(texts.includes(cells[0].source[0]), true);
  }
  await writer;
  await Deno.remove(folder, { recursive: true });
});
