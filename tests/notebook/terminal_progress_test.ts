import { equal, ok } from "node:assert/strict";
import { type RunProgress, terminalProgress } from "sagbook/notebook/mod.ts";

const told: RunProgress[] = [
  { cell: 1, of: 3, state: "skipped", seconds: 0 },
  { cell: 2, of: 3, state: "running", seconds: 0 },
  { cell: 2, of: 3, state: "done", seconds: 0.26 },
  { cell: 3, of: 3, state: "running", seconds: 0 },
  { cell: 3, of: 3, state: "failed", seconds: 61.04 },
];

function shown(isTerminal: boolean, columns = 0): string {
  let text = "";
  const listen = terminalProgress(
    (more) => text += more,
    isTerminal,
    () => columns,
  );
  told.forEach(listen);
  return text;
}

Deno.test("terminalProgress() writes a line for each cell that has ended to a file", () => {
  equal(
    shown(false),
    "cell 1 of 3: left out\ncell 2 of 3: done in 0.3 s\ncell 3 of 3: failed after 61.0 s\n",
  );
});

Deno.test("terminalProgress() writes over one line on a terminal and keeps the failure", () => {
  const lines = shown(true).split("\n");
  equal(lines.length, 2);
  equal(lines[0].split("\r\x1b[K").at(-1), "cell 3 of 3: failed after 61.0 s");
});

Deno.test("terminalProgress() breaks no line that is written over, however narrow the terminal, and cuts none where the width is not known", () => {
  for (const columns of [1, 2, 20, 80]) {
    const [changing] = shown(true, columns).split("cell 3 of 3: failed");
    for (const line of changing.split("\r\x1b[K")) {
      ok(line.length < columns, `${columns}: ${line}`);
    }
  }
  ok(shown(true, 0).includes("cell 2 of 3: running …"));
});
