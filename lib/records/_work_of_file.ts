/**
 * The shop's own work, from `bench.json`, in millimetres.
 *
 * @module
 */
import { millimetres } from "../units/length.ts";
import type { WorkFile } from "./bench_file.ts";
import type { FileLengths } from "./_file_lengths.ts";
import type { RemovalHabit, StrokeCase, WorkHabits } from "./work_habits.ts";

const CASES = {
  deep_centre: "deepCentre",
  deep_centre_short: "deepCentreShort",
  deep_edge: "deepEdge",
  deep_edge_long: "deepEdgeLong",
  shorten: "shorten",
  lengthen: "lengthen",
} as const satisfies Record<string, StrokeCase>;

function removalOf(
  file: WorkFile["removal"],
  read: FileLengths,
): RemovalHabit | undefined {
  if (file === undefined) return undefined;
  const amount = read.length(file.amount, "work.removal.amount");
  const uncertainty = read.length(
    file.uncertainty,
    "work.removal.uncertainty",
    "0 or more",
  ) ?? millimetres(0);
  return amount === undefined
    ? undefined
    : { amount, uncertainty, per: file.per };
}

/** Makes the habits of a shop out of what it wrote. */
export function workOfFile(file: WorkFile, read: FileLengths): WorkHabits {
  const { strokes, pit_grain_sizes } = file;
  const removal = removalOf(file.removal, read);
  const thickness = read.length(
    file.thickness_uncertainty,
    "work.thickness_uncertainty",
  );
  return {
    ...(strokes === undefined ? {} : {
      strokes: Object.fromEntries(
        Object.entries(CASES).flatMap(([name, kind]) => {
          const own = strokes[name as keyof typeof CASES];
          return own === undefined ? [] : [[kind, own]];
        }),
      ),
    }),
    ...(pit_grain_sizes === undefined
      ? {}
      : { pitGrainSizes: pit_grain_sizes }),
    ...(removal === undefined ? {} : { removal }),
    ...(thickness === undefined ? {} : { thicknessUncertainty: thickness }),
  };
}
