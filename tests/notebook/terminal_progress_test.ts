import { equal } from "node:assert/strict";
import { type RunProgress, terminalProgress } from "sagbook/notebook/mod.ts";

const told: RunProgress[] = [
  { cell: 1, of: 3, state: "skipped", seconds: 0 },
  { cell: 2, of: 3, state: "running", seconds: 0 },
  { cell: 2, of: 3, state: "done", seconds: 0.26 },
  { cell: 3, of: 3, state: "running", seconds: 0 },
  { cell: 3, of: 3, state: "failed", seconds: 61.04 },
];

function shown(isTerminal: boolean): string {
  let text = "";
  const listen = terminalProgress((more) => text += more, isTerminal);
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
