/**
 * The invented studies of a gauge: before and after a cure for warm hands.
 *
 * @module
 */
import { inventStudy } from "../repeatability/invented_study.ts";

const NOTE =
  "Invented: made by a seeded simulation (lib/tasks/demo_data.ts), not measured on any real glass. Three operators zero a gauge eight times each on one surface";

/** Fixed before any result was seen. */
const SEED = 2031;

/** Rings that lie on the bench and were not used in the study. */
const OTHER_RINGS = [["invented ring 35", 35], ["invented ring 100", 100]].map((
  [id, radius],
) => ({
  id,
  feet: "balls",
  radius: `${radius} mm`,
  ball_radius: "6.35 mm",
  radius_uncertainty: "0.01 mm",
  ball_radius_uncertainty: "0.001 mm",
  material: "steel",
  foot: "foot out",
}));

/** How the ring of the study was calibrated: invented figures, one ring of 60 mm. */
const CALIBRATION = {
  spacings: ["116.63 mm", "116.61 mm", "116.64 mm"],
  spacings_measured: "outside to outside",
  caliper: { id: "invented caliper", uncertainty: "0.02 mm" },
  known_surfaces: [{
    id: "invented plate 2000",
    form: "concave",
    radius: "2000 mm",
    radius_uncertainty: "0.4 mm",
    sags: ["0.903 mm", "0.902 mm", "0.904 mm", "0.903 mm", "0.903 mm"],
  }],
  every_months: 24,
};

/** Names of the folders. */
export const STUDY_FOLDERS = ["gauge-study", "gauge-study-cured"] as const;

/**
 * Makes the files of one study.
 *
 * @param folder Its name.
 * @returns Path inside the folder to text.
 */
export function studyFiles(
  folder: typeof STUDY_FOLDERS[number],
): Readonly<Record<string, string>> {
  const cured = folder === "gauge-study-cured";
  const { piece, bench, csv, truth } = inventStudy({ seed: SEED, cured });
  const { gauge, rings: [ring], flat } = bench;
  const { shape } = ring;
  if (shape.kind !== "balls") throw new TypeError("the study's ring has balls");
  const json = (value: unknown): string =>
    JSON.stringify(value, null, 2) + "\n";
  const mm = (length: number): string => `${length} mm`;
  return {
    "piece.json": json({
      name: cured
        ? "gauge study, with gloves on"
        : "gauge study, three pairs of hands",
      form: piece.form,
      diameter: mm(piece.diameter),
      bevel: mm(piece.bevel),
      margin: mm(piece.margin),
      thickness: mm(piece.thickness!),
      glass: piece.glass,
      target: {
        radius: mm(piece.target!.radius),
        tolerance: mm(piece.target!.tolerance!),
      },
      sphericity_tolerance: { sag: mm(piece.sphericity!.amount) },
      unit: "mm",
      invented: true,
      note: `${NOTE}; ${
        cured
          ? "the study repeated with gloves on"
          : "operator C has warm hands, and the zero drifts under them"
      }.`,
    }),
    "bench.json": json({
      gauge: {
        id: gauge.id,
        shows: "sag",
        counts_up_on: "concave",
        unit: "mm",
        display_step: { mm: mm(gauge.steps.mm!) },
        scale_uncertainty: "0.05 %",
      },
      rings: [{
        id: ring.id,
        feet: "balls",
        radius: mm(shape.circleRadius),
        ball_radius: mm(shape.ballRadius),
        radius_uncertainty: mm(ring.radiusUncertainty),
        ball_radius_uncertainty: mm(ring.ballRadiusUncertainty),
        material: "steel",
        calibration: CALIBRATION,
      }, ...OTHER_RINGS],
      flat: {
        id: flat!.id,
        size: mm(flat!.size!),
        flatness: mm(flat!.flatness!),
      },
      note: NOTE + ".",
    }),
    "readings.csv": csv,
    "truth.json": json({ invented: true, seed: SEED, unit: "mm", ...truth }),
  };
}
