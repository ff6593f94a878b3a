import { equal } from "node:assert/strict";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";

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
