/** How often intervals of simulated studies hold the truth they come from. */
import { Random } from "sagbook/numerics/random.ts";
import { crossedAnova } from "sagbook/statistics/crossed_anova.ts";
import {
  interceptColumn,
  levelColumns,
} from "sagbook/statistics/design_columns.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import { fixedContrast } from "sagbook/statistics/fixed_contrast.ts";
import type { MixedModel } from "sagbook/statistics/mixed_model.ts";
import { nestedAnova } from "sagbook/statistics/nested_anova.ts";
import { profileDeviations } from "sagbook/statistics/profile_intervals.ts";
import type { AnovaTable } from "sagbook/statistics/anova_table.ts";
import { varianceInterval } from "sagbook/statistics/variance_interval.ts";

/** One design with its true standard deviations. */
export interface StudiedDesign {
  /** What it is. */
  readonly name: string;
  /** Levels of each reading by factor; zone where zones are compared. */
  readonly rows: readonly Readonly<Record<string, string>>[];
  /** Random factors from the outermost, with their standard deviations. */
  readonly factors: Readonly<Record<string, number>>;
  /** Standard deviation of the residual. */
  readonly residual: number;
  /** Which table of variance gives intervals, if the design is balanced. */
  readonly table?: "nested" | "crossed";
}

/** How often one interval held its truth. */
export interface CoverageRow {
  readonly design: string;
  readonly quantity: string;
  readonly truth: number;
  readonly covered: number;
  readonly studies: number;
  /** Least and most coverage that the criterion allows, in percent. */
  readonly allowed: readonly [number, number];
}

const DISTINCT: readonly [number, number] = [93, 97];
const AT_LEAST: readonly [number, number] = [93, 100];

/** Simulates studies of one design and counts what their intervals hold. */
export function remlCoverage(
  design: StudiedDesign,
  studies: number,
  seed: number,
): CoverageRow[] {
  const random = new Random(seed);
  const names = Object.keys(design.factors);
  const truth: Record<string, number> = {
    ...design.factors,
    residual: design.residual,
  };
  const zones = [...new Set(design.rows.map((row) => row.zone))].sort();
  const means = Object.fromEntries(
    zones.map((zone, i) => [zone, 700 + 1.5 * i]),
  );
  const labels = (name: string) => design.rows.map((row) => row[name]);
  const counts = new Map<
    string,
    { held: number; truth: number; allowed: readonly [number, number] }
  >();
  const count = (
    quantity: string,
    value: number,
    interval: { low: number; high: number } | undefined,
    allowed: readonly [number, number],
  ) => {
    const entry = counts.get(quantity) ?? { held: 0, truth: value, allowed };
    if (interval && interval.low <= value && value <= interval.high) {
      entry.held++;
    }
    counts.set(quantity, entry);
  };
  const allowedOf = (name: string) => allowedFor(design, name);
  for (let study = 0; study < studies; study++) {
    const shifts = Object.fromEntries(names.map((name) => [
      name,
      Object.fromEntries(
        [...new Set(labels(name))].map((
          level,
        ) => [level, truth[name] * random.normal()]),
      ),
    ]));
    const response = design.rows.map((row) =>
      names.reduce((sum, name) => sum + shifts[name][row[name]], 0) +
      means[row.zone] + design.residual * random.normal()
    );
    const model: MixedModel = {
      response,
      fixed: zones.length > 1
        ? levelColumns("", labels("zone"), zones)
        : [interceptColumn(response.length)],
      random: names.map((name) => ({ name, labels: labels(name) })),
    };
    const fit = fitMixedModel(model);
    for (let i = 1; i < zones.length; i++) {
      const contrast = fixedContrast(fit, { [zones[i]]: 1, [zones[0]]: -1 });
      count(
        `${zones[i]} less ${zones[0]}`,
        means[zones[i]] - means[zones[0]],
        contrast?.interval,
        DISTINCT,
      );
    }
    if (zones.length === 1) {
      count(
        "mean",
        700,
        fixedContrast(fit, { "(Intercept)": 1 })?.interval,
        DISTINCT,
      );
    }
    if (!design.table) {
      const intervals = profileDeviations(
        model,
        0.95,
        "restricted",
        "small sample",
      );
      for (const { name, interval } of intervals) {
        count(`${name}, profile`, truth[name], interval, allowedOf(name));
      }
      continue;
    }
    const table: AnovaTable = design.table === "nested"
      ? nestedAnova(response, model.random)
      : crossedAnova(response, model.random[0], model.random[1], "separate");
    for (const { name: source, terms } of table.components) {
      const name = source === "interaction" ? "cell" : source;
      const { low, high } = varianceInterval(terms);
      count(
        `${name}, mean squares`,
        truth[name] ** 2,
        { low, high },
        allowedOf(name),
      );
    }
  }
  return [...counts].map(([quantity, { held, truth: value, allowed }]) => ({
    design: design.name,
    quantity,
    truth: value,
    covered: held,
    studies,
    allowed,
  }));
}

/**
 * What the criterion allows: 93 to 97 % for a component at least as large as
 * the variance beneath it that has four or more levels, else at least 93 %.
 */
function allowedFor(
  design: StudiedDesign,
  name: string,
): readonly [number, number] {
  if (name === "residual") return DISTINCT;
  const levelsOf = (factor: string) =>
    new Set(design.rows.map((row) => row[factor])).size;
  // Beneath: the residual, and every factor nested within this one.
  let beneath = design.residual ** 2;
  for (const [other, deviation] of Object.entries(design.factors)) {
    const pairs = new Set(design.rows.map((row) =>
      `${row[name]}/${row[other]}`
    )).size;
    if (other !== name && pairs === levelsOf(other) && pairs > levelsOf(name)) {
      beneath += deviation ** 2;
    }
  }
  const large = design.factors[name] ** 2 >= beneath;
  return large && levelsOf(name) >= 4 ? DISTINCT : AT_LEAST;
}

const ZONES = ["centre", "edge", "half"];

/** Every zeroing reads every zone along every diameter. */
function crossedRows(
  zeroings: number,
  diameters: number,
  repeats = 1,
): Record<string, string>[] {
  const rows: Record<string, string>[] = [];
  for (let z = 0; z < zeroings; z++) {
    for (let d = 0; d < diameters; d++) {
      for (const zone of ZONES) {
        for (let r = 0; r < repeats; r++) {
          rows.push({
            zone,
            zeroing: `z${z}`,
            diameter: `d${d}`,
            cell: `z${z}${zone}`,
          });
        }
      }
    }
  }
  return rows;
}

/** Readings in zeroings in sessions, in one zone. */
function nestedRows(
  sessions: number,
  zeroings: number,
  readings: number,
): Record<string, string>[] {
  const rows: Record<string, string>[] = [];
  for (let s = 0; s < sessions; s++) {
    for (let z = 0; z < zeroings; z++) {
      for (let r = 0; r < readings; r++) {
        rows.push({ zone: "centre", session: `s${s}`, zeroing: `s${s}z${z}` });
      }
    }
  }
  return rows;
}

/** Surfaces read by operators. */
function gaugeRows(
  surfaces: number,
  operators: number,
  repeats: number,
): Record<string, string>[] {
  const rows: Record<string, string>[] = [];
  for (let s = 0; s < surfaces; s++) {
    for (let o = 0; o < operators; o++) {
      for (let r = 0; r < repeats; r++) {
        rows.push({
          zone: "centre",
          surface: `s${s}`,
          operator: `o${o}`,
          cell: `s${s}o${o}`,
        });
      }
    }
  }
  return rows;
}

/** Leaves out readings by a fixed rule. */
function withGaps(
  rows: Record<string, string>[],
  every: number,
): Record<string, string>[] {
  return rows.filter((_, i) => i % every !== 2 && (i * i) % (every + 6) !== 5);
}

/** The designs studied. */
export const designs: readonly StudiedDesign[] = [
  {
    name: "6 zeroings x 4 diameters x 3 zones",
    rows: crossedRows(6, 4),
    factors: { zeroing: 0.8, diameter: 0.5 },
    residual: 0.4,
  },
  {
    name: "the same with gaps",
    rows: withGaps(crossedRows(6, 4), 5),
    factors: { zeroing: 0.8, diameter: 0.5 },
    residual: 0.4,
  },
  {
    name: "4 zeroings x 3 diameters x 3 zones, no diameter scatter",
    rows: crossedRows(4, 3),
    factors: { zeroing: 0.5, diameter: 0 },
    residual: 0.5,
  },
  {
    name: "4 zeroings x 3 zones, gaps, small zeroing scatter",
    rows: withGaps(crossedRows(4, 1, 3), 7),
    factors: { zeroing: 0.2 },
    residual: 0.5,
  },
  {
    name: "6 zeroings x 3 zones x 4 repeats with zone by zeroing",
    rows: crossedRows(6, 1, 4),
    factors: { zeroing: 0.7, cell: 0.5 },
    residual: 0.35,
  },
  {
    name: "8 sessions x 3 zeroings x 4 readings",
    rows: nestedRows(8, 3, 4),
    factors: { session: 0.8, zeroing: 0.5 },
    residual: 0.3,
    table: "nested",
  },
  {
    name: "the same with gaps, one reading in some zeroings",
    rows: withGaps(nestedRows(8, 3, 4), 3),
    factors: { session: 0.8, zeroing: 0.5 },
    residual: 0.3,
  },
  {
    name: "3 sessions x 2 zeroings x 2 readings",
    rows: nestedRows(3, 2, 2),
    factors: { session: 0.5, zeroing: 0.5 },
    residual: 0.5,
    table: "nested",
  },
  {
    name: "10 surfaces x 3 operators x 3 repeats",
    rows: gaugeRows(10, 3, 3),
    factors: { surface: 1, operator: 0.4, cell: 0.3 },
    residual: 0.4,
    table: "crossed",
  },
];
