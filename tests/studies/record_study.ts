import { Random } from "sagbook/numerics/random.ts";
import { killRecorder } from "../tasks/_kill_recorder.ts";
import { type StoppingCase, stoppingUsers } from "./_stopping_user.ts";
import type { Study, StudyRow } from "./_study.ts";

const USERS = 2000;
/** Kills for each seed: 200 in all. */
const KILLS = 40;

const EIGHT = { first: 3, last: 8 } as const;
const TWO: Omit<StoppingCase, "looks"> = {
  scatter: 1,
  diameter: 0,
  diameters: 8,
  departures: [0, 1],
  rounds: false,
};

const CASES: readonly (readonly [string, StoppingCase])[] = [
  ["two places, no rounding, sets 3 to 8", { ...TWO, looks: EIGHT }],
  ["two places, no rounding, sets 3 to 5", {
    ...TWO,
    looks: { first: 3, last: 5 },
  }],
  ["two places, no rounding, sets 3 to 14", {
    ...TWO,
    diameters: 14,
    looks: { first: 3, last: 14 },
  }],
  ["two places, σ = 0.2δ, sets 3 to 8", {
    ...TWO,
    scatter: 0.2,
    rounds: true,
    looks: EIGHT,
  }],
  ["two places, σ = 1δ, sets 3 to 8", { ...TWO, rounds: true, looks: EIGHT }],
  ["two places, σ = 3δ, sets 3 to 8", {
    ...TWO,
    scatter: 3,
    rounds: true,
    looks: EIGHT,
  }],
  ["three places, half way between, σ = 3δ, sets 3 to 8", {
    ...TWO,
    scatter: 3,
    departures: [0, 0.5, 1],
    rounds: true,
    looks: EIGHT,
  }],
  ["four diameters read twice, diameter 2σ, σ = 3δ, sets 3 to 8", {
    ...TWO,
    scatter: 3,
    diameter: 6,
    diameters: 4,
    rounds: true,
    looks: EIGHT,
  }],
  ["both ends, lopsided by all the tolerance, σ = 3δ, sets 3 to 8", {
    ...TWO,
    scatter: 3,
    departures: [0, 0],
    ends: 1,
    rounds: true,
    looks: EIGHT,
  }],
];

/** Whether the bench may be trusted: early verdicts, and kills. */
export const study: Study = {
  title:
    "A user who stops at the first verdict errs in no more than 5 %, and a killed recorder loses nothing",
  about: `
${USERS} users for each case and seed, at the limit of the tolerance: one place
departs from the centre by all of it, or the ends of diameters from each other.
They read set after set and stop at the first verdict of the rule for stopping
early. Beside it stands what the report's verdict at 5 % does when it is looked at
after every set, which it is not meant for, and when it is looked at once after
the last planned set. δ is the display step, σ the scatter of a reading; the
limit is 12 times the scatter and more.

Kills: ${KILLS} for each seed. A recorder is fed readings as fast as it takes them,
every seventh taken back, and killed within a quarter of a second of its first
prompt. "Lost" counts answered readings that the file does not hold, answered
marks that it does not bear, and torn lines.
`,
  async run(seed) {
    const rows: StudyRow[] = [];
    const random = new Random(seed);
    for (const [name, design] of CASES) {
      const found = stoppingUsers(design, USERS, random.fork(name));
      const row = (measure: string, count: number): StudyRow => ({
        case: name,
        measure,
        value: count / USERS,
        runs: USERS,
      });
      rows.push(
        {
          ...row("false WITHIN, stopping at the first", found.within),
          atMost: 0.05,
        },
        {
          ...row("false OUT, stopping at the first", found.outside),
          atMost: 0.05,
        },
        row("false WITHIN, 5 % verdict after every set", found.plainWithin),
        {
          ...row(
            "false WITHIN, 5 % verdict after the last set only",
            found.plannedWithin,
          ),
          atMost: 0.05,
        },
      );
    }
    let [answered, lost] = [0, 0];
    for (let k = 0; k < KILLS; k++) {
      const found = await killRecorder(random.fork(`kill ${k}`));
      answered += found.answered;
      lost += found.missing + found.unmarked + found.torn + found.strays;
    }
    rows.push({
      case: `${KILLS} kills`,
      measure: "readings answered before",
      value: answered,
      as: "number",
      atLeast: 1,
    }, {
      case: `${KILLS} kills`,
      measure: "lost or torn",
      value: lost,
      as: "number",
      atMost: 0,
    });
    return rows;
  },
};
