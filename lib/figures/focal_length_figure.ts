/**
 * From the ground radius to the focal length of the finished piece.
 *
 * @module
 */
import type { Interval } from "../statistics/interval.ts";
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyArea, keyInterval, keyLine, keyOf, keyShape } from "./_key.ts";
import { axisAround, plainLength } from "./_length_axis.ts";
import { between, flatBars, path, points, uprightBars } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { interval, positive } from "./_refuse.ts";

/** One finished piece of the shop. */
export interface FocalLengthFigurePiece {
  /** Radius at the end of grinding, in mm. */
  readonly radius: number;
  /** Its expanded uncertainty, in mm. */
  readonly radiusUncertainty?: number;
  /** Focal length measured later, in mm. */
  readonly focalLength: number;
  /** Its expanded uncertainty, in mm. */
  readonly focalLengthUncertainty?: number;
}

/** A focal length predicted for a ground radius. */
export interface FocalLengthFigurePrediction extends Interval {
  /** Radius at the end of grinding, in mm. */
  readonly radius: number;
  /** The focal length expected, in mm. */
  readonly focalLength: number;
}

/** What `focalLengthFigure` draws. */
export interface FocalLengthFigureInput {
  /** Finished pieces; none is allowed. */
  readonly pieces: readonly FocalLengthFigurePiece[];
  /** The prediction over a range of radii. */
  readonly band: readonly FocalLengthFigurePrediction[];
  /** The prediction for this piece. */
  readonly thisPiece?: FocalLengthFigurePrediction;
  /** Probability of the band; 0.95 where left out. */
  readonly confidence?: number;
}

const ACTION = "the focal lengths";

function check({ pieces, band, thisPiece }: FocalLengthFigureInput) {
  if (pieces.length === 0 && thisPiece === undefined) {
    throw new RangeError(
      `Cannot draw ${ACTION} as there must be a finished piece or this one: current value is neither`,
    );
  }
  for (const piece of pieces) {
    positive(piece.radius, ACTION, "the radius of a piece");
    positive(piece.focalLength, ACTION, "the focal length of a piece");
    for (const u of [piece.radiusUncertainty, piece.focalLengthUncertainty]) {
      if (u !== undefined) positive(u, ACTION, "the uncertainty of a piece");
    }
  }
  for (const point of [...band, ...thisPiece ? [thisPiece] : []]) {
    positive(point.radius, ACTION, "the radius of a prediction");
    positive(point.focalLength, ACTION, "a predicted focal length");
    interval(point, ACTION, "a prediction");
  }
}

/**
 * Draws later focal length against ground radius, and below it what is left
 * after taking off half the radius, which is the focal length of the sphere:
 * there the shop's habit shows.
 *
 * @param input Pieces and predictions in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is neither a finished piece nor this one, or a
 * length is not above 0.
 *
 * @example
 * ```ts
 * import { focalLengthFigure } from "sagbook/figures/focal_length_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await focalLengthFigure({
 *   pieces: [{ radius: 2400, focalLength: 1198 }],
 *   band: [],
 *   thisPiece: { radius: 3000, focalLength: 1498, low: 1494, high: 1502 },
 * });
 * match(description, /1498\.0 mm for this piece \(1494\.0 mm to 1502\.0 mm\)/);
 * ```
 */
export async function focalLengthFigure(
  input: FocalLengthFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { pieces, thisPiece, confidence = 0.95 } = input;
  const plain = plainLength(settings.unit ?? "mm");
  const k = plain.perMillimetre;
  const band = [...input.band].sort((a, b) => a.radius - b.radius);
  const radii = [...pieces, ...band, ...thisPiece ? [thisPiece] : []]
    .map(({ radius }) => radius);
  const [least, most] = [Math.min(...radii), Math.max(...radii)];
  const x = axisAround(
    [
      ...radii,
      ...pieces.flatMap((
        { radius, radiusUncertainty: u = 0 },
      ) => [radius - u, radius + u]),
    ].map((radius) => radius * k),
    { least: 10 * k, pad: 0.04, count: 4, tight: true },
  );
  const half = (radius: number, less: boolean) => less ? radius / 2 : 0;
  const panelOf = (less: boolean) => {
    const at = (radius: number, f: number) => (f - half(radius, less)) * k;
    const dots = pieces.map(({ radius, focalLength }) => ({
      x: radius * k,
      y: at(radius, focalLength),
    }));
    const upright = pieces.flatMap((piece) => {
      const { radius, focalLength: f, focalLengthUncertainty: u } = piece;
      return u === undefined
        ? []
        : [{ x: radius * k, y1: at(radius, f - u), y2: at(radius, f + u) }];
    });
    const flat = pieces.flatMap((piece) => {
      const { radius, focalLength: f, radiusUncertainty: u } = piece;
      return u === undefined
        ? []
        : [{ y: at(radius, f), x1: (radius - u) * k, x2: (radius + u) * k }];
    });
    const fan = band.map(({ radius, focalLength, low, high }) => ({
      x: radius * k,
      y: at(radius, focalLength),
      y1: at(radius, low),
      y2: at(radius, high),
    }));
    const sphere = [least, most].map((radius) => ({
      x: radius * k,
      y: at(radius, radius / 2),
    }));
    const mine = thisPiece === undefined ? [] : [{
      x: thisPiece.radius * k,
      y: at(thisPiece.radius, thisPiece.focalLength),
      y1: at(thisPiece.radius, thisPiece.low),
      y2: at(thisPiece.radius, thisPiece.high),
    }];
    return {
      yTitle: less
        ? `Focal length less half the ground radius (${plain.unit})`
        : `Focal length of the finished piece (${plain.unit})`,
      xTitle: less
        ? `Radius at the end of grinding (${plain.unit})`
        : undefined,
      height: less ? 170 : 190,
      x: less ? x : { ...x, label: () => "" },
      y: axisAround([
        ...[...dots, ...sphere, ...mine, ...fan].map((point) => point.y),
        ...[...upright, ...fan, ...mine].flatMap(({ y1, y2 }) => [y1, y2]),
      ], { least: 2 * k, signs: less, count: 4 }),
      marks: (Plot: Parameters<typeof points>[0]) => [
        fan.length > 1 && between(Plot, fan, "haze"),
        ...(["y1", "y2"] as const).map((edge) =>
          path(Plot, fan.map((p) => ({ x: p.x, y: p[edge] })), "first", {
            width: 0.8,
          })
        ),
        path(Plot, sphere, "quiet", { width: 1.6, dash: "6 3" }),
        path(Plot, fan, "first"),
        ...uprightBars(Plot, upright, { role: "quiet", width: 1.2 }),
        ...flatBars(Plot, flat, { role: "quiet", width: 1.2 }),
        points(Plot, dots, "circle", { fill: "ink", size: 4 }),
        ...uprightBars(Plot, mine, { role: "second", width: 2.4 }),
        points(Plot, mine, "star", {
          fill: "second",
          stroke: "paper",
          size: 7,
          width: 1,
        }),
      ],
    };
  };
  const percent = `${Number((100 * confidence).toFixed(1))} %`;
  const text = (length: number) => plain.text(length, 1);
  const forPiece = thisPiece === undefined
    ? ""
    : ` Expected: ${text(thisPiece.focalLength)} for this piece (${
      text(thisPiece.low)
    } to ${text(thisPiece.high)}) at a ground radius of ${
      text(thisPiece.radius)
    }.`;
  return svgFigure(
    await drawPage({
      title: settings.title ?? "From ground radius to focal length",
      description: settings.description ??
        `${pieces.length} finished ${
          pieces.length === 1 ? "piece" : "pieces"
        }.${forPiece}`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        pieces.length > 0 &&
          keyShape("finished piece", "circle", { fill: "ink", size: 4 }),
        pieces.some((p) => p.radiusUncertainty ?? p.focalLengthUncertainty) &&
          keyInterval("its uncertainty", "quiet"),
        band.length > 1 &&
          keyArea(`${percent} for the next piece`, "haze", "first"),
        thisPiece &&
          keyShape(`this piece, ${percent}`, "star", {
            fill: "second",
            size: 6,
          }),
        keyLine("sphere: half the radius", "quiet", { dash: "6 3" }),
      ),
      panels: [panelOf(false), panelOf(true)],
    }),
  );
}
