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
export { figurePng, type FigurePngOptions, figurePngs } from "./figure_png.ts";
export { figureSvg, type FigureSvgOptions } from "./figure_svg.ts";
export { planFigure } from "./plan_figure.ts";
export type {
  PlanFigureInput,
  PlanFigureReading,
} from "./plan_figure_input.ts";
export { zonesFigure } from "./zones_figure.ts";
export type {
  ZonesFigureInput,
  ZonesFigureZone,
} from "./zones_figure_input.ts";
export {
  budgetFigure,
  type BudgetFigureInput,
  type BudgetFigureLine,
} from "./budget_figure.ts";
export {
  canTellApartFigure,
  type CanTellApartFigureBar,
  type CanTellApartFigureInput,
} from "./can_tell_apart_figure.ts";
export {
  componentIntervalsFigure,
  type ComponentIntervalsFigureComponent,
  type ComponentIntervalsFigureInput,
} from "./component_intervals_figure.ts";
export {
  componentsFigure,
  type ComponentsFigureInput,
  type ComponentsFigureZeroing,
} from "./components_figure.ts";
export {
  controlChartFigure,
  type ControlChartFigureChart,
  type ControlChartFigureInput,
} from "./control_chart_figure.ts";
export {
  densityFigure,
  type DensityFigureBin,
  type DensityFigureInput,
} from "./density_figure.ts";
export {
  focalLengthFigure,
  type FocalLengthFigureInput,
  type FocalLengthFigurePiece,
  type FocalLengthFigurePrediction,
} from "./focal_length_figure.ts";
export {
  gradesTimelineFigure,
  type GradesTimelineFigureInput,
  type GradesTimelineFigureStretch,
} from "./grades_timeline_figure.ts";
export {
  powerFigure,
  type PowerFigureInput,
  type PowerFigurePlan,
} from "./power_figure.ts";
export {
  profileFigure,
  type ProfileFigureInput,
  type ProfileFigurePoint,
} from "./profile_figure.ts";
export {
  progressFigure,
  type ProgressFigureInput,
  type ProgressFigureSession,
} from "./progress_figure.ts";
export {
  rateFigure,
  type RateFigureInput,
  type RateFigureStretch,
} from "./rate_figure.ts";
export {
  readingsFigure,
  type ReadingsFigureInput,
  type ReadingsFigureReading,
} from "./readings_figure.ts";
export {
  ringChoiceFigure,
  type RingChoiceFigureInput,
  type RingChoiceFigurePoint,
  type RingChoiceFigureQuestion,
} from "./ring_choice_figure.ts";
export {
  zonesOverTimeFigure,
  type ZonesOverTimeFigureInput,
  type ZonesOverTimeFigureZone,
} from "./zones_over_time_figure.ts";
