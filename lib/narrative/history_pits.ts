/**
 * Pits and removal in the grade now in use.
 *
 * @module
 */
import { grainSize } from "../fabrication/microgrits.ts";
import {
  pitAllowance,
  type PitsState,
  pitsState,
  removalByThickness,
  removalByWork,
} from "../fabrication/removal.ts";
import type { WorkTimeline } from "../fabrication/work_timeline.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { PitsSeen, WorkLogEntry } from "../records/work_log.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { listed } from "./_listed.ts";
import { smallUnit, writeDifference } from "./sag_words.ts";
import { progressLimits } from "../fabrication/predict_progress.ts";

/** Pits and removal, as data and in words. */
export interface HistoryPits {
  /** The grade now in use. */
  readonly grade: string;
  /** The grade before it. */
  readonly before?: string;
  /** What is known. */
  readonly state: PitsState;
  /** The same in words. */
  readonly sentences: readonly string[];
}

/** Standard uncertainty of one thickness where nobody states it, in mm. */
const CALIPER = 0.01;

/** What a shop does in its own way. */
export interface OwnPractice {
  /** Number of grain sizes to take off. */
  readonly pitFactor?: number;
  /** Rate of removal, in mm for one wet or minute. */
  readonly removalRate?: Estimate;
  /** Standard uncertainty of one thickness, in mm; 0.01 unless stated. */
  readonly thicknessUncertainty?: number;
}

/**
 * Gathers what the log knows of pits: grain of the grade before, thicknesses,
 * and the loupe's verdict as entered.
 *
 * No sag enters: a gauge on three feet cannot see glass taken off everywhere.
 *
 * @param timeline Work in order.
 * @param unit The user's unit.
 * @param own The user's own number of grain sizes, uncertainty of a thickness,
 * and rate of removal, which is used where the log has no thicknesses.
 * @returns Undefined where the log names no grade.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function historyPits(
  timeline: WorkTimeline,
  unit: LengthUnit,
  own: OwnPractice = {},
): HistoryPits | undefined {
  const { entries } = timeline;
  const grade = entries.findLast((one) => one.grade !== undefined)?.grade;
  if (grade === undefined) return undefined;
  const start = entries.findLastIndex((one) =>
    one.grade !== undefined && one.grade !== grade
  );
  const before = entries[start]?.grade;
  const grain = before === undefined ? undefined : grainSize(before);
  const wanted = grain?.kind === "size"
    ? pitAllowance(grain.size, own.pitFactor)
    : undefined;
  const inGrade = entries.slice(start + 1);
  const { thicknessUncertainty: thickness = CALIPER } = own;
  const gone = removal(entries.slice(0, start + 1), inGrade, thickness, grade);
  const measured = gone?.grades.length === 1 ? gone.removed : undefined;
  const done = timeline.unit === undefined
    ? 0
    : inGrade.reduce((sum, one) => sum + (one[timeline.unit!] ?? 0), 0);
  const removed = measured ??
    (own.removalRate === undefined
      ? undefined
      : removalByWork(done, own.removalRate));
  const loupe = inGrade.findLast(({ pits }) => pits !== undefined)?.pits;
  const state = pitsState(wanted, removed, loupe);
  const small = smallUnit(unit);
  const write = (length: number): string =>
    formatLength(millimetres(length), small, unit === "mm" ? 0 : 2);
  const sentences: string[] = [];
  if (before !== undefined && wanted !== undefined) {
    const amount = wanted.low === wanted.high
      ? write(wanted.low)
      : `${write(wanted.low)} to ${write(wanted.high)}`;
    sentences.push(
      `For the pits of ${before}, ${grade} should take ${amount} off everywhere: ${
        wanted.from === "the user"
          ? "your own number of grain sizes"
          : "one to one and a half of its grain sizes, common practice without a source"
      }; the table of grain sizes is from memory.`,
    );
  } else if (before !== undefined && grain?.kind === "unknown") {
    sentences.push(
      `How deep the pits of ${before} are is not reckoned: ${
        WHY[grain.why]
      }. Write its grain size into the grade, such as “20 µm”.`,
    );
  }
  if (removed !== undefined) {
    const { low, high } = progressLimits(removed);
    const amount = writeDifference(removed.value, { low, high }, unit);
    const how = measured === undefined
      ? `By your own rate of removal ${amount} went off in this grade`
      : `By the thickness ${amount} went off in this grade (each thickness taken as good to ${
        write(thickness)
      })`;
    sentences.push(`${how}; that is ${REMOVAL[state.removal]}.`);
  }
  if (gone !== undefined && measured === undefined) {
    const { low, high } = progressLimits(gone.removed);
    const amount = writeDifference(gone.removed.value, { low, high }, unit);
    sentences.push(
      `By the thickness ${amount} went off in ${
        listed(gone.grades)
      } together; what of it ${grade} took is not known, since none was noted when ${grade} began.`,
    );
  }
  sentences.push(
    loupe === undefined
      ? "Nobody has looked for pits in this grade yet: the loupe decides, zone by zone, never the gauge."
      : `The loupe's last word, as entered: ${
        LOUPE[loupe]
      }. The gauge cannot see pits.`,
  );
  return {
    grade,
    ...(before === undefined ? {} : { before }),
    state,
    sentences,
  };
}

const WHY = {
  "paper grit": "P grits are paper, and of other sizes than loose F grits",
  "number alone": "a number alone may be F, P or mesh, and they differ in size",
  "not in the table": "the table of loose grits begins at F230",
  "no grit": "its name says no grain size",
} as const;

const REMOVAL = {
  enough: "as much as is wanted or more",
  "not enough": "less than is wanted",
  "cannot tell": "not to be told from what is wanted",
} as const;

/** The loupe's verdict in words. */
export const LOUPE: Readonly<Record<PitsSeen, string>> = {
  none: "no pits of the grade before",
  centre: "pits left at the centre",
  edge: "pits left at the edge",
  all: "pits left everywhere",
};

/** Glass gone by two thicknesses of one place. */
interface Gone {
  /** How much. */
  readonly removed: Estimate;
  /** Grades worked between the two, the one now in use last. */
  readonly grades: readonly string[];
}

/**
 * Glass gone since a thickness of the grades before: the nearest one, for work
 * of those grades that came after it is in the difference too.
 */
function removal(
  earlier: readonly WorkLogEntry[],
  inGrade: readonly WorkLogEntry[],
  uncertainty: number,
  grade: string,
): Gone | undefined {
  const places = ["thicknessCentre", "thicknessEdge"] as const;
  const read = (value: number) => ({
    value,
    own: uncertainty,
    dof: Infinity,
    common: {},
  });
  const found = places.flatMap((place) => {
    const from = earlier.findLastIndex((one) => one[place] !== undefined);
    const now = inGrade.findLast((one) => one[place] !== undefined)?.[place];
    if (from < 0 || now === undefined) return [];
    const since = earlier.slice(from + 1);
    return [{
      removed: removalByThickness(read(earlier[from][place]!), read(now)),
      grades: [
        ...new Set([
          ...since.map((one) => one.grade ?? "a grade not named"),
          grade,
        ]),
      ],
    }];
  });
  return found.find(({ grades }) => grades.length === 1) ?? found[0];
}
