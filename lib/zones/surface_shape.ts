/**
 * The shape of the surface where it was touched, whatever smooth form it has.
 *
 * @module
 */
import { filterItems } from "../numerics/lazy_list.ts";
import { normalProbability } from "../statistics/normal_distribution.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { dot } from "./_even_terms.ts";
import { leastSphere, lowerFactor, solveLower } from "./_shape_algebra.ts";
import { placeMeans, seenFrom } from "./_shape_places.ts";
import type { Place } from "./place.ts";
import type { ProfilePoint } from "./profile.ts";
import type { Scope } from "./replicates.ts";
import type { MeasuredSet } from "./set_table.ts";

/** The shape of a surface of revolution, as far as it was touched. */
export interface SurfaceShape {
  /** Heights over the best sphere of the part touched, centre outward. */
  readonly points: readonly ProfilePoint[];
  /** Distance from the centre of the outermost point touched, in mm. */
  readonly seenTo: number;
  /** How many sets went in. */
  readonly sets: number;
}

/** What a shape needs besides the sets. */
export interface ShapeGround {
  /** Radius of the circle the feet touch on, in mm. */
  readonly contactCircle: number;
  /** Distance of the outermost point that foot or probe touched, in mm. */
  readonly seenTo: number;
  /** Display step in mm, 0 when none is known. */
  readonly step: number;
  /** Whether the answer is for any diameter or for those read. */
  readonly scope: Scope;
  /** Standard uncertainty of a drift that nobody could take out, in mm. */
  readonly drift?: number;
}

/** Nodes from the centre to the outermost point. */
const NODES = 41;
/** Lengths over which the surface may bend, as parts of `seenTo`. */
const LENGTHS = [0.1, 0.15, 0.22, 0.33];
/** Sizes that the departure may have, for each length. */
const SIZES = 24;
/**
 * Smallest size, in standard errors of what was read: readings that agree do
 * not prove that nothing lies between them.
 */
const LEAST = 2;
/** Candidates so much less likely (in logarithms) are left out: 1 in 60,000. */
const NEGLIGIBLE = 11;

/** How alike two heights are at a distance, for a bend of length 1. */
function alike(distance: number): number {
  const t = Math.sqrt(3) * distance;
  return (1 + t) * Math.exp(-t);
}

/** Likeness of the heights at all pairs of nodes of an even surface. */
function likeness(length: number, nodes: number): Float64Array[] {
  const at = Array.from({ length: nodes }, (_, k) => k / (NODES - 1) / length);
  return at.map((a) =>
    Float64Array.from(at, (b) => alike(Math.abs(a - b)) + alike(a + b))
  );
}

function times(matrix: readonly Float64Array[], vector: ArrayLike<number>) {
  return Float64Array.from(matrix, (row) => dot(row, vector));
}

interface Candidate {
  readonly logWeight: number;
  readonly mean: Float64Array;
  readonly deviation: Float64Array;
}

/**
 * Finds which shapes of revolution the zones leave possible.
 *
 * The departure is taken to be smooth and the same in every direction, of no
 * stated form: a random even curve whose size and whose length of bend are
 * not known beforehand. Every size and length (0.1 to 0.33 of the part
 * touched; the size no smaller than twice the standard error of what was read)
 * weighs as much as the readings make it likely; the band holds 95 %
 * of the curves that remain, scatter of the readings included. Heights are
 * those over the sphere that fits the touched part best (least squares over
 * its area). Beyond the outermost point touched nothing is said.
 *
 * Smoothness is an assumption: a fault narrower than about a fifth of the part
 * touched can lie outside the band between the points that feet and probe stood
 * on. How often the band holds invented surfaces is in
 * `tests/studies/RESULTS.md`.
 *
 * @param sets The sets of the session.
 * @param places The places.
 * @param ground Ring, part touched, display step and scope.
 * @returns Undefined when no set read two distances from the centre; without
 * a band when all there is are readings without a repeat.
 *
 * @see Rasmussen and Williams, Gaussian Processes for Machine Learning
 * (2006), 2.2 and 4.2 (Matérn, 3/2).
 *
 * @example The band allows more than the polynomial that fits
 * ```ts
 * import { surfaceShape } from "sagbook/zones/surface_shape.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { ok } from "node:assert/strict";
 *
 * const places = [0, 34, 67].map((distance) => ({
 *   id: "", label: "", distance: mm(distance), foot: "foot out" as const,
 *   threefold: 1,
 * }));
 * const sets = [0, 1, 2, 3].map((set) => ({
 *   label: "", zeroing: "",
 *   cells: [0.358, 0.363, 0.3635].map((sag, k) => ({
 *     sag: sag + 0.0003 * ((set + k) % 3), readings: 1,
 *   })),
 * }));
 * const ground = { contactCircle: 40, seenTo: 107, step: 0, scope: "any diameter" } as const;
 * const { points } = surfaceShape(sets, places, ground)!;
 * const { low, high } = points.at(-1)!.departure.interval95!;
 * ok(low < 0 && high > 0);
 * ```
 */
export function surfaceShape(
  sets: readonly MeasuredSet[],
  places: readonly Place[],
  ground: ShapeGround,
): SurfaceShape | undefined {
  const { contactCircle, seenTo, step, scope, drift = 0 } = ground;
  const whole = filterItems(sets, ({ cells }) => cells.every((cell) => cell));
  const spread = places.map(({ distance }) => distance);
  if (whole.length === 0 || Math.max(...spread) - Math.min(...spread) < 0.5) {
    return undefined;
  }
  const { means, variances, dof } = placeMeans(
    [...whole],
    places.length,
    step,
    scope,
    drift,
  );
  // Few looks know their own scatter badly.
  const widened = dof === 0
    ? 1
    : (studentTQuantile(0.025, dof, "upper") / 1.96) ** 2;
  const noise = variances.map((one) => one * widened);
  const spacing = seenTo / (NODES - 1);
  // Feet of unknown direction may have touched further out than is certain.
  const nodes = 2 + Math.ceil(
    Math.max(seenTo, ...spread.map((one) => one + contactCircle)) / spacing,
  );
  const seen = places.map((place) =>
    seenFrom(place, contactCircle, nodes, spacing)
  );
  const all = LENGTHS.flatMap((length) =>
    candidatesOf(length, seen, means, noise)
  );
  const most = Math.max(...all.map(({ logWeight }) => logWeight));
  const candidates = all.filter(({ logWeight }) =>
    logWeight > most - NEGLIGIBLE
  );
  const weights = candidates.map(({ logWeight }) => Math.exp(logWeight - most));
  const total = weights.reduce((sum, one) => sum + one, 0);
  const points = Array.from({ length: NODES }, (_, node): ProfilePoint => {
    const mixed = (of: (one: Candidate) => number): number =>
      candidates.reduce((sum, one, k) => sum + weights[k] * of(one), 0) / total;
    const value = mixed(({ mean }) => mean[node]);
    const distance = node * spacing;
    if (dof === 0) return { distance, departure: { value } };
    const reach = Math.max(
      ...candidates.map(({ mean, deviation }) =>
        Math.abs(mean[node] - value) + 8 * deviation[node]
      ),
    );
    const quantile = (wanted: number): number => {
      let [low, high] = [value - reach, value + reach];
      for (let k = 0; k < 26; k++) {
        const middle = (low + high) / 2;
        const below = mixed(({ mean, deviation }) =>
          normalProbability((middle - mean[node]) / deviation[node])
        );
        if (below < wanted) low = middle;
        else high = middle;
      }
      return (low + high) / 2;
    };
    const interval95 = { low: quantile(0.025), high: quantile(0.975) };
    return { distance, departure: { value, interval95 } };
  });
  return { points, seenTo, sets: whole.length };
}

/** What each size makes of the readings, at one length of bend. */
function candidatesOf(
  length: number,
  seen: readonly ReturnType<typeof seenFrom>[],
  means: readonly number[],
  noise: readonly number[],
): Candidate[] {
  const kernel = likeness(length, seen[0].weights.length);
  const p = means.length;
  const levelled = (rows: readonly ArrayLike<number>[]): Float64Array[] => {
    const sums = Array.from(
      { length: rows[0].length },
      (_, k) => rows.reduce((sum, row) => sum + row[k], 0) / p,
    );
    // Helmert's contrasts: orthonormal, free of the level.
    return Array.from({ length: p - 1 }, (_, i) => {
      const scale = 1 / Math.sqrt((i + 1) * (i + 2));
      return Float64Array.from(sums, (_, k) => {
        let sum = -(i + 1) * rows[i + 1][k];
        for (let j = 0; j <= i; j++) sum += rows[j][k];
        return scale * sum;
      });
    });
  };
  const looks = levelled(seen.map(({ weights }) => weights));
  const wanted = levelled(means.map((one) => [one])).map(([one]) => one);
  const doubts = seen.map(({ doubt }) =>
    doubt === undefined ? 0 : dot(doubt, times(kernel, doubt)) / 2
  );
  const spread = (variances: readonly number[]): Float64Array[] => {
    const rows = levelled(
      variances.map((one, j) =>
        Float64Array.from({ length: p }, (_, k) => j === k ? Math.sqrt(one) : 0)
      ),
    );
    return rows.map((a) => Float64Array.from(rows, (b) => dot(a, b)));
  };
  const [ofNoise, ofDoubt] = [spread(noise), spread(doubts)];
  const bent = looks.map((look) => times(kernel, look));
  const signal = looks.map((a, i) =>
    Float64Array.from(bent, (b, j) => dot(a, b) + ofDoubt[i][j])
  );
  const over = leastSphere(NODES);
  const cross = bent.map(over);
  const rows = kernel.slice(0, NODES).map(over);
  const own = Float64Array.from(
    { length: NODES },
    (_, node) => over(Float64Array.from(rows, (row) => row[node]))[node],
  );
  const typical = Math.sqrt(
    signal.reduce((sum, row, i) => sum + row[i], 0) / (p - 1),
  );
  const level = Math.sqrt(
    ofNoise.reduce((sum, row, i) => sum + row[i], 0) / (p - 1),
  );
  const largest = Math.max(level, ...wanted.map(Math.abs));
  const [least, most] = [
    LEAST * Math.max(level, 1e-3 * largest) / typical,
    30 * largest / typical,
  ];
  return Array.from({ length: SIZES }, (_, k): Candidate => {
    const size = (least * (most / least) ** (k / (SIZES - 1))) ** 2;
    const factor = lowerFactor(
      signal.map((row, i) => row.map((one, j) => size * one + ofNoise[i][j])),
    );
    const whitened = solveLower(factor, wanted);
    const logWeight = -dot(whitened, whitened) / 2 -
      factor.reduce((sum, row, i) => sum + Math.log(row[i]), 0);
    const mean = new Float64Array(NODES);
    const deviation = new Float64Array(NODES);
    for (let node = 0; node < NODES; node++) {
      const shared = solveLower(factor, cross.map((row) => size * row[node]));
      mean[node] = dot(shared, whitened);
      deviation[node] = Math.sqrt(
        Math.max(1e-12 * size, size * own[node] - dot(shared, shared)),
      );
    }
    return { logWeight, mean, deviation };
  });
}
