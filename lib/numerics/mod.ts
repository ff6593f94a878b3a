/**
 * Random numbers from a seed, roots, and small dense matrices.
 *
 * @example Draw, factor and solve
 * ```ts
 * import { cholesky, findRoot, Random } from "sagbook/numerics/mod.ts";
 * import { equal, ok } from "node:assert/strict";
 *
 * ok(Number.isFinite(new Random(1).normal()));
 * equal(cholesky([[9]])[0][0], 3);
 * equal(findRoot((x) => x - 1, 0, 4), 1);
 * ```
 *
 * @module
 */
export * from "./group_places.ts";
export * from "./growing_numbers.ts";
export * from "./lazy_list.ts";
export * from "./least_squares.ts";
export * from "./matrix.ts";
export * from "./random.ts";
export * from "./root.ts";
