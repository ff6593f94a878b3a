/**
 * One picture to keep.
 *
 * @module
 */
import type { Figure } from "sagbook/figures/figure.ts";

/** One picture to keep. */
export interface Sample {
  readonly name: string;
  readonly draw: () => Promise<Figure>;
}
