/**
 * A plot of the user's own, with title, key and caption drawn by us.
 *
 * @module
 */
import type { CellFigureOptions } from "./figure.ts";
import { type DomNode, loadDrawing, writeChildren } from "./_dom.ts";
import { keyBlock, textSvg } from "./_legend.ts";
import { type Drawn, finishPage, WIDTH } from "./_page.ts";
import { EDGE } from "./_panel.ts";
import { type PlotScale, scaleKey } from "./_scale_key.ts";
import { textWidth, wrapText } from "./_text_width.ts";
import { ID, ink, SERIES } from "./_theme.ts";

interface PlotElement extends DomNode {
  scale(name: string): PlotScale | undefined;
}

const TITLE_SIZE = 17;
const SIZE = 13;

function withoutLegend(scale: unknown): { wanted: boolean; scale: unknown } {
  if (typeof scale !== "object" || scale === null) {
    return { wanted: false, scale };
  }
  const { legend, ...rest } = scale as Record<string, unknown>;
  return { wanted: legend !== undefined && legend !== false, scale: rest };
}

/** Few classes without colours of the user's own get ours, fit for dark pages. */
function takesOurColors(scale: PlotScale | undefined, given: unknown): boolean {
  if (scale === undefined || scale.domain.length > SERIES.length) return false;
  const asked = ["range", "scheme", "interpolate", "unknown"]
    .some((name) => name in Object(given));
  return ["ordinal", "categorical"].includes(scale.type) && !asked;
}

function numberIn(element: DomNode, name: string, otherwise: number): number {
  const value = Number(element.getAttribute?.(name) ?? NaN);
  return Number.isFinite(value) ? value : otherwise;
}

/** Draws it; the parts that Plot would write as HTML become part of the SVG. */
export async function drawCellPlot(options: CellFigureOptions): Promise<Drawn> {
  const { title, description, caption, idPrefix, subtitle, ...rest } = options;
  const { Plot, document } = await loadDrawing();
  const scales = ["color", "symbol", "opacity", "r"].map((name) =>
    [name, withoutLegend(rest[name])] as const
  );
  const wanted = new Set(scales.flatMap(([name, s]) => s.wanted ? [name] : []));
  const given = Object.fromEntries(scales.map(([name, s]) => [name, s.scale]));
  const draw = (more: object) =>
    Plot.plot(
      {
        width: WIDTH,
        marginLeft: 64,
        marginRight: 28,
        marginBottom: 44,
        ...rest,
        ...given,
        ...more,
        document,
      } as unknown as Parameters<typeof Plot.plot>[0],
    ) as unknown as PlotElement;
  let plot = draw({});
  if (takesOurColors(plot.scale("color"), given.color)) {
    const range = SERIES.map((role) => ink(role));
    plot = draw({ color: { ...given.color as object, range } });
  }
  const width = numberIn(plot, "width", WIDTH);
  const room = width - 2 * EDGE;
  const parts: string[] = [];
  let y = EDGE;
  const say = (text: unknown, size: number, bold: boolean) => {
    if (typeof text !== "string" || text === "") return;
    const lines = wrapText(text, size, room, bold);
    y += size;
    parts.push(textSvg(lines, EDGE, y, { size, bold }));
    y += (lines.length - 1) * size * 1.3 + 6;
  };
  say(title, TITLE_SIZE, true);
  say(subtitle, SIZE, false);
  const scale = (name: string) =>
    wanted.has(name) ? plot.scale(name) : undefined;
  const key = scaleKey(scale("color") ?? undefined, scale("symbol"));
  const block = keyBlock(key, EDGE, y + 4, room);
  y += block.height + 4;
  const body = writeChildren(plot, `${ID}-`, true);
  parts.push(
    block.svg,
    `<g transform="translate(0,${
      Number(y.toFixed(2))
    })" font-size="${SIZE}">${body}</g>`,
  );
  y += numberIn(plot, "height", 300) + 4;
  say(caption, SIZE, false);
  return finishPage({
    title,
    description,
    idPrefix,
    svg: parts.join(""),
    width: Math.max(width, textWidth("00", SIZE)),
    height: Math.ceil(y + EDGE / 2),
  });
}
