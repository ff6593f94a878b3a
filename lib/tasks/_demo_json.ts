import type { DemoPiece } from "./_demo_piece.ts";

/** What every invented file says of itself. */
export const INVENTED =
  "Invented: made by a seeded simulation (lib/tasks/demo_data.ts), not measured on any real glass.";

/** JSON as the demo files hold it. */
export const json = (value: unknown): string =>
  `${JSON.stringify(value, null, 2)}\n`;

/** A length as the piece's owner writes it. */
function written(mm: number, unit: "mm" | "in"): string {
  return unit === "mm"
    ? `${Number(mm.toFixed(6))} mm`
    : `${Number((mm / 25.4).toFixed(6))} in`;
}

/** The text of `piece.json`. */
export function pieceFile(piece: DemoPiece): string {
  const say = (mm: number) => written(mm, piece.unit);
  return json({
    name: piece.name,
    form: "concave",
    diameter: written(piece.diameter, "mm"),
    bevel: say(piece.bevel),
    margin: say(piece.margin),
    thickness: say(piece.thickness),
    glass: piece.glass,
    target: {
      radius: say(piece.targetRadius),
      tolerance: say(piece.targetTolerance),
    },
    sphericity_tolerance: { sag: say(piece.sagTolerance) },
    ...(piece.startingRadius === undefined
      ? {}
      : { starting_radius: say(piece.startingRadius) }),
    unit: piece.unit,
    invented: true,
    note: `${INVENTED} ${piece.note}`,
  });
}

/** The text of `bench.json`. */
export function benchFile(
  piece: Pick<DemoPiece, "ring" | "unit" | "foot" | "step">,
): string {
  const { ring, unit } = piece;
  const feet = ring.outsideInches === undefined
    ? {
      radius: `${ring.statedRadius} mm`,
      ball_radius: `${ring.ballRadius} mm`,
    }
    : {
      spacings: ring.outsideInches.map((inches) => `${inches} in`),
      spacings_measured: "outside to outside",
      ball_diameter: "1/4 in",
    };
  return json({
    gauge: {
      id: unit === "mm" ? "gauge 1" : "gauge 2",
      shows: "sag",
      counts_up_on: "concave",
      unit,
      display_step: { [unit]: written(piece.step, unit) },
      scale_uncertainty: "0.05 %",
    },
    rings: [{
      id: ring.id,
      feet: "balls",
      ...feet,
      radius_uncertainty: "0.005 mm",
      ball_radius_uncertainty: "0.002 mm",
      material: "steel",
      foot: piece.foot,
      calibrated_on: "2024-01-15",
    }],
    flat: { id: "flat 1", size: "160 mm", flatness: "0.0005 mm" },
    note: INVENTED,
  });
}
