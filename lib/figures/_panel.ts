/**
 * One drawing area with its axes.
 *
 * @module
 */
import {
  type DomNode,
  type Drawing,
  type PlotModule,
  writeChildren,
} from "./_dom.ts";
import { clearLogLabels } from "./_log_labels.ts";
import { textWidth } from "./_text_width.ts";
import { ID, ink } from "./_theme.ts";

/** Space at the edge of a figure in px. */
export const EDGE = 12;
/** Font size inside panels in px. */
export const TEXT_SIZE = 16;
/** Height of a line of such text in px. */
export const LINE = TEXT_SIZE * 1.3;

/** One axis of a panel. */
export interface Axis {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Writes a tick; a line break makes two lines. */
  readonly label: (value: number) => string;
  readonly grid?: boolean;
  readonly log?: boolean;
}

/** One drawing area with its axes. */
export interface Panel {
  /** What the vertical axis shows, with its unit; stands above the panel. */
  readonly yTitle?: string;
  /** What the horizontal axis shows, with its unit. */
  readonly xTitle?: string;
  /** Height of the drawing area in px, or a multiple of its width. */
  readonly height: number | { readonly perWidth: number };
  /** Left out: no axis is drawn. */
  readonly x?: Axis;
  readonly y?: Axis;
  /** A second horizontal axis on top, in other numbers. */
  readonly top?: {
    /** Where it is marked, in numbers of the axis below; there unless told. */
    readonly ticks?: readonly number[];
    readonly title: string;
    readonly label: (x: number) => string;
  };
  /** Domains of a panel without axes. */
  readonly domains?: {
    readonly x: [number, number];
    readonly y: [number, number];
  };
  /** Space kept free at the right for labels inside the drawing, in px. */
  readonly right?: number;
  /** The marks, with the size of the drawing area in px. */
  readonly marks: (
    Plot: PlotModule,
    area: { width: number; height: number },
  ) => unknown[];
}

const linesOf = (text: string) => text.split("\n");

const widthOf = (label: string) =>
  Math.max(...linesOf(label).map((line) => textWidth(line, TEXT_SIZE)));

/** Where a value lies along an axis, as a share of its length. */
function shareOf({ domain: [low, high], log }: Axis, value: number): number {
  return log
    ? Math.log(value / low) / Math.log(high / low)
    : (value - low) / (high - low);
}

/** Room around a drawing area for its axes, in px. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Finds the room that a panel's labels need. */
export function marginsOf(
  { x, y, top, right = 0 }: Panel,
  width: number,
): Margins {
  const widest = Math.max(
    0,
    ...(y?.ticks ?? []).map((tick) => widthOf(y!.label(tick))),
  );
  const left = y === undefined
    ? EDGE
    : Math.min(EDGE + widest + 9, width * 0.6);
  const inner = width - left - Math.max(EDGE, right);
  const both = x === undefined
    ? []
    : top === undefined
    ? [x]
    : [x, { ticks: top.ticks ?? x.ticks, label: top.label }];
  const labels = both.flatMap(({ ticks, label }) =>
    ticks.map((tick) => ({
      label: label(tick),
      share: shareOf(x!, tick),
      half: widthOf(label(tick)) / 2,
    }))
  );
  const over = (share: (l: { share: number }) => number) =>
    Math.max(0, ...labels.map((l) => l.half + 4 - share(l) * inner));
  const rows = Math.max(
    0,
    ...labels.map(({ label }) => label === "" ? 0 : linesOf(label).length),
  );
  return {
    left: Math.max(left, over(({ share }) => share)),
    right: Math.max(EDGE, right, over(({ share }) => 1 - share)),
    top: (y === undefined ? 4 : 16) + (top === undefined ? 0 : LINE + 8),
    bottom: rows === 0 ? 6 : 8 + rows * LINE,
  };
}

/** The lines that a label fills; blank ones above it leave room for others. */
function rowsOf(label: string): number[] {
  return linesOf(label).flatMap((line, row) => line === "" ? [] : [row]);
}

function fits(axis: Axis, area: number): Axis["label"] {
  const ticks = [...axis.ticks].sort((a, b) => a - b);
  const labels = ticks.map((tick) => axis.label(tick));
  const widths = labels.map(widthOf);
  const clear = (stride: number) => {
    const ends: number[] = [];
    return ticks.every((tick, i) => {
      if (i % stride !== 0) return true;
      const middle = shareOf(axis, tick) * area;
      const rows = rowsOf(labels[i]);
      if (rows.some((row) => middle - widths[i] / 2 < ends[row])) return false;
      for (const row of rows) ends[row] = middle + widths[i] / 2 + 6;
      return true;
    });
  };
  let stride = 1;
  while (stride < ticks.length && !clear(stride)) stride++;
  const kept = new Set(ticks.filter((_, i) => i % stride === 0));
  return (value) => kept.has(value) ? axis.label(value) : "";
}

function frame(
  Plot: PlotModule,
  panel: Panel,
  area: { width: number; height: number },
) {
  const { x, y, top } = panel;
  const axis = { fontSize: TEXT_SIZE, label: null } as const;
  const common = { color: ink("quiet"), tickSize: 5, tickPadding: 4, ...axis };
  const labelled = (along: Axis, anchor: "top" | "bottom") => {
    const label = fits(along, area.width);
    return Plot.axisX(along.ticks.filter((tick) => label(tick) !== ""), {
      ...common,
      anchor,
      lineHeight: 1.3,
      text: label,
    });
  };
  return [
    x?.grid
      ? Plot.gridX([...x.ticks], { stroke: ink("line"), strokeOpacity: 1 })
      : null,
    y?.grid
      ? Plot.gridY([...y.ticks], { stroke: ink("line"), strokeOpacity: 1 })
      : null,
    x && labelled(x, "bottom"),
    x && top &&
    labelled({ ...x, ticks: top.ticks ?? x.ticks, label: top.label }, "top"),
    y &&
    Plot.axisY([...y.ticks], {
      ...common,
      lineHeight: 1.2,
      text: y.log ? clearLogLabels(y, area.height, TEXT_SIZE * 1.1) : y.label,
    }),
  ];
}

/** A panel that is drawn, and the room it took. */
export interface DrawnPanel {
  readonly svg: string;
  readonly height: number;
  /** Left edge of the drawing area in px. */
  readonly left: number;
  /** Width of the drawing area in px. */
  readonly inner: number;
}

/** Draws a panel as wide as the figure. */
export function drawPanel(
  { Plot, document }: Drawing,
  panel: Panel,
  width: number,
  margin: Margins,
): DrawnPanel {
  const inner = width - margin.left - margin.right;
  const height = typeof panel.height === "number"
    ? panel.height
    : inner * panel.height.perWidth;
  const area = { width: inner, height };
  const domain = (axis: Axis | undefined, plain?: [number, number]) => ({
    axis: null,
    domain: axis === undefined ? plain : [...axis.domain],
    type: axis?.log ? "log" as const : "linear" as const,
  });
  const marks = [...frame(Plot, panel, area), ...panel.marks(Plot, area)]
    .filter(Boolean);
  const plot = Plot.plot(
    {
      document,
      width,
      height: height + margin.top + margin.bottom,
      marginLeft: margin.left,
      marginRight: margin.right,
      marginTop: margin.top,
      marginBottom: margin.bottom,
      x: domain(panel.x, panel.domains?.x),
      y: domain(panel.y, panel.domains?.y),
      marks: marks as never,
    } as unknown as Parameters<PlotModule["plot"]>[0],
  );
  const svg = writeChildren(plot as unknown as DomNode, `${ID}-`, true);
  return {
    svg,
    left: margin.left,
    height: height + margin.top + margin.bottom,
    inner,
  };
}
