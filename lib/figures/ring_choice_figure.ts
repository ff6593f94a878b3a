/**
 * Which ring for which question.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { keyOf, keyShape } from "./_key.ts";
import { axisAround, plainLength, smallLength } from "./_length_axis.ts";
import { path, points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import type { Panel } from "./_panel.ts";
import { positive, some } from "./_refuse.ts";
import { shapeOf } from "./_symbols.ts";
import { seriesRole } from "./_theme.ts";
import { figuresOf, logTicks } from "./_ticks.ts";

/** What one question costs with one size of ring. */
export interface RingChoiceFigurePoint {
  /** Radius of the foot circle, in mm, above 0. */
  readonly ringRadius: number;
  /** Smallest amount it can detect, in mm, above 0. */
  readonly detectable: number;
}

/** One question. */
export interface RingChoiceFigureQuestion {
  /** What is asked: `radius of curvature`, `edge fault 15 mm wide`. */
  readonly label: string;
  /** Amounts of a radius (mm or in) or of a surface (µm or thou). */
  readonly scale: "radius" | "surface";
  /** The detectable amount over ring sizes; empty where no ring can serve. */
  readonly curve: readonly RingChoiceFigurePoint[];
  /** The user's rings, by their place in `rings`. */
  readonly owned:
    readonly (RingChoiceFigurePoint & { readonly ring: number })[];
  /** The best possible ring. */
  readonly best?: RingChoiceFigurePoint;
}

/** What `ringChoiceFigure` draws. */
export interface RingChoiceFigureInput {
  /** Names of the user's rings. */
  readonly rings: readonly string[];
  /** The questions. */
  readonly questions: readonly RingChoiceFigureQuestion[];
}

const ACTION = "the choice of ring";

function check({ questions }: RingChoiceFigureInput) {
  for (
    const { label, curve, owned, best } of some(questions, ACTION, "question")
  ) {
    for (const point of [...curve, ...owned, ...best ? [best] : []]) {
      positive(point.ringRadius, ACTION, `a ring radius of ${label}`);
      positive(point.detectable, ACTION, `a detectable amount of ${label}`);
    }
  }
}

/**
 * Draws the smallest amount each question can detect against the size of the
 * ring, one panel for each question, with the user's rings and the best
 * possible size marked.
 *
 * Amounts stand on a logarithmic scale: lower is better. A question that no
 * ring can answer is named below instead.
 *
 * @param input Questions with ring radii and amounts in mm.
 * @param settings Unit, title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no question, or a value is not above 0.
 *
 * @example
 * ```ts
 * import { ringChoiceFigure } from "sagbook/figures/ring_choice_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await ringChoiceFigure({
 *   rings: ["A"],
 *   questions: [{
 *     label: "radius of curvature",
 *     scale: "radius",
 *     curve: [20, 40, 80].map((r) => ({ ringRadius: r, detectable: 1600 / r })),
 *     owned: [{ ring: 0, ringRadius: 40, detectable: 40 }],
 *   }],
 * });
 * match(description, /radius of curvature: A 40 mm/);
 * ```
 */
export async function ringChoiceFigure(
  input: RingChoiceFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  check(input);
  const { rings, questions } = input;
  const { unit = "mm" } = settings;
  const [plain, small] = [plainLength(unit), smallLength(unit)];
  const lengthOf = (scale: "radius" | "surface") =>
    scale === "radius" ? plain : small;
  const open = questions.filter(({ curve, owned }) =>
    curve.length + owned.length > 0
  );
  const closed = questions.filter((question) => !open.includes(question));
  const radii = open.flatMap(({ curve, owned }) =>
    [...curve, ...owned].map(({ ringRadius }) =>
      ringRadius * plain.perMillimetre
    )
  );
  const x = axisAround(radii.length > 0 ? radii : [0, 1], {
    least: 20 * plain.perMillimetre,
    pad: 0.05,
    tight: true,
  });
  const panels = open.map((question, i): Panel => {
    const { perMillimetre: k, unit: sign } = lengthOf(question.scale);
    const at = ({ ringRadius, detectable }: RingChoiceFigurePoint) => ({
      x: ringRadius * plain.perMillimetre,
      y: detectable * k,
    });
    const curve = [...question.curve]
      .sort((a, b) => a.ringRadius - b.ringRadius).map(at);
    const owned = question.owned.map((point) => ({
      ...at(point),
      ring: point.ring,
    }));
    const best = question.best === undefined ? [] : [at(question.best)];
    const amounts = [...curve, ...owned, ...best].map(({ y }) => y);
    const ticks = logTicks(Math.min(...amounts), Math.max(...amounts));
    const last = i === open.length - 1;
    return {
      yTitle: `Smallest detectable: ${question.label} (${sign})`,
      xTitle: last ? `Radius of the foot circle (${unit})` : undefined,
      height: 120,
      x: last ? x : { ...x, label: () => "" },
      y: {
        domain: ticks.domain,
        ticks: ticks.values,
        label: (value) => figuresOf(value, 1),
        grid: true,
        log: true,
      },
      marks: (Plot) => [
        path(Plot, curve, "quiet", { width: 1.8 }),
        points(Plot, best, "star", {
          fill: "paper",
          stroke: "ink",
          size: 7,
          width: 1.8,
        }),
        ...rings.map((_, ring) =>
          points(
            Plot,
            owned.filter((point) => point.ring === ring),
            shapeOf(ring),
            {
              fill: seriesRole(ring),
              stroke: "paper",
              width: 1,
              size: 6,
            },
          )
        ),
      ],
    };
  });
  const words = open.map(({ label, scale, owned, best }) => {
    const { text } = lengthOf(scale);
    const mine = owned.map(({ ring, detectable }) =>
      `${rings[ring]} ${text(detectable)}`
    ).join(", ") || "no ring of yours";
    return `${label}: ${mine}${
      best === undefined
        ? ""
        : `; best possible ${text(best.detectable)} at ${
          plain.text(best.ringRadius)
        }`
    }`;
  });
  const nobody = closed.map(({ label }) => label).join(", ");
  return svgFigure(
    await drawPage({
      title: settings.title ?? "The smallest amount each ring size shows",
      description: settings.description ??
        `Smallest detectable amounts. ${
          [...words, ...nobody === "" ? [] : [`No ring can see: ${nobody}`]]
            .join(". ")
        }.`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        ...rings.map((label, i) =>
          keyShape(label, shapeOf(i), { fill: seriesRole(i), size: 6 })
        ),
        open.some(({ best }) => best) &&
          keyShape("best possible size", "star", { stroke: "ink", size: 6 }),
      ),
      notes: [
        "Lower is better.",
        ...(nobody === ""
          ? []
          : [`No ring with three feet can see: ${nobody}.`]),
      ],
      panels,
    }),
  );
}
