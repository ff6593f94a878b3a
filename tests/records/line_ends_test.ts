import { deepEqual, ok } from "node:assert/strict";
import { formatNotebook } from "sagbook/notebook/format_notebook.ts";
import { parseNotebook } from "sagbook/notebook/parse_notebook.ts";
import { readFolderFinished } from "sagbook/records/read_folder_finished.ts";
import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { copyPiece, ROOT } from "../tasks/_run_task.ts";

/** What an editor of another system makes of a text. */
const SAVED: Readonly<Record<string, (text: string) => string>> = {
  "carriage return and line feed": (text) => text.replaceAll("\n", "\r\n"),
  "the same with a byte order mark": (text) =>
    "\ufeff" + text.replaceAll("\n", "\r\n"),
  "no end of the last line": (text) => text.replace(/\n$/, ""),
};

async function resave(folder: string, change: (text: string) => string) {
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    const path = `${folder}/${name}`;
    if (isDirectory) await resave(path, change);
    else await Deno.writeTextFile(path, change(await Deno.readTextFile(path)));
  }
}

Deno.test("readPieceFolder(), readFolderWorkLog() and readFolderFinished() read the same however lines end", async () => {
  const all = async (folder: string) => ({
    piece: { ...await readPieceFolder(folder), path: "" },
    work: await readFolderWorkLog(folder),
    finished: await readFolderFinished(folder),
  });
  for (const name of ["inch-200", "history-300", "gauge-study"]) {
    const plain = await all(`${ROOT}data/${name}`);
    ok(plain.piece.readings.length > 0);
    for (const [how, change] of Object.entries(SAVED)) {
      const folder = await copyPiece(name);
      try {
        await resave(folder, change);
        deepEqual(await all(folder), plain, `${name}: ${how}`);
      } finally {
        await Deno.remove(folder, { recursive: true });
      }
    }
  }
});

Deno.test("readFolderFinished() reads a shop's list the same however lines end", async () => {
  const plain = await readFolderFinished(`${ROOT}data/shop-twelve`);
  for (const [how, change] of Object.entries(SAVED)) {
    const folder = await copyPiece("shop-twelve");
    try {
      await resave(folder, change);
      deepEqual(await readFolderFinished(folder), plain, how);
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  }
});

Deno.test("parseNotebook() reads a notebook file the same however its lines end", async () => {
  const path = `${ROOT}notebooks/session.ipynb`;
  const text = await Deno.readTextFile(path);
  const { notebook } = await parseNotebook(text, path);
  for (const [how, change] of Object.entries(SAVED)) {
    const again = await parseNotebook(change(text), path);
    deepEqual(again.notebook, notebook, how);
    deepEqual(formatNotebook(again.notebook), formatNotebook(notebook), how);
  }
});
