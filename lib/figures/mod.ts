/**
 * Results as pictures that a notebook, a page and a printer can show.
 *
 * @example Do the zones agree?
 * ```ts
 * import { zonesFigure } from "sagbook/figures/mod.ts";
 * import { ok } from "node:assert/strict";
 *
 * const figure = await zonesFigure({
 *   reference: { label: "centre", distance: 0 },
 *   zones: [{ label: "edge", distance: 88, difference: -0.0012 }],
 *   tolerance: 0.001,
 * }, { title: "Not decided: read two more sets" });
 * ok(figure.svg.startsWith("<svg "));
 * ```
 *
 * @module
 */
export {
  elementFigure,
  type ElementLabels,
  type HtmlFigure,
} from "./element_figure.ts";
export {
  type CellFigureOptions,
  type Figure,
  figure,
  type FigureSettings,
  svgFigure,
} from "./figure.ts";
export type { Interval } from "./interval.ts";
export { planFigure } from "./plan_figure.ts";
export type {
  PlanFigureInput,
  PlanFigureReading,
} from "./plan_figure_input.ts";
export {
  profileFigure,
  type ProfileFigureInput,
  type ProfileFigurePoint,
} from "./profile_figure.ts";
export {
  readingsFigure,
  type ReadingsFigureInput,
  type ReadingsFigureReading,
} from "./readings_figure.ts";
export { zonesFigure } from "./zones_figure.ts";
export type {
  ZonesFigureInput,
  ZonesFigureZone,
} from "./zones_figure_input.ts";
