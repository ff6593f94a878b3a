/**
 * A key made from the colour and symbol scales of a plot.
 *
 * @module
 */
import type { KeyItem } from "./_legend.ts";
import type { ShapeDrawing } from "./_symbols.ts";
import { written } from "./_ticks.ts";

/** A scale as a plot gives it back. */
export interface PlotScale {
  readonly type: string;
  readonly domain: readonly unknown[];
  readonly range?: readonly unknown[];
  apply(value: unknown): unknown;
}

/** Steps of a colour scale that has no steps of its own. */
const STEPS = 5;

/** Fewest decimals, up to four figures, that write every edge exactly. */
function edgeText(edges: readonly number[]): (edge: number) => string {
  const size = Math.max(...edges.map(Math.abs)) || 1;
  const most = Math.max(0, 3 - Math.floor(Math.log10(size)));
  let decimals = 0;
  const exact = (edge: number) =>
    Math.abs(Number(edge.toFixed(decimals)) - edge) < size * 1e-9;
  while (decimals < most && !edges.every(exact)) decimals++;
  return (edge) => written(edge, decimals);
}

function steps(scale: PlotScale): [label: string, color: string][] {
  const domain = scale.domain.map(Number);
  const color = (value: number) => String(scale.apply(value));
  if (["threshold", "quantile", "quantize"].includes(scale.type)) {
    const [first, last] = [domain[0], domain.at(-1)!];
    const text = edgeText(domain);
    const gap = domain.length > 1 ? domain[1] - first : Math.abs(first) || 1;
    return [
      [`below ${text(first)}`, color(first - gap)],
      ...domain.slice(1).map((to, i): [string, string] => [
        `${text(domain[i])} to ${text(to)}`,
        color((domain[i] + to) / 2),
      ]),
      [`${text(last)} and above`, color(last + gap)],
    ];
  }
  const [low, high] = [domain[0], domain.at(-1)!];
  const at = (share: number) => low + (high - low) * share / STEPS;
  const text = edgeText(Array.from({ length: STEPS + 1 }, (_, i) => at(i)));
  return Array.from({ length: STEPS }, (_, i) => {
    return [
      `${text(at(i))} to ${text(at(i + 1))}`,
      color(at(i + 0.5)),
    ];
  });
}

function isShape(value: unknown): value is ShapeDrawing {
  return typeof value === "object" && value !== null && "draw" in value;
}

/**
 * Makes the entries of a key.
 *
 * A scale of classes gives an entry for each class, with its shape where
 * colour and shape stand for the same classes. A continuous colour scale
 * gives five steps.
 *
 * @param color The colour scale, where the plot has one and it is wanted.
 * @param symbol The symbol scale, where the plot has one and it is wanted.
 */
export function scaleKey(
  color: PlotScale | undefined,
  symbol: PlotScale | undefined,
): KeyItem[] {
  const classes = symbol ?? color;
  if (classes === undefined) return [];
  if (classes === color && !["ordinal", "categorical"].includes(color.type)) {
    return steps(color).map(([label, paint]) => ({
      label,
      sample: { kind: "swatch", color: paint },
    }));
  }
  const inColor = new Set(color?.domain ?? []);
  return classes.domain.map((value): KeyItem => {
    const paint = inColor.has(value)
      ? String(color!.apply(value))
      : "currentColor";
    const drawing = symbol?.apply(value);
    return {
      label: String(value),
      sample: isShape(drawing)
        ? { kind: "drawing", drawing, color: paint }
        : { kind: "swatch", color: paint },
    };
  });
}
