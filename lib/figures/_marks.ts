/**
 * Marks that several figures share.
 *
 * @module
 */
import type { PlotModule } from "./_dom.ts";
import { TEXT_SIZE } from "./_panel.ts";
import { capSymbol, plotSymbol, type ShapeName } from "./_symbols.ts";
import { ink, type Role } from "./_theme.ts";

/** One vertical bar. */
export interface Bar {
  readonly x: number;
  readonly y1: number;
  readonly y2: number;
}

/** One horizontal bar. */
export interface FlatBar {
  readonly y: number;
  readonly x1: number;
  readonly x2: number;
}

/** Vertical intervals with ends. */
export function uprightBars(
  Plot: PlotModule,
  bars: readonly Bar[],
  { role = "ink" as Role, width = 1.6, caps = true } = {},
): unknown[] {
  const stroke = ink(role);
  const ends = bars.flatMap(({ x, y1, y2 }) => [{ x, y: y1 }, { x, y: y2 }]);
  return [
    Plot.ruleX(bars, {
      x: "x",
      y1: "y1",
      y2: "y2",
      stroke,
      strokeWidth: width,
    }),
    caps && Plot.dot(ends, {
      x: "x",
      y: "y",
      r: 5,
      symbol: capSymbol("flat"),
      stroke,
      strokeWidth: width,
    }),
  ];
}

/** Horizontal intervals with ends. */
export function flatBars(
  Plot: PlotModule,
  bars: readonly FlatBar[],
  { role = "ink" as Role, width = 1.6, caps = true } = {},
): unknown[] {
  const stroke = ink(role);
  const ends = bars.flatMap(({ y, x1, x2 }) => [{ y, x: x1 }, { y, x: x2 }]);
  return [
    Plot.ruleY(bars, {
      y: "y",
      x1: "x1",
      x2: "x2",
      stroke,
      strokeWidth: width,
    }),
    caps && Plot.dot(ends, {
      x: "x",
      y: "y",
      r: 5,
      symbol: capSymbol("upright"),
      stroke,
      strokeWidth: width,
    }),
  ];
}

/** Points of one shape, in the units of the axes. */
export function points(
  Plot: PlotModule,
  data: readonly { readonly x: number; readonly y: number }[],
  shape: ShapeName,
  { fill, stroke, size = 5, width = 1.5 }: {
    fill?: Role;
    stroke?: Role;
    size?: number;
    width?: number;
  },
): unknown {
  return Plot.dot(data, {
    x: "x",
    y: "y",
    r: size,
    symbol: plotSymbol(shape),
    fill: fill === undefined ? "none" : ink(fill),
    stroke: stroke === undefined ? "none" : ink(stroke),
    strokeWidth: width,
  });
}

/** A wanted range over the whole width, with dashed edges. */
export function levelBand(
  Plot: PlotModule,
  [x1, x2]: readonly [number, number],
  [y1, y2]: readonly [number, number],
): unknown[] {
  return [
    Plot.rect([0], { x1, x2, y1, y2, fill: ink("band") }),
    Plot.ruleY([y1, y2], {
      stroke: ink("bandEdge"),
      strokeDasharray: "5 3",
      strokeWidth: 1.5,
    }),
  ];
}

/** A line through points. */
export function path(
  Plot: PlotModule,
  data: readonly { readonly x: number; readonly y: number }[],
  role: Role,
  { width = 2, dash }: { width?: number; dash?: string } = {},
): unknown {
  return Plot.line(data, {
    x: "x",
    y: "y",
    stroke: ink(role),
    strokeWidth: width,
    strokeDasharray: dash,
  });
}

/** An area between two lines. */
export function between(
  Plot: PlotModule,
  data: readonly Bar[],
  role: Role,
): unknown {
  return Plot.areaY(data, { x: "x", y1: "y1", y2: "y2", fill: ink(role) });
}

/** Words inside the drawing area. */
export function words(
  Plot: PlotModule,
  text: string,
  x: number,
  y: number,
  {
    role = "ink" as Role,
    anchor = "middle" as "start" | "middle" | "end",
    dx = 0,
    dy = 0,
    size = TEXT_SIZE,
  } = {},
): unknown {
  return Plot.text([text], {
    x: [x],
    y: [y],
    dx,
    dy,
    textAnchor: anchor,
    fontSize: size,
    fill: ink(role),
    stroke: ink("paper"),
    strokeWidth: 3,
  });
}
