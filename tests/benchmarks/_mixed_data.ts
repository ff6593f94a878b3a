/**
 * Readings with known scatter, made from a seed, for timing mixed models.
 *
 * @module
 */
import { Random } from "sagbook/numerics/random.ts";

/** One made-up study. */
export interface MadeStudy {
  /** What it stands for. */
  readonly name: string;
  /** Names of the random factors, in the order of `factors`. */
  readonly random: readonly string[];
  /** Level numbers by random factor. */
  readonly factors: readonly Int32Array[];
  /** Zone of each reading, the one fixed factor; undefined for a mean only. */
  readonly zones: readonly string[] | undefined;
  /** The readings. */
  readonly response: Float64Array;
}

/** Growing typed list of level numbers. */
function columnsOf(
  rows: readonly (readonly number[])[],
  count: number,
): Int32Array[] {
  return Array.from(
    { length: count },
    (_, k) => Int32Array.from(rows, (row) => row[k]),
  );
}

/** Adds shifts of each level and residual scatter to zone means. */
function respond(
  random: Random,
  factors: readonly Int32Array[],
  deviations: readonly number[],
  residual: number,
  means: (row: number) => number,
): Float64Array {
  const shifts = factors.map((codes, k) => {
    const levels = codes.reduce((most, code) => Math.max(most, code), -1) + 1;
    return Float64Array.from(
      { length: levels },
      () => deviations[k] * random.normal(),
    );
  });
  return Float64Array.from(factors[0], (_, row) =>
    factors.reduce(
      (sum, codes, k) => sum + shifts[k][codes[row]],
      means(row) + residual * random.normal(),
    ));
}

const ZONES = ["centre", "half", "edge"];

/**
 * A bench study: each zeroing reads three zones along seven of the diameters;
 * one reading in twenty is missing. About 20 readings a zeroing.
 */
export function benchStudy(
  name: string,
  seed: number,
  zeroings: number,
  diameters: number,
  repeats = 1,
): MadeStudy {
  const random = new Random(seed);
  const rows: [number, number, number][] = [];
  for (let zeroing = 0; zeroing < zeroings; zeroing++) {
    for (let step = 0; step < 7; step++) {
      const diameter = (3 * zeroing + step) % diameters;
      for (let zone = 0; zone < 3; zone++) {
        for (let repeat = 0; repeat < repeats; repeat++) {
          if (random.uniform() >= 0.05) rows.push([zeroing, diameter, zone]);
        }
      }
    }
  }
  const [zeroing, diameter, zone] = columnsOf(rows, 3);
  return {
    name,
    random: ["zeroing", "diameter"],
    factors: [zeroing, diameter],
    zones: Array.from(zone, (code) => ZONES[code]),
    response: respond(
      random,
      [zeroing, diameter],
      [0.9, 0.5],
      0.4,
      (row) => 700 + 2 * zone[row],
    ),
  };
}

/** Every level of one factor meets every level of the other, once. */
export function crossedStudy(
  name: string,
  seed: number,
  size: number,
): MadeStudy {
  const random = new Random(seed);
  const rows = Array.from(
    { length: size * size },
    (_, i) => [Math.floor(i / size), i % size],
  );
  const factors = columnsOf(rows, 2);
  return {
    name,
    random: ["surface", "operator"],
    factors,
    zones: undefined,
    response: respond(random, factors, [1, 0.5], 0.7, () => 500),
  };
}

/** Readings in zeroings in sessions in workshops; sizes differ. */
export function nestedStudy(
  name: string,
  seed: number,
  workshops: number,
): MadeStudy {
  const random = new Random(seed);
  const rows: number[][] = [];
  let [session, zeroing] = [0, 0];
  for (let workshop = 0; workshop < workshops; workshop++) {
    for (let s = 1 + random.integer(10); s > 0; s--, session++) {
      for (let z = 1 + random.integer(8); z > 0; z--, zeroing++) {
        for (let r = 1 + random.integer(8); r > 0; r--) {
          rows.push([zeroing, session, workshop]);
        }
      }
    }
  }
  const factors = columnsOf(rows, 3);
  return {
    name,
    random: ["zeroing", "session", "workshop"],
    factors,
    zones: undefined,
    response: respond(random, factors, [0.5, 0.8, 0.6], 0.4, () => 500),
  };
}

/** Four factors that meet at random. */
export function fourFactorStudy(
  name: string,
  seed: number,
  readings: number,
): MadeStudy {
  const random = new Random(seed);
  const levels = [500, 100, 40, 12];
  const rows = Array.from(
    { length: readings },
    () => [...levels.map((count) => random.integer(count)), random.integer(3)],
  );
  const [zone, ...factors] = [rows.map((row) => row[4]), ...columnsOf(rows, 4)];
  return {
    name,
    random: ["zeroing", "diameter", "operator", "grade"],
    factors,
    zones: (zone as number[]).map((code) => ZONES[code]),
    response: respond(
      random,
      factors as Int32Array[],
      [0.7, 0.4, 0.3, 0.5],
      0.5,
      (row) => 700 + 2 * (zone as number[])[row],
    ),
  };
}
