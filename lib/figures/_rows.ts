/**
 * Rows with names on the left, the first on top.
 *
 * @module
 */
import type { Axis } from "./_panel.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { wrapText } from "./_text_width.ts";

/** Height of one row in px. */
export const ROW = 40;

/** A vertical axis of named rows; row `i` lies at `i`. */
export function rowsAxis(
  labels: readonly string[],
  room = 150,
  most = 2,
): Axis {
  return {
    domain: [labels.length - 0.5, -0.5],
    ticks: labels.map((_, i) => i),
    label: (i) => {
      const lines = wrapText(labels[i], TEXT_SIZE, room);
      if (lines.length <= most) return lines.join("\n");
      const kept = lines.slice(0, most);
      return kept.join("\n").replace(/.?$/, "…");
    },
  };
}

/**
 * A horizontal axis of named columns; column `i` lies at `i`.
 *
 * Names are drawn as far as they fit, evenly thinned.
 */
export function columnsAxis(labels: readonly string[], room = 90): Axis {
  return {
    domain: [-0.5, labels.length - 0.5],
    ticks: labels.map((_, i) => i),
    label: (i) => wrapText(labels[i], TEXT_SIZE, room).slice(0, 3).join("\n"),
  };
}
