/**
 * A name that could be typed next.
 *
 * @module
 */

/** A name that fits at the cursor. */
export interface CellCompletion {
  /** The text to put in. */
  readonly text: string;
  /** What it is, such as "function". */
  readonly kind: string;
}
