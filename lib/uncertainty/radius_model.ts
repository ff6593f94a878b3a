/**
 * The measurement equation of a spherometer, with all its sources.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { Model } from "./_derivatives.ts";
import { cosine, flatCurvatureLimit } from "./_radius_terms.ts";
import type { Distribution, UncertainInput } from "./distribution.ts";
import type { RadiusMeasurement } from "./radius_measurement.ts";

/** The equation with the inputs it takes, and what was left out. */
export interface RadiusModel {
  /** The inputs, in the model's order. */
  readonly inputs: readonly UncertainInput[];
  /** Curvature 1/R in 1/mm, positive for the declared surface. */
  readonly curvature: Model;
  /** Sources that could not be counted because nothing is known of them. */
  readonly notCounted: readonly string[];
  /** Sources that took a default of ours. */
  readonly assumed: readonly string[];
}

/** Inputs with a slot of their own; sags that are shared follow behind. */
const SLOTS = [
  ...["repeat", "zeroing", "reading step", "zero step", "drift", "scale"],
  ...["lean", "flat", "circle", "ball", "probe", "ring heat", "gradient"],
  "centring",
] as const;
type Slot = (typeof SLOTS)[number];
const SHARED = SLOTS.length;

const RADIAN = Math.PI / 180;
const normal = (standardDeviation: number): Distribution => ({
  kind: "normal",
  standardDeviation,
});
const within = (halfWidth: number): Distribution => ({
  kind: "rectangular",
  halfWidth,
});

/**
 * Sets up the measurement equation of one radius.
 *
 * With x the mean sag (a stated lean θ₀ taken out) and all errors that add to
 * it, g the scale error, θ the lean, κ_f the curvature of the flat, r, d, b
 * circle, probe offset and ball, α ΔT the ring's growth:
 *
 *     s = x (1 + g) cos θ/cos θ₀ ± κ_f r²/2,    ρ² = (r² − d²) (1 + α ΔT)²
 *     1/q = 2s / (ρ² + s²),              1/R = (1/q) / (1 ± b/q)
 *
 * (upper sign concave), then `± α_w ΔT_w / t` for a work whose upper face is
 * warmer and `R + K c²/R` for a gauge c beside the vertex of a conic. In this
 * form, by curvature, it passes smoothly through a flat surface, where R has
 * no value.
 *
 * @param measurement What was measured, with what.
 * @returns Inputs with their distributions, the equation, and the gaps.
 * @throws {RangeError} If `roundingShare` is not from 0 to 1.
 *
 * @see The project's derivation, checked against exact contact of three balls;
 * JCGM 100:2008, 4.1 (the measurement equation).
 *
 * @example
 * ```ts
 * import { radiusModel } from "sagbook/uncertainty/radius_model.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const ring = {
 *   id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *   ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *   shape: { kind: "balls", circleRadius: mm(60), ballRadius: mm(3), probeOffset: mm(0) },
 * } as const;
 * const sag = { value: 0.715, own: 0.0005, dof: 4, common: {} };
 * const { curvature, inputs } = radiusModel({ form: "concave", sag, ring });
 * const values = Float64Array.from(inputs, (input) => input.value);
 * equal((1 / curvature(values)).toFixed(3), "2520.840");
 * ```
 */
export function radiusModel(measurement: RadiusMeasurement): RadiusModel {
  const { form, sag, ring, gauge, step, flat, work, session } = measurement;
  const { roundingShare = 1, centring } = measurement;
  if (!(roundingShare >= 0 && roundingShare <= 1)) {
    throw new RangeError(
      `Cannot set up a radius as the rounding share must be from 0 to 1: current value is ${roundingShare}`,
    );
  }
  const sign = form === "concave" ? 1 : -1;
  const probe = ring.shape.kind === "balls" ? ring.shape.probeOffset : 0;
  const feet = effectiveFeet(ring.shape, form);
  const circle = Math.hypot(feet.circleRadius, probe);
  const notCounted: string[] = [];
  const inputs = SLOTS.map((slot): UncertainInput => ({
    source: slot,
    unit: "",
    value: 0,
    distribution: normal(0),
  }));
  const set = (
    slot: Slot,
    source: string,
    unit: string,
    value: number,
    distribution: Distribution,
    more: { dof?: number; common?: string } = {},
  ): void => {
    const { dof, common } = more;
    inputs[SLOTS.indexOf(slot)] = {
      source,
      unit,
      value,
      distribution,
      ...(dof === undefined ? {} : { dof }),
      ...(common === undefined ? {} : { common }),
    };
  };
  const ofSession = (source: string) =>
    session === undefined ? {} : { common: `session ${session} ${source}` };

  const { value, own, dof } = sag;
  set(
    "repeat",
    "repetition",
    "mm",
    value,
    own > 0 && Number.isFinite(dof)
      ? { kind: "student", scale: own, dof }
      : normal(own),
  );
  const { zeroing, drift } = measurement;
  if (zeroing) {
    const u = zeroing.standardUncertainty;
    set("zeroing", "zeroing", "mm", 0, normal(u), { dof: zeroing.dof });
  }
  if (drift) {
    const u = drift.standardUncertainty;
    set("drift", "drift", "mm", 0, normal(u), { dof: drift.dof });
  }
  if (step === undefined) notCounted.push("display step");
  else {
    const half = within(step / 2 * roundingShare);
    set("reading step", "display step of the reading", "mm", 0, half);
    set("zero step", "display step of the zero", "mm", 0, half);
  }
  if (gauge === undefined) notCounted.push("gauge scale");
  else {
    const common = `gauge ${gauge.id} scale`;
    const u = normal(gauge.scaleUncertainty);
    set("scale", "gauge scale", "", 0, u, { common });
  }
  const lean = (gauge?.tiltDegrees ?? 0) * RADIAN;
  const perUpright = 1 / Math.cos(lean);
  const doubt = (measurement.tilt?.standardUncertaintyDegrees ?? 0) * RADIAN;
  set(
    "lean",
    "lean of the stem",
    "rad",
    lean,
    normal(doubt),
    ofSession("lean"),
  );
  const bulge = flatCurvatureLimit(flat, circle);
  if (flat === undefined || bulge === undefined) {
    notCounted.push("reference flat");
  } else {
    const common = `flat ${flat.id} curvature`;
    set("flat", "reference flat", "1/mm", 0, within(bulge), { common });
  }
  set("circle", "ring radius", "mm", circle, normal(ring.radiusUncertainty), {
    common: `ring ${ring.id} radius`,
  });
  set(
    "ball",
    "ball radius",
    "mm",
    feet.ballRadius,
    normal(feet.ballRadius === 0 ? 0 : ring.ballRadiusUncertainty),
    { common: `ring ${ring.id} ball` },
  );
  const astray = normal(measurement.probeOffsetUncertainty ?? 0);
  set("probe", "place of the probe in the ring", "mm", probe, astray, {
    common: `ring ${ring.id} probe`,
  });
  const heat = measurement.ringWarmerBy;
  if (heat === undefined) notCounted.push("temperature of the ring");
  else {
    const limits = within(heat.halfWidth);
    const more = ofSession("ring temperature");
    set("ring heat", "temperature of the ring", "K", heat.value, limits, more);
  }
  const gradient = measurement.upperFaceWarmerBy;
  const bend = work === undefined ? 0 : sign * work.expansion / work.thickness;
  if (gradient === undefined || work === undefined) {
    notCounted.push("temperature gradient in the work");
  } else {
    const limits = within(gradient.halfWidth);
    const source = "temperature gradient in the work";
    const more = ofSession("gradient");
    set("gradient", source, "K", gradient.value, limits, more);
  }
  const conic = centring?.conic ?? 0;
  if (centring) {
    const u = normal(centring.standardUncertainty);
    set("centring", "centring on the work", "mm", 0, u);
  }
  for (const [id, contribution] of Object.entries(sag.common)) {
    // The sign lives in the value's scale: one unit is one standard uncertainty.
    inputs.push({
      source: id,
      unit: "standard uncertainty",
      value: 0,
      distribution: normal(contribution === 0 ? 0 : 1),
      common: id,
    });
  }
  const shared = Object.values(sag.common);
  const growth = ring.expansion;

  const curvature: Model = (x) => {
    let reading = x[0] + x[1] + x[2] + x[3] + x[4];
    for (let k = 0; k < shared.length; k++) {
      reading += shared[k] * x[SHARED + k];
    }
    const r = x[8];
    const s = reading * (1 + x[5]) * cosine(x[6]) * perUpright +
      sign * x[7] * r * r / 2;
    const swell = 1 + growth * x[11];
    const across = (r * r - x[10] * x[10]) * swell * swell;
    const ballSphere = 2 * s / (across + s * s);
    let result = ballSphere / (1 + sign * x[9] * swell * ballSphere);
    result += bend * x[12];
    if (conic !== 0) result /= 1 + conic * x[13] * x[13] * result * result;
    return result;
  };
  return {
    inputs,
    curvature,
    notCounted,
    assumed: ring.radiusUncertaintyAssumed ? ["ring radius"] : [],
  };
}
