/**
 * Where the radius is going: sessions against work, forecast and target.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyInterval, keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, plainLength } from "./_length_axis.ts";
import { between, levelBand, path, points, uprightBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, interval, positive, some } from "./_refuse.ts";
import { ink } from "./_theme.ts";
import { written } from "./_ticks.ts";

/** One session's result. */
export interface ProgressFigureSession {
  /** Work done before it, in wets or minutes, counted from one start. */
  readonly work: number;
  /** Radius or sag found, in mm. */
  readonly value: number;
  /** Its 95 % interval, in mm. */
  readonly interval95?: Interval;
  /** True where the work changed the radius the wrong way. */
  readonly wrongWay?: boolean;
}

/** What `progressFigure` draws. */
export interface ProgressFigureInput {
  /** What is followed. */
  readonly quantity: "radius" | "sag";
  /** What work is counted in. */
  readonly workUnit: "wets" | "minutes";
  /** The sessions. */
  readonly sessions: readonly ProgressFigureSession[];
  /** The fitted line, in mm. */
  readonly fit?: readonly { readonly work: number; readonly value: number }[];
  /** The forecast with its prediction interval, in mm. */
  readonly forecast?: readonly (
    & { readonly work: number; readonly value: number }
    & Interval
  )[];
  /** The target, in mm. */
  readonly target?: number;
  /** How far from it is still good, in mm. */
  readonly tolerance?: number;
  /** Most work that keeps the risk of passing the target low. */
  readonly stop?: { readonly work: number; readonly risk: number };
}

const ACTION = "the progress";
/** With more sessions than this the dots become small. */
const MANY = 60;

function check(input: ProgressFigureInput) {
  const { sessions, fit = [], forecast = [], target, tolerance, stop } = input;
  for (const { work, value, interval95 } of some(sessions, ACTION, "session")) {
    finite(work, ACTION, "the work of a session", input.workUnit);
    finite(value, ACTION, `the ${input.quantity} of a session`);
    if (interval95) interval(interval95, ACTION, "the interval of a session");
  }
  for (const point of fit) finite(point.value, ACTION, "the fitted line");
  for (const point of forecast) {
    finite(point.value, ACTION, "the forecast");
    interval(point, ACTION, "the forecast");
  }
  if (target !== undefined) finite(target, ACTION, "the target");
  if (tolerance !== undefined) positive(tolerance, ACTION, "the tolerance");
  if (stop) finite(stop.work, ACTION, "the most work", input.workUnit);
}

/**
 * Draws radius or sag against the work done, with the fitted line, the
 * forecast as a widening band, the target and its tolerance, and the most
 * work that keeps the risk of passing the target low.
 *
 * @param input Sessions, line, forecast and target in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no session, or a value is not finite.
 *
 * @example
 * ```ts
 * import { progressFigure } from "sagbook/figures/progress_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await progressFigure({
 *   quantity: "radius",
 *   workUnit: "wets",
 *   sessions: [{ work: 0, value: 3120 }, { work: 10, value: 3060 }],
 *   target: 3000,
 *   stop: { work: 16, risk: 0.05 },
 * });
 * match(description, /2 sessions, radius from 3120\.0 mm to 3060\.0 mm/);
 * ```
 */
export async function progressFigure(
  input: ProgressFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { quantity, workUnit, fit = [], forecast = [], target, stop } = input;
  const plain = plainLength(settings.unit ?? "mm");
  const k = plain.perMillimetre;
  const sessions = [...input.sessions].sort((a, b) => a.work - b.work);
  const dots = sessions.map(({ work, value, wrongWay }) => ({
    x: work,
    y: value * k,
    wrongWay: wrongWay === true,
  }));
  const bars = sessions.flatMap(({ work, interval95: ends }) =>
    ends ? [{ x: work, y1: ends.low * k, y2: ends.high * k }] : []
  );
  const line = fit.map(({ work, value }) => ({ x: work, y: value * k }));
  const fan = forecast.map(({ work, value, low, high }) => ({
    x: work,
    y: value * k,
    y1: low * k,
    y2: high * k,
  }));
  const aim = target === undefined ? undefined : target * k;
  const slack = (input.tolerance ?? 0) * k;
  const x = axisAround(
    [...dots, ...line, ...fan].map((point) => point.x)
      .concat(stop ? [stop.work] : []),
    { least: 10, pad: 0.04, grid: false, tight: true },
  );
  const y = axisAround([
    ...[...dots, ...line, ...fan].map((point) => point.y),
    ...[...bars, ...fan].flatMap(({ y1, y2 }) => [y1, y2]),
    ...(aim === undefined ? [] : [aim - slack, aim + slack]),
  ], { least: quantity === "radius" ? k : 0.002 * k });
  const step = quantity === "radius" ? 1 : 0.01;
  const text = (value: number) => plain.text(value, step);
  const crowded = dots.length > MANY;
  const wrong = dots.filter(({ wrongWay }) => wrongWay);
  const [first, last] = [sessions[0], sessions.at(-1)!];
  const percent = stop ? `${Number((100 * stop.risk).toFixed(1))} %` : "";
  const name = quantity === "radius" ? "Radius of curvature" : "Sag";
  return svgFigure(
    await drawPage({
      title: settings.title ?? `${name} against the work done`,
      description: settings.description ??
        `${sessions.length} ${
          sessions.length === 1 ? "session" : "sessions"
        }, ${quantity} from ${text(first.value)} to ${text(last.value)}${
          target === undefined ? "" : `, target ${text(target)}`
        }${
          stop
            ? `; up to ${
              written(stop.work, 0)
            } ${workUnit} the risk of passing it stays at ${percent}`
            : ""
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyShape("session", "circle", { fill: "ink", size: 4.5 }),
        bars.length > 0 && keyInterval("95 % interval", "ink"),
        wrong.length > 0 &&
          keyShape("went the wrong way", "triangleDown", { fill: "alarm" }),
        line.length > 1 && keyLine("fitted", "first"),
        fan.length > 1 && keyArea("forecast, 95 %", "haze", "first"),
        aim !== undefined &&
          (slack > 0
            ? keyArea("target ± tolerance", "band", "bandEdge", "5 3")
            : keyLine("target", "bandEdge", { dash: "5 3" })),
        stop && keyLine(`stop here: risk ${percent}`, "alarm", { dash: "2 3" }),
      ),
      panels: [{
        yTitle: `${name} (${plain.unit})`,
        xTitle: `Work done (${workUnit})`,
        height: 260,
        x,
        y,
        marks: (Plot) => [
          ...(aim === undefined ? [] : levelBand(
            Plot,
            x.domain,
            [aim - slack, aim + slack],
          )),
          fan.length > 1 && between(Plot, fan, "haze"),
          ...(["y1", "y2"] as const).map((edge) =>
            path(Plot, fan.map((p) => ({ x: p.x, y: p[edge] })), "first", {
              width: 0.8,
            })
          ),
          path(Plot, fan, "first", { dash: "6 3" }),
          path(Plot, line, "first"),
          stop && Plot.ruleX([stop.work], {
            stroke: ink("alarm"),
            strokeDasharray: "2 3",
            strokeWidth: 2,
          }),
          ...uprightBars(Plot, bars, { width: 1.4 }),
          points(Plot, dots.filter(({ wrongWay }) => !wrongWay), "circle", {
            fill: "ink",
            ...(crowded
              ? { size: 2 }
              : { stroke: "paper", width: 1, size: 4.5 }),
          }),
          points(Plot, wrong, "triangleDown", { fill: "alarm", size: 5.5 }),
        ],
      }],
    }),
  );
}
