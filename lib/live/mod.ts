/**
 * Figures with sliders that recompute in the reader's browser.
 *
 * @example What a figure tells before anyone moves a slider
 * ```ts
 * import { liveFigure } from "sagbook/live/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(liveFigure("chord-and-sag").title, "The chord and the sag");
 * ```
 *
 * @module
 */
export {
  LIVE_FIGURES,
  type LiveFigure,
  liveFigure,
  type LiveFigureName,
} from "./live_figure.ts";
export { liveScript } from "./live_script.ts";
