/**
 * Checks, places and words of the figure of the zones.
 *
 * @module
 */
import type { LengthAxis } from "./_length_axis.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { finite, interval, positive, some } from "./_refuse.ts";
import { spread } from "./_spread.ts";
import { textWidth } from "./_text_width.ts";
import type { ZonesFigureInput } from "./zones_figure_input.ts";

const ACTION = "the zones";

/** Refuses what cannot be drawn. */
export function checkZones(
  { reference, zones, tolerance }: ZonesFigureInput,
): void {
  finite(reference.distance, ACTION, `the distance of ${reference.label}`);
  for (const zone of some(zones, ACTION, "zone beside the reference")) {
    finite(zone.distance, ACTION, `the distance of ${zone.label}`);
    finite(zone.difference, ACTION, `the difference of ${zone.label}`);
    for (const ends of [zone.interval90, zone.interval95]) {
      if (ends) interval(ends, ACTION, `the interval of ${zone.label}`);
    }
    for (const set of zone.sets ?? []) {
      finite(set.difference, ACTION, `a set's difference of ${zone.label}`);
    }
  }
  if (tolerance !== undefined) positive(tolerance, ACTION, "the tolerance");
}

/** Most levels on which labels may stand. */
const MOST_LEVELS = 3;

/**
 * Where the zones stand side by side, as shares of the width; where their
 * labels have no room beside one another, they stand on two levels or three.
 */
export function placesAlong(
  labels: readonly string[],
  distances: readonly number[],
  width: number,
): { places: number[]; pixel: number; shown: string[] } {
  const room = width - 70;
  const order = distances.map((_, i) => i)
    .sort((a, b) => distances[a] - distances[b] || a - b);
  const widths = labels.map((label) =>
    Math.max(
      44,
      ...label.split("\n").map((line) => textWidth(line, TEXT_SIZE) + 10),
    )
  );
  const [low, high] = [Math.min(...distances), Math.max(...distances)];
  const inset = Math.max(widths[order[0]], widths[order.at(-1)!]) / 2;
  const span = room - 2 * inset;
  const wanted = order.map((i) =>
    high > low ? (distances[i] - low) / (high - low) * span : span / 2
  );
  // Labels on one level stand so many places apart, and need their width there.
  const gapsOn = (levels: number): number[] =>
    order.map((i, at) => {
      if (at === 0) return 0;
      if (levels === 1) return (widths[i] + widths[order[at - 1]]) / 2;
      const near = order.slice(Math.max(0, at - levels), at + levels);
      return Math.max(...near.map((one) => widths[one])) / levels;
    });
  const sum = (gaps: readonly number[]): number =>
    gaps.reduce((total, gap) => total + gap, 0);
  let levels = 1;
  while (levels < MOST_LEVELS && sum(gapsOn(levels)) > span) levels++;
  const gaps = gapsOn(levels);
  const rows = Math.max(...labels.map((label) => label.split("\n").length));
  const shown = [...labels];
  order.forEach((i, at) => {
    shown[i] = "\n".repeat(rows * (at % levels)) + labels[i];
  });
  const places = new Array<number>(labels.length);
  spread(wanted, gaps, span).forEach((x, at) => {
    places[order[at]] = (x + inset) / room;
  });
  return { places, pixel: 1 / room, shown };
}

/** The differences in words. */
export function describeZones(
  { reference, zones, tolerance }: ZonesFigureInput,
  { signedText, text }: LengthAxis,
): string {
  const parts = zones.map(({ label, difference, interval95: ends }) => {
    if (!ends) return `${label} ${signedText(difference)}`;
    const u = (ends.high - ends.low) / 2;
    const [low, high] = [signedText(ends.low, u), signedText(ends.high, u)];
    return `${label} ${
      signedText(difference, u)
    } (95 % interval ${low} to ${high})`;
  });
  const limit = tolerance === undefined
    ? "No tolerance was stated"
    : `The tolerance is ${text(tolerance)} either way`;
  return `Mean difference of sag from ${reference.label}: ${
    parts.join("; ")
  }. ${limit}.`;
}
