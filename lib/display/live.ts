/**
 * What a page needs to make a still figure live.
 *
 * @module
 */

/**
 * The form of an output that says which live figure it is, beside its picture.
 *
 * It names a figure of the program's own and its settings; it carries no code.
 */
export const LIVE_TYPE = "application/vnd.sagbook.live+json";

/** A live figure as data. */
export interface LiveOutput {
  /** Its name. */
  readonly figure: string;
  /** Settings it starts with, by name. */
  readonly settings: Readonly<Record<string, number | string>>;
  /** The numbers it tells at these settings: what, and the figures. */
  readonly numbers: readonly (readonly [string, string])[];
}
