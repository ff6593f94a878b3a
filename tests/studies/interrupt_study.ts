/**
 * Stopping cells, many times in a row on one kernel.
 *
 * @module
 */
import { ENDLESS, SPIN } from "../kernel/_endless.ts";
import { Session } from "../kernel/_session.ts";
import type { Study, StudyRow } from "./_study.ts";

const ROUNDS = 20;
const LIMIT = 500;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1];

/** Stops every cell of the table in turn, so many rounds. */
async function interruptAll(): Promise<readonly StudyRow[]> {
  const times = new Map<string, number[]>();
  const good = new Map<string, number>();
  const session = await Session.start();
  await Deno.writeTextFile(`${session.folder}/spin.ts`, SPIN);
  await session.run("const keep = { v: 7 };");
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, code] of Object.entries(ENDLESS)) {
      const { result, took } = await session.interrupted(code);
      const { value } = await session.run("keep.v");
      const isGood = result.error?.ename === "Interrupted" && value === "7" &&
        took < LIMIT;
      times.set(name, [...times.get(name) ?? [], took]);
      good.set(name, (good.get(name) ?? 0) + Number(isGood));
    }
  }
  await session[Symbol.asyncDispose]();
  await new Promise((done) => setTimeout(done, 1_000));
  const left = (await session.processes()).length;
  return [
    ...[...times].flatMap(([name, all]): StudyRow[] => [
      {
        case: name,
        measure: `stopped within ${LIMIT} ms, variables kept`,
        value: good.get(name)! / ROUNDS,
        runs: ROUNDS,
        atLeast: 1,
      },
      { case: name, measure: "median, ms", value: median(all), as: "number" },
      {
        case: name,
        measure: "slowest, ms",
        value: Math.max(...all),
        as: "number",
        atMost: LIMIT,
      },
    ]),
    {
      case: "after the shutdown",
      measure: "processes left",
      value: left,
      as: "number",
      atMost: 0,
    },
  ];
}

/** One hundred stops of each cell that never ends. */
export const study: Study = {
  title: "Stop stops a cell, and keeps the variables",
  about:
    `Eight cells that never end by themselves, each interrupted 200 ms after its start, ${ROUNDS} times in turn on one kernel for each seed (a seed is a kernel here; nothing is drawn at random). After each stop a variable of the first cell is read.`,
  run: () => interruptAll(),
};
