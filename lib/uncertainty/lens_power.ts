/**
 * Power and focal length of a lens from its two surfaces.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { type Dioptres, dioptres } from "../units/dioptre.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { type Budget, budgetOf, type Model } from "./budget.ts";
import type { UncertainInput } from "./distribution.ts";

/** One surface of a lens, seen from outside the glass. */
export type LensSurface =
  | {
    /** Which way it curves, as the gauge on it sees it. */
    readonly form: SurfaceForm;
    /** Radius of curvature in mm, above 0, shared parts by id. */
    readonly radius: Estimate;
  }
  | { readonly form: "flat" };

/** A lens in air. */
export interface Lens {
  /** The surface that light meets first. */
  readonly first: LensSurface;
  /** The surface that light meets last. */
  readonly second: LensSurface;
  /** Refractive index of the glass, above 1. */
  readonly index: number;
  /** Standard uncertainty of the index; 0 unless stated. */
  readonly indexUncertainty?: number;
  /** Thickness at the centre in mm, at least 0. */
  readonly thickness: Millimetres;
  /** Standard uncertainty of the thickness in mm; 0 unless stated. */
  readonly thicknessUncertainty?: Millimetres;
}

/** What a lens does. */
export interface LensPower {
  /** Power of the first surface in air, negative when concave. */
  readonly first: Dioptres;
  /** Power of the second surface in air, negative when concave. */
  readonly second: Dioptres;
  /** Power of the lens with its budget, in dioptres (1/m). */
  readonly power: Budget;
  /** Focal length in mm with its budget; absent when the power may be 0. */
  readonly focalLength?: Budget;
  /** Distance from the second surface to the rear focus in mm. */
  readonly backFocalLength?: Budget;
}

/**
 * Finds power and focal length of a lens from both radii, index and thickness.
 *
 * Each surface in air has P = (n − 1)/R, positive for convex, negative for
 * concave, seen from its own outside; the lens has
 * `P = P₁ + P₂ − (d/n) P₁ P₂`. Paraxial, in air on both sides.
 *
 * Sources that both radii share (one ring, one gauge) keep their ids and act
 * on both at once: on a lens with equal sides a ring's error adds up, on a
 * meniscus it nearly cancels.
 *
 * @param lens Surfaces, index, thickness.
 * @returns Powers with their index, focal length and budgets.
 * @throws {RangeError} If a radius or the index is out of range, or the
 * thickness negative.
 *
 * @see Any text on geometrical optics: the lens-maker's formula with
 * thickness.
 *
 * @example A plano-convex lens: n − 1 = ½, so twice the radius
 * ```ts
 * import { lensPower } from "sagbook/uncertainty/lens_power.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const radius = { value: 100, own: 0.5, dof: Infinity, common: {} };
 * const { focalLength, first } = lensPower({
 *   first: { form: "convex", radius },
 *   second: { form: "flat" },
 *   index: 1.5,
 *   thickness: mm(8),
 * });
 * equal(focalLength?.value.toFixed(9), "200.000000000");
 * equal(focalLength?.standardUncertainty.toFixed(6), "1.000000");
 * equal(first.dioptres.toFixed(9), "5.000000000");
 * ```
 */
export function lensPower(lens: Lens): LensPower {
  const { first, second, index, thickness } = lens;
  const { indexUncertainty = 0, thicknessUncertainty = 0 } = lens;
  if (!(thickness >= 0)) {
    throw new RangeError(
      `Cannot find the power of a lens as its thickness must be at least 0 mm: current value is ${thickness} mm`,
    );
  }
  const inputs: UncertainInput[] = [
    normal("refractive index", "", index, indexUncertainty),
    normal("thickness", "mm", thickness, thicknessUncertainty),
  ];
  const curvatures = curvatureInputs([first, second], inputs);
  const parts = (x: Float64Array): [number, number, number, number] => {
    const [one, two] = curvatures(x);
    const n = x[0];
    return [(n - 1) * one, (n - 1) * two, x[1] / n, n];
  };
  const powerOf: Model = (x) => {
    const [one, two, reduced] = parts(x);
    return one + two - reduced * one * two;
  };
  const values = Float64Array.from(inputs, (input) => input.value);
  const [one, two] = parts(values);
  const power = budgetOf((x) => 1000 * powerOf(x), inputs);
  const head = {
    first: dioptres(1000 * one, index),
    second: dioptres(1000 * two, index),
    power,
  };
  // With no power within reach of the uncertainty there is no focus to give.
  if (Math.abs(power.value) <= 4 * power.standardUncertainty) return head;
  return {
    ...head,
    focalLength: budgetOf((x) => 1 / powerOf(x), inputs),
    backFocalLength: budgetOf((x) => {
      const [front, , reduced] = parts(x);
      return (1 - reduced * front) / powerOf(x);
    }, inputs),
  };
}

function normal(
  source: string,
  unit: string,
  value: number,
  standardDeviation: number,
): UncertainInput {
  return {
    source,
    unit,
    value,
    distribution: { kind: "normal", standardDeviation },
  };
}

/** Adds the inputs of both radii; gives their curvatures, convex positive. */
function curvatureInputs(
  surfaces: readonly LensSurface[],
  inputs: UncertainInput[],
): (x: Float64Array) => [number, number] {
  const shared = new Map<string, number>();
  const places = surfaces.map((surface, k) => {
    if (surface.form === "flat") return undefined;
    const { value, own, dof, common } = surface.radius;
    if (!(value > 0)) {
      throw new RangeError(
        `Cannot find the power of a lens as the radius of surface ${
          k + 1
        } must be above 0 mm, its form saying concave or convex: current value is ${value} mm`,
      );
    }
    const at = inputs.length;
    const name = `radius of surface ${k + 1}`;
    inputs.push({ ...normal(name, "mm", value, own), dof });
    for (const id of Object.keys(common)) shared.set(id, 0);
    return { at, common, sign: surface.form === "convex" ? 1 : -1 };
  });
  for (const id of shared.keys()) {
    shared.set(id, inputs.length);
    inputs.push({
      ...normal(id, "standard uncertainty", 0, 1),
      common: id,
    });
  }
  const one = (x: Float64Array, place: typeof places[number]): number => {
    if (place === undefined) return 0;
    let radius = x[place.at];
    for (const [id, contribution] of Object.entries(place.common)) {
      radius += contribution * x[shared.get(id) ?? 0];
    }
    return place.sign / radius;
  };
  return (x) => [one(x, places[0]), one(x, places[1])];
}

/**
 * Finds the power of one surface with the uncertainty its radius gives it.
 *
 * @param form Which way it curves; concave is negative in air.
 * @param radius Radius of curvature in mm, above 0.
 * @param index Refractive index the power is meant for, above 1.
 * @returns The power with its index, and the estimate in dioptres.
 * @throws {RangeError} If the radius is not above 0, or the index not above 1.
 *
 * @see D = 1000 (n − 1)/R, any text on geometrical optics.
 *
 * @example
 * ```ts
 * import { surfacePowerOf } from "sagbook/uncertainty/lens_power.ts";
 * import { equal } from "node:assert/strict";
 *
 * const radius = { value: 100, own: 0.1, dof: 9, common: {} };
 * const { power, estimate } = surfacePowerOf("concave", radius, 1.53);
 * equal(power.dioptres.toFixed(6), "-5.300000");
 * equal(estimate.own.toFixed(6), "0.005300");
 * ```
 */
export function surfacePowerOf(
  form: SurfaceForm,
  radius: Estimate,
  index: number,
): { power: Dioptres; estimate: Estimate } {
  const flat = { form: "flat" } as const;
  const { first, power } = lensPower({
    first: { form, radius },
    second: flat,
    index,
    thickness: millimetres(0),
  });
  return { power: first, estimate: power.estimate };
}
