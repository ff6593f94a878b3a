import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { readFolderFinished } from "sagbook/records/read_folder_finished.ts";
import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { HISTORY_FOLDERS, historyFiles } from "sagbook/tasks/_demo_history.ts";
import { ROOT } from "./_run_task.ts";

Deno.test("historyFiles() makes the committed histories and shops again, byte by byte", async () => {
  for (const folder of HISTORY_FOLDERS) {
    for (const [path, text] of historyFiles(folder)) {
      equal(
        await Deno.readTextFile(`${ROOT}data/${folder}/${path}`),
        text,
        path,
      );
      if (path.endsWith(".json")) ok(/invented/i.test(text), path);
    }
  }
});

Deno.test("historyFiles() makes folders that are read without a refusal", async () => {
  for (const folder of HISTORY_FOLDERS.filter((f) => f.startsWith("history"))) {
    const path = `${ROOT}data/${folder}`;
    const { piece, lines, problems } = await readPieceFolder(path);
    equal(piece.invented, true);
    equal(lines.reported, 0);
    deepEqual(problems.filter(({ severity }) => severity !== "note"), []);
    const log = await readFolderWorkLog(path, "mm");
    equal(log.lines.reported, 0);
    ok(log.entries.length >= 13);
  }
  const twelve = await readFolderFinished(`${ROOT}data/shop-twelve`);
  equal(twelve.pieces.length, 12);
  equal(twelve.lines.reported, 0);
  const two = await readFolderFinished(`${ROOT}data/shop-two`);
  equal(two.pieces.length, 2);
});

Deno.test("historyFiles() refuses a folder it does not know", () => {
  throws(() => historyFiles("none"), {
    name: "RangeError",
    message:
      "Cannot make a history as its folder must be one of history-300, history-300-before, shop-twelve, shop-two: current value is none",
  });
});
