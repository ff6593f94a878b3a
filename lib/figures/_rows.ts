/**
 * Rows with names on the left, the first on top.
 *
 * @module
 */
import type { Axis } from "./_panel.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { fitText } from "./_text_width.ts";

/** Height of one row in px. */
export const ROW = 44;

/** A vertical axis of named rows; row `i` lies at `i`. */
export function rowsAxis(
  labels: readonly string[],
  room = 165,
  most = 2,
): Axis {
  return {
    domain: [labels.length - 0.5, -0.5],
    ticks: labels.map((_, i) => i),
    label: (i) => fitText(labels[i], TEXT_SIZE, room, most).join("\n"),
  };
}

/**
 * A horizontal axis of named columns; column `i` lies at `i`.
 *
 * Names are drawn as far as they fit, evenly thinned.
 */
export function columnsAxis(labels: readonly string[], room = 104): Axis {
  return {
    domain: [-0.5, labels.length - 0.5],
    ticks: labels.map((_, i) => i),
    label: (i) => fitText(labels[i], TEXT_SIZE, room, 3).join("\n"),
  };
}
