/** How often the intervals of components of scatter hold the truth. */
import { Random } from "sagbook/numerics/random.ts";
import { estimateComponents } from "sagbook/repeatability/estimate_components.ts";
import type { ScatterSource } from "sagbook/repeatability/source.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** A true standard deviation, in µm, of one source. */
export type Truth = Readonly<Partial<Record<ScatterSource, number>>>;

/** A design with its truth. */
export interface CoverageDesign {
  /** Name in the table. */
  readonly name: string;
  /** True standard deviations in µm; what is left out is 0 and not read. */
  readonly truth: Truth;
  /** Sessions, operators in each, zeroings of each, repeats of each place. */
  readonly sessions?: number;
  readonly operators?: number;
  readonly zeroings: number;
  readonly repeats: number;
  readonly zones: readonly string[];
  /** Number of diameters, which zeroings take in turn. */
  readonly diameters?: number;
  /** Every so many-th reading is missing. */
  readonly gapEvery?: number;
  /** The way the figures are expected to be found. */
  readonly method: "anova" | "reml";
}

const DISTANCE: Readonly<Record<string, number>> = {
  centre: 0,
  "50%": 40,
  edge: 80,
};

/** The designs of the table. */
export const DESIGNS: readonly CoverageDesign[] = [
  {
    name: "8 zeroings × 3 readings",
    truth: { repeat: 1, zeroing: 1.5 },
    zeroings: 8,
    repeats: 3,
    zones: ["centre"],
    method: "anova",
  },
  {
    name: "4 zeroings × 4 readings, zeroing small",
    truth: { repeat: 1, zeroing: 0.2 },
    zeroings: 4,
    repeats: 4,
    zones: ["centre"],
    method: "anova",
  },
  {
    name: "4 sessions × 3 zeroings × 2 readings, sessions alike",
    truth: { repeat: 1, zeroing: 1.5, session: 0 },
    sessions: 4,
    zeroings: 3,
    repeats: 2,
    zones: ["centre"],
    method: "anova",
  },
  {
    name: "4 operators × 4 zeroings × 3 zones × 2 readings",
    truth: { repeat: 1, "zone × zeroing": 1, zeroing: 2, operator: 2.5 },
    operators: 4,
    zeroings: 4,
    repeats: 2,
    zones: ["centre", "50%", "edge"],
    method: "anova",
  },
  {
    name: "6 zeroings × 3 zones × 2 readings, every 7th missing",
    truth: { repeat: 1, "zone × zeroing": 1, zeroing: 2 },
    zeroings: 6,
    repeats: 2,
    zones: ["centre", "50%", "edge"],
    gapEvery: 7,
    method: "reml",
  },
  {
    name: "6 zeroings, a diameter each, 3 zones × 1 reading",
    truth: { repeat: 1, zeroing: 1.5, diameter: 1.5 },
    zeroings: 6,
    repeats: 1,
    zones: ["centre", "50%", "edge"],
    diameters: 6,
    method: "reml",
  },
  {
    name: "5 operators × 4 zeroings × 2 zones × 2 readings on 4 diameters",
    truth: {
      repeat: 1,
      zeroing: 1.5,
      operator: 2,
      diameter: 1.5,
      "zone × zeroing": 0,
    },
    operators: 5,
    zeroings: 4,
    repeats: 2,
    zones: ["centre", "edge"],
    diameters: 4,
    gapEvery: 11,
    method: "reml",
  },
];

/** Draws the readings of one study, not rounded. */
export function drawStudy(design: CoverageDesign, random: Random): Reading[] {
  const { truth, sessions = 1, operators = 1, diameters } = design;
  const scatter = (source: ScatterSource): number =>
    (truth[source] ?? 0) * random.normal();
  const turns = Array.from(
    { length: diameters ?? 1 },
    () => scatter("diameter"),
  );
  const readings: Reading[] = [];
  let count = 0;
  for (let s = 0; s < sessions; s++) {
    const ofSession = scatter("session");
    for (let o = 0; o < operators; o++) {
      const ofOperator = ofSession + scatter("operator");
      for (let z = 0; z < design.zeroings; z++) {
        const ofZeroing = ofOperator + scatter("zeroing");
        const turn = z % turns.length;
        for (const label of design.zones) {
          const offset = DISTANCE[label];
          const ofCell = ofZeroing + scatter("zone × zeroing") +
            (offset === 0 ? 0 : turns[turn]);
          for (let r = 0; r < design.repeats; r++) {
            const sag = ofCell + scatter("repeat");
            count++;
            if (design.gapEvery && count % design.gapEvery === 0) continue;
            readings.push({
              file: "",
              line: count,
              order: count,
              session: `S${s}`,
              ring: "A",
              zeroing: `S${s} / ${o} ${z}`,
              ...(operators > 1 ? { operator: `${o}` } : {}),
              ...(diameters === undefined
                ? {}
                : { diameterDegrees: 180 * turn / diameters }),
              foot: { kind: "angle", degrees: 0 },
              on: "work",
              zone: { label, distance: mm(offset) },
              offset: mm(offset),
              sag: mm(0.6 + sag / 1000),
              unit: "mm",
            });
          }
        }
      }
    }
  }
  return readings;
}

/** How often the interval of one source held its truth. */
export interface Coverage {
  /** Sources of the figure. */
  readonly sources: readonly ScatterSource[];
  /** True standard deviation, in µm. */
  readonly truth: number;
  /** Smallest number of levels. */
  readonly levels: number;
  /** Share of the studies whose interval held it. */
  readonly held: number;
  /** Whether coverage must not exceed what is stated by much. */
  readonly exact: boolean;
}

/** Finds the coverage of every figure of a design. */
export function coverageOf(
  design: CoverageDesign,
  studies: number,
  seed: number,
): Coverage[] {
  const counts = new Map<
    string,
    { sources: readonly ScatterSource[]; levels: number; missed: number }
  >();
  const random = new Random(seed).fork(design.name);
  for (let study = 0; study < studies; study++) {
    const [found] = estimateComponents(drawStudy(design, random));
    if (found.method !== design.method) {
      throw new Error(`${design.name} went by ${found.method}`);
    }
    for (const { sources, levels, sag } of found.figures) {
      const key = sources.join(" + ");
      const entry = counts.get(key) ?? { sources, levels, missed: 0 };
      const truth = truthOf(design, sources) / 1000;
      const { low, high } = sag.interval ?? { low: Infinity, high: -Infinity };
      if (high < truth || low > truth) entry.missed++;
      counts.set(key, entry);
    }
  }
  return [...counts.values()].map(({ sources, levels, missed }) => ({
    sources,
    truth: truthOf(design, sources),
    levels,
    held: 1 - missed / studies,
    exact: isExact(design, sources, levels),
  }));
}

function truthOf(
  { truth }: CoverageDesign,
  sources: readonly ScatterSource[],
): number {
  return Math.hypot(...sources.map((source) => truth[source] ?? 0));
}

/** What lies beneath each source in a mean of its own level. */
const BENEATH: readonly ScatterSource[] = [
  "repeat",
  "zone × zeroing",
  "zeroing",
  "operator",
  "session",
];

/** Four levels or more, and at least as large as what lies beneath. */
function isExact(
  design: CoverageDesign,
  sources: readonly ScatterSource[],
  levels: number,
): boolean {
  const rank = sources[0] === "diameter"
    ? BENEATH.indexOf("zeroing")
    : BENEATH.indexOf(sources[0]);
  const beneath = BENEATH.slice(0, rank)
    .filter((source) => !sources.includes(source));
  const below = Math.max(
    0,
    ...beneath.map((source) => design.truth[source] ?? 0),
  );
  return levels >= 4 && truthOf(design, sources) >= below;
}
