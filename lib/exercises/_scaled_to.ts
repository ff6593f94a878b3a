import { trueDepartures } from "../zones/chance_of_verdict.ts";
import type { Exercise } from "./exercise.ts";
import type { HiddenSurface } from "./hidden_surface.ts";
import { verdictPlanOf } from "./stated_chances.ts";

/** A size as a person would state it: three figures. */
const stated = (size: number): number => Number(size.toPrecision(3));

/** The same shape, `times` as large. */
function enlarged(hidden: HiddenSurface, times: number): HiddenSurface {
  switch (hidden.kind) {
    case "sphere":
      return hidden;
    case "conic":
      return { ...hidden, conic: stated(hidden.conic * times) };
    case "turned edge":
      return { ...hidden, depth: stated(hidden.depth * times) };
    case "coma":
    case "astigmatism":
      return { ...hidden, rise: stated(hidden.rise * times) };
  }
}

/** Height at the rim of astigmatism that counts as one that shows. */
const UNSEEN_SHARE = 1 / 4;

/** How large the shape is as its strength counts it, in mm. */
function shown(exercise: Exercise, hidden: HiddenSurface): number {
  if (hidden.kind === "astigmatism") return UNSEEN_SHARE * hidden.rise;
  const { zones, ends } = trueDepartures(verdictPlanOf(exercise, hidden));
  return Math.max(zones, ends);
}

/**
 * The exercise's hidden shape at the size at which it shows `strength`
 * tolerances. All but the conic are in proportion to their size; the conic
 * nearly so, and a few steps settle it.
 */
export function scaledTo(exercise: Exercise, strength: number): HiddenSurface {
  if (!(strength > 0 && Number.isFinite(strength))) {
    throw new RangeError(
      `Cannot draw an exercise as its strength must be above 0: current value is ${strength}`,
    );
  }
  let { hidden } = exercise;
  if (hidden.kind === "sphere") return hidden;
  const wanted = strength * exercise.disc.sagTolerance;
  for (let step = 0; step < 4; step++) {
    hidden = enlarged(hidden, wanted / shown(exercise, hidden));
  }
  return hidden;
}
