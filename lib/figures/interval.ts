/**
 * The ends of an interval that a figure draws.
 *
 * @module
 */
export type { Interval } from "../statistics/interval.ts";
