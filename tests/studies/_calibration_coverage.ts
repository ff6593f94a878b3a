/** How often a calibration's 95 % interval holds the simulated ring. */
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import type { Random } from "sagbook/numerics/random.ts";
import { calibrateBySpacings } from "sagbook/uncertainty/calibrate_by_spacings.ts";
import { calibrateBySurfaces } from "sagbook/uncertainty/calibrate_by_surfaces.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** A way to calibrate a ring. */
export type CalibrationDesign = "spacings" | "one plate" | "three plates";

const STEP = 0.0005;
const U = {
  ball: 0.002,
  caliper: 0.015,
  scale: 1e-4,
  gauge: 5e-4,
  plate: 2e-4,
  repeat: 0.0008,
};

/**
 * Simulates calibrations of rings whose truth is drawn anew each time, with
 * every error drawn from the distribution that is stated for it.
 */
export function calibrationCoverage(
  design: CalibrationDesign,
  runs: number,
  random: Random,
): { covered: number; runs: number } {
  let covered = 0;
  for (let run = 0; run < runs; run++) {
    const circle = 60 + 0.2 * random.normal();
    const ball = 6.35 + U.ball * random.normal();
    const found = design === "spacings"
      ? bySpacings(circle, ball, random)
      : bySurfaces(circle, ball, random, design === "one plate" ? 1 : 3);
    const { circleRadius: { value }, expanded } = found;
    if (Math.abs(value - circle) <= expanded) covered++;
  }
  return { covered, runs };
}

function bySpacings(circle: number, ball: number, random: Random) {
  // Feet a little off equal spacing, on their true circle.
  const at = [0, 1, 2].map((k) => 2 * Math.PI * k / 3 + 0.01 * random.normal());
  const stretch = 1 + U.scale * random.normal();
  const figures = at.map((angle, k) => {
    const chord = 2 * circle *
      Math.abs(Math.sin((at[(k + 1) % 3] - angle) / 2));
    return mm((chord + 2 * ball) * stretch + U.caliper * random.normal());
  });
  return calibrateBySpacings({
    ring: "A",
    figures: [figures[0], figures[1], figures[2]],
    over: "outsides",
    ballRadius: mm(6.35),
    ballRadiusUncertainty: mm(U.ball),
    caliper: {
      id: "C",
      standardUncertainty: mm(U.caliper),
      scaleUncertainty: U.scale,
    },
  });
}

function bySurfaces(
  circle: number,
  ball: number,
  random: Random,
  plates: number,
) {
  const feet = { circleRadius: mm(circle), ballRadius: mm(ball) };
  const gauge = 1 + U.gauge * random.normal();
  const surfaces = [1200, 800, 2000].slice(0, plates).map((nominal, k) => {
    const form = k === 1 ? "convex" as const : "concave" as const;
    const u = U.plate * nominal;
    const radius = mm(nominal + u * random.normal());
    const sag = sagFromRadius(radius, feet, form) / gauge;
    const sags = [1, 2, 3, 4, 5].map(() => {
      const zero = STEP * Math.round(100 * random.normal()) +
        STEP * (random.uniform() - 0.5);
      const shown = sag + U.repeat * random.normal() + zero;
      const rounded = STEP * Math.round(shown / STEP);
      return mm(rounded - STEP * Math.round(zero / STEP));
    });
    return {
      id: `P${k}`,
      form,
      radius: mm(nominal),
      radiusUncertainty: mm(u),
      sags,
    };
  });
  return calibrateBySurfaces({
    ring: "A",
    surfaces,
    ballRadius: mm(6.35),
    ballRadiusUncertainty: mm(U.ball),
    gauge: { id: "G", scaleUncertainty: U.gauge },
    step: mm(STEP),
    // Scatter of nearly two steps has spread the rounding; it is in the scatter.
    roundingShare: 0,
  });
}
