import { groupFigures } from "../units/format_length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import { line, type Shape, words } from "./_shape.ts";

/** An axis: what it counts and how far. */
export interface ChartAxis {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** Values to mark; round ones unless given. */
  readonly marks?: readonly number[];
}

/** A plot with two axes, and where a value stands in it. */
export interface Chart {
  readonly shapes: readonly Shape[];
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly at: (x: number, y: number) => readonly [number, number];
}

/** Round steps of which about `count` fit between two values. */
export function ticks(from: number, to: number, count: number): number[] {
  const rough = (to - from) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * power).find((s) => s >= rough) ??
    10 * power;
  const found: number[] = [];
  for (
    let k = Math.ceil(from / step - 1e-9);
    k <= Math.floor(to / step + 1e-9);
    k++
  ) found.push(k * step);
  return found;
}

/** Figures of a tick, no more than the step needs. */
function figures(value: number, all: readonly number[]): string {
  const step = all.length > 1 ? Math.abs(all[1] - all[0]) : Math.abs(value);
  const decimals = step > 0
    ? Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
    : 0;
  return groupFigures(roundDecimal(value, decimals));
}

/** An end for an axis that holds all values, the same for values nearby. */
export function roundedReach(values: readonly number[], least = 0): number {
  const most = Math.max(least, ...values.map(Math.abs));
  if (most === 0) return 1;
  const power = 10 ** Math.floor(Math.log10(most));
  return ([1, 1.5, 2, 3, 4, 5, 6, 8].map((k) => k * power)
    .find((end) => end >= most * 1.05)) ?? 10 * power;
}

/** Draws axes into a box, grid lines behind, the y label above on the left. */
export function chart(
  [left, top]: readonly [number, number],
  [width, height]: readonly [number, number],
  across: ChartAxis,
  up: ChartAxis,
): Chart {
  const x = (value: number) =>
    left + (value - across.from) / (across.to - across.from) * width;
  const y = (value: number) =>
    top + height - (value - up.from) / (up.to - up.from) * height;
  const shapes: Shape[] = [
    words([Math.max(4, left - 56), top - 12], up.label, { role: "quiet" }),
    words([left + width, top + height + 40], across.label, {
      role: "quiet",
      anchor: "end",
    }),
  ];
  const upTicks = up.marks ??
    ticks(up.from, up.to, Math.max(2, height / 45));
  for (const value of upTicks) {
    shapes.push(
      line([left, y(value)], [left + width, y(value)], "line", { width: 1 }),
      words([left - 8, y(value) + 5], figures(value, upTicks), {
        role: "quiet",
        anchor: "end",
      }),
    );
  }
  const acrossTicks = across.marks ??
    ticks(across.from, across.to, Math.max(2, width / 80));
  for (const value of acrossTicks) {
    shapes.push(
      line([x(value), top + height], [x(value), top + height + 5], "quiet", {
        width: 1,
      }),
      words([x(value), top + height + 21], figures(value, acrossTicks), {
        role: "quiet",
        anchor: "middle",
      }),
    );
  }
  if (up.from < 0 && up.to > 0) {
    shapes.push(line([left, y(0)], [left + width, y(0)], "quiet", {
      width: 1.5,
    }));
  }
  return { shapes, x, y, at: (a, b) => [x(a), y(b)] };
}

/** Values evenly spread from one end to the other, both with. */
export function spread(from: number, to: number, count: number): number[] {
  return Array.from(
    { length: count },
    (_, k) => from + (to - from) * k / (count - 1),
  );
}
