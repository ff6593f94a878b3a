/**
 * The version of the results that reports write as JSON.
 *
 * @module
 */

/**
 * Stands in every file of results as `results_version`. It grows by one when
 * an entry is renamed, taken away or changes its unit or its sign, not when one
 * is added.
 *
 * @example
 * ```ts
 * import { RESULTS_VERSION } from "sagbook/narrative/results_version.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(RESULTS_VERSION, 2);
 * ```
 */
export const RESULTS_VERSION = 2;
