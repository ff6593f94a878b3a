/**
 * A ring that does not fit on the flat it is zeroed on.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import type { ReferenceFlat } from "./bench.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { saidSize } from "./_said_length.ts";
import { type SessionGroup, suspicion } from "./_session_group.ts";

/** The widest two places at which a ring touches a flat, in mm. */
function acrossFeet({ ring: { shape } }: SessionGroup): number {
  if (shape.kind === "bar") return shape.span;
  return 2 * (shape.kind === "edge" ? shape.outerRadius : shape.circleRadius);
}

/** Three balls stand on a square of this part of their circle, at 15°. */
const SQUARE = Math.sqrt(3) * Math.cos(Math.PI / 12) / 2;

/** Asks about a flat on which the feet of a ring in use cannot stand. */
export function ringOnFlat(
  group: SessionGroup,
  flat: ReferenceFlat | undefined,
  unit: LengthUnit,
): Problem[] {
  const across = acrossFeet(group);
  const least = group.ring.shape.kind === "balls" ? SQUARE * across : across;
  if (flat?.size === undefined || flat.size >= least) return [];
  return [suspicion(
    group,
    "flat-too-small",
    group.line,
    `${ringName(group.ring.id)} stands on a circle of ${
      saidSize(across, unit)
    }, but the flat is ${
      saidSize(flat.size, unit)
    } wide: the gauge cannot have been zeroed there`,
    "correct the size of the flat or of the ring in bench.json",
  )];
}
