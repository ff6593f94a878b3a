import { equal } from "node:assert/strict";
import { TaskProgress } from "../../lib/tasks/_task_progress.ts";

/** What a task writes that takes some seconds, told at each of them. */
function written(
  isTerminal: boolean,
  moments: readonly (readonly [number, (progress: TaskProgress) => void])[],
  columns = 80,
): string {
  let text = "";
  let time = 5_000;
  const progress = new TaskProgress({
    write: (more) => text += more,
    isTerminal,
    columns: () => columns,
    now: () => time,
  });
  for (const [at, tell] of moments) {
    time = 5_000 + at;
    tell(progress);
  }
  progress.end();
  return text;
}

const CLEAR = "\r\x1b[K";

Deno.test("TaskProgress says nothing of what takes less than a second", () => {
  for (const isTerminal of [true, false]) {
    equal(
      written(isTerminal, [
        [0, (progress) => progress.part("piece 1 of 2, disc")],
        [900, (progress) => progress.tell("cell 1 of 9")],
      ]),
      "",
    );
  }
});

Deno.test("TaskProgress writes over one line of a terminal, cut to its width, and takes it away", () => {
  equal(
    written(true, [
      [0, (progress) => progress.part("piece 1 of 2, disc")],
      [1_500, (progress) => progress.tell("cell 2 of 9")],
      // Too soon after the last to be read.
      [1_550, (progress) => progress.tell("cell 3 of 9")],
      [4_000, (progress) => progress.part("piece 2 of 2, lens")],
    ], 26),
    `${CLEAR}piece 1 of 2, disc: cell ${CLEAR}piece 2 of 2, lens${CLEAR}`,
  );
});

Deno.test("TaskProgress tells the seconds of a part, and clears the line for words that stay", () => {
  equal(
    written(true, [
      [0, (progress) => progress.tell("readings.csv 40 %")],
      [3_200, (progress) => progress.tell("readings.csv 80 %")],
      [3_300, (progress) => progress.clear()],
    ]),
    `${CLEAR}readings.csv 80 %: 3 s${CLEAR}`,
  );
});

Deno.test("TaskProgress writes a line to a log after 30 s, 60 s, 120 s and so on", () => {
  const text = written(
    false,
    Array.from({ length: 200 }, (_, second) => [
      1_000 * second,
      (progress) => progress.part(`piece ${second} of 200`),
    ]),
  );
  equal(
    text,
    "piece 30 of 200 (30 s)\npiece 60 of 200 (60 s)\npiece 120 of 200 (120 s)\n",
  );
});

Deno.test("TaskProgress writes control codes of a name as text", () => {
  equal(
    written(true, [[2_000, (progress) => progress.part("disc\x1b[2J\nx")]]),
    `${CLEAR}disc\\u001b[2J x${CLEAR}`,
  );
});
