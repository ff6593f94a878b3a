/**
 * What a set of readings can tell apart, before any figure is computed.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import { type CodedReadings, codeReadings } from "./_factor_codes.ts";
import { groupReadings } from "./group_readings.ts";
import { relationsOf } from "./_relations.ts";
import { separate } from "./_separability.ts";
import { readingsThatSeparate } from "./_separating_readings.ts";
import type { DesignOptions, VariedSource } from "./source.ts";
import type { MissingCell, SurfaceDesign } from "./surface_design.ts";

/**
 * Finds the design of readings: what was varied, what was repeated, what can
 * be told apart and which readings would tell the rest apart.
 *
 * Zones are fixed; sessions, operators, zeroings, diameters, foot directions
 * and zone × zeroing scatter at random. A source gets a figure where its
 * covariance pattern, with the zones' means taken out, is no combination of
 * the others' (exact up to rounding, for crossed, nested and unbalanced
 * designs alike). That a source is estimable does not make its figure sharp:
 * look at its interval.
 *
 * @param readings Readings, flat included, in order.
 * @param options What the caller knows about diameters and work in between.
 * @returns One design for each ring and grade.
 *
 * @see C. R. Rao and J. Kleffe, Estimation of Variance Components and
 * Applications (1988), on identifiability by quadratic forms (from memory).
 *
 * @example One reading a zeroing: repeat and zeroing are one figure
 * ```ts
 * import { describeDesign } from "sagbook/repeatability/describe_design.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const readings = ["1", "2", "3"].map((zeroing) => ({
 *   ring: "A", session: "S1", zeroing, on: "work", offset: 0, sag: 0.7,
 *   zone: { label: "centre", distance: 0 }, foot: { kind: "unknown" },
 * } as unknown as Parameters<typeof describeDesign>[0][number]));
 * const [design] = describeDesign(readings);
 * deepEqual(design.confounded[0].sources, ["repeat", "zeroing"]);
 * ```
 */
export function describeDesign(
  readings: readonly Reading[],
  options: DesignOptions = {},
): SurfaceDesign[] {
  return groupReadings(readings).map(({ ring, grade, indices }) => {
    const all = indices.map((index) => readings[index]);
    const work = all.filter(({ on }) => on === "work");
    const coded = codeReadings(work, options);
    return {
      ring,
      ...(grade === undefined ? {} : { grade }),
      readings: work.length,
      looks: all.length - work.length,
      ...designOf(coded),
    };
  });
}

/** The parts of a design that follow from the levels of its factors. */
function designOf(
  coded: CodedReadings,
): Omit<SurfaceDesign, "ring" | "grade" | "readings" | "looks"> {
  const { readings, zones, factors, absent, diameters } = coded;
  const { stands, hidden, dof } = separate(coded);
  const confounded = stands.filter(({ holds }) => holds.size > 0).map(
    ({ source, holds }) => [source, ...holds.keys()],
  );
  const unclear = new Set(confounded.flat());
  return {
    sessions: [...new Set(readings.map(({ session }) => session))],
    zones,
    factors: factors.map(({ source, codes, names, spared }) => {
      const counts = new Array<number>(names.length).fill(0);
      for (const code of codes) counts[code]++;
      const own = counts.filter((_, level) => level !== spared);
      return {
        source,
        levels: own.length,
        fewest: own.reduce((a, b) => Math.min(a, b), Infinity),
        most: own.reduce((a, b) => Math.max(a, b), -Infinity),
      };
    }),
    relations: relationsOf(factors),
    ...repeatsOf(coded),
    diameters,
    estimable: stands.map(({ source }) => source).filter((source) =>
      !unclear.has(source)
    ),
    confounded: confounded.map((sources) => ({
      sources,
      separatedBy: readingsThatSeparate(sources, factors),
    })),
    absent: [
      ...absent,
      ...hidden.map((source) => ({
        source: source as VariedSource,
        reason: "in the zones" as const,
      })),
    ],
    dof,
    reusedLabels: reusedLabels(readings),
  };
}

function repeatsOf(
  { readings, zones }: CodedReadings,
): Pick<
  SurfaceDesign,
  "leastRepeats" | "mostRepeats" | "replicated" | "balanced" | "missing"
> {
  const cells = new Map<string, number>();
  const replicates = new Map<string, number>();
  const count = (map: Map<string, number>, key: string): void => {
    map.set(key, (map.get(key) ?? 0) + 1);
  };
  const key = (zeroing: string, zone: string): string => `${zeroing}\n${zone}`;
  for (const reading of readings) {
    const { zeroing, zone, offset, diameterDegrees, operator, foot } = reading;
    count(cells, key(zeroing, zone.label));
    const place = [zeroing, offset, offset && diameterDegrees, operator, foot];
    count(replicates, JSON.stringify(place));
  }
  const missing: MissingCell[] = [];
  for (const zeroing of new Set(readings.map((one) => one.zeroing))) {
    for (const zone of zones) {
      if (!cells.has(key(zeroing, zone))) missing.push({ zeroing, zone });
    }
  }
  const repeats = [...replicates.values()];
  return {
    leastRepeats: repeats.reduce((a, b) => Math.min(a, b), Infinity),
    mostRepeats: repeats.reduce((a, b) => Math.max(a, b), -Infinity),
    replicated: repeats.some((times) => times > 1),
    balanced: missing.length === 0 && new Set(cells.values()).size === 1,
    missing,
  };
}

/** Labels under which several sessions have a zeroing. */
function reusedLabels(readings: readonly Reading[]): string[] {
  const sessions = new Map<string, Set<string>>();
  for (const { session, zeroing } of readings) {
    const prefix = `${session} / `;
    if (!zeroing.startsWith(prefix)) continue;
    const label = zeroing.slice(prefix.length);
    const known = sessions.get(label);
    if (known) known.add(session);
    else sessions.set(label, new Set([session]));
  }
  return [...sessions].filter(([, where]) => where.size > 1)
    .map(([label]) => label);
}
