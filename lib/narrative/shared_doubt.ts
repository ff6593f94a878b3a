/**
 * The part of a radius's doubt that no further reading makes smaller.
 *
 * @module
 */
import type { Feet } from "../geometry/feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { sagForRadiusChange } from "../geometry/sensitivities.ts";
import type { Bench, Ring } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import { millimetres } from "../units/length.ts";
import type { BudgetLine } from "../uncertainty/budget.ts";
import { radiusBudget } from "../uncertainty/radius_budget.ts";

/** What every reading with one ring, gauge and flat shares, at one radius. */
export interface SharedDoubt {
  /** Combined standard uncertainty in mm of radius. */
  readonly radius: number;
  /** The same in mm of sag on this ring. */
  readonly sag: number;
  /** Its sources in mm of radius, the largest first. */
  readonly lines: readonly (Pick<BudgetLine, "source"> & {
    /** Its part of `radius`, a standard uncertainty in mm of radius. */
    readonly contribution: number;
    /** The figure of the bench file behind it: mm, or a plain number. */
    readonly stated: number;
  })[];
}

/** How much better one source has to be known before readings decide. */
export interface BetterKnown {
  /** The source, in the budget's words. */
  readonly source: string;
  /** What is stated of it now: mm, or a plain number for the scale. */
  readonly now: number;
  /** What would do; in the same unit. */
  readonly wanted: number;
}

/**
 * Finds what all readings share, at a radius, from the budget of the radius:
 * the ring's size, its balls, the gauge's scale, the flat.
 *
 * Steps of the display, repetition and drift are not in it.
 *
 * @param radius The radius in mm, above 0.
 * @param ring The ring.
 * @param feet Its feet on this work.
 * @param piece The piece.
 * @param bench The bench, for the gauge and the flat.
 * @returns The doubt and its sources.
 *
 * @example A ring known to 0.2 mm leaves 22 mm of the radius open
 * ```ts
 * import { sharedDoubt } from "sagbook/narrative/shared_doubt.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const feet = { circleRadius: mm(40), ballRadius: mm(3) };
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.2), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0), expansion: 0, foot: { kind: "unknown" },
 *   shape: { kind: "balls", ...feet, probeOffset: mm(0) },
 * } as const;
 * const bench = { gauge: { id: "dial", steps: {}, scaleUncertainty: 0 }, rings: [ring] } as unknown as
 *   Parameters<typeof sharedDoubt>[4];
 * const found = sharedDoubt(2203, ring, feet, { form: "concave" }, bench);
 * equal(found.lines[0].source, "ring radius");
 * // By hand: 2 · 0.2 / 40 of 2200 mm.
 * equal(found.radius.toFixed(1), "22.0");
 * ```
 */
export function sharedDoubt(
  radius: number,
  ring: Ring,
  feet: Feet,
  { form }: Pick<Piece, "form">,
  { gauge, flat }: Pick<Bench, "gauge" | "flat">,
): SharedDoubt {
  const small = millimetres(1e-4 * radius);
  const perRadius = sagForRadiusChange(small, millimetres(radius), feet, form) /
    small;
  const sag = sagFromRadius(millimetres(radius), feet, form);
  const { curvature } = radiusBudget({
    form,
    sag: { value: sag, own: 0, dof: 1, common: {} },
    ring,
    gauge,
    ...(flat === undefined ? {} : { flat }),
  });
  const lines = curvature.lines.map((
    { source, contribution, standardUncertainty },
  ) => ({
    source,
    contribution: Math.abs(contribution) * radius * radius,
    stated: source === "reference flat"
      ? flat?.flatness ?? standardUncertainty
      : standardUncertainty,
  })).sort((a, b) => b.contribution - a.contribution);
  const all = Math.hypot(...lines.map(({ contribution }) => contribution));
  return { radius: all, sag: all * perRadius, lines };
}

/**
 * Works out how well the leading sources must be known for the whole to come
 * down to a size: the fewest that will do, each left an equal part.
 *
 * @param doubt What the readings share.
 * @param largest The largest standard uncertainty that will do, in mm of
 * radius, above 0.
 * @returns Each source with what is stated and what is wanted, rounded down to
 * two figures; none where the doubt is no larger.
 *
 * @example
 * ```ts
 * import { betterKnown } from "sagbook/narrative/shared_doubt.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const lines = [
 *   { source: "ring radius", contribution: 20, stated: 0.2 },
 *   { source: "gauge scale", contribution: 3, stated: 0.001 },
 * ];
 * const doubt = { radius: Math.hypot(20, 3), sag: 0, lines };
 * // By hand: √(5² - 3²) = 4 mm, a fifth of 20 mm.
 * deepEqual(betterKnown(doubt, 5), [{ source: "ring radius", now: 0.2, wanted: 0.04 }]);
 * ```
 */
export function betterKnown(
  { radius, lines }: SharedDoubt,
  largest: number,
): readonly BetterKnown[] {
  if (radius <= largest) return [];
  for (let count = 1; count <= lines.length; count++) {
    const rest = Math.hypot(
      ...lines.slice(count).map(({ contribution }) => contribution),
    );
    const part = Math.sqrt(Math.max(0, largest ** 2 - rest ** 2) / count);
    const chosen = lines.slice(0, count);
    // None of those chosen may get worse to make room for another.
    if (part > 0 && chosen.every(({ contribution }) => part < contribution)) {
      return chosen.map(({ source, stated, contribution }) => ({
        source,
        now: stated,
        wanted: roundedDown(stated * part / contribution),
      }));
    }
  }
  return [];
}

/** Two figures, never above the value. */
function roundedDown(value: number): number {
  const digits = 1 - Math.floor(Math.log10(value));
  const units = Math.floor(value * 10 ** digits * (1 + 1e-9));
  return Number(`${units}e${-digits}`);
}
