/**
 * One ring of `bench.json`, in millimetres.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import { millimetres } from "../units/length.ts";
import type { Ring } from "./bench.ts";
import type { RingFile } from "./bench_file.ts";
import { closestName } from "./closest_name.ts";
import type { FileLengths } from "./_file_lengths.ts";
import { parseFoot } from "./_foot_cell.ts";
import { MARK_UNKNOWN } from "./_read_cell.ts";
import { ringRecordOfFile } from "./_ring_record_of_file.ts";
import { ringShapeOfFile } from "./_ring_shape_of_file.ts";
import { parseTakenAt } from "./_taken_at.ts";

/** Standard uncertainties where the user gives none: common practice, no source. */
const DEFAULT_RADIUS_UNCERTAINTY = millimetres(0.05);
const DEFAULT_BALL_RADIUS_UNCERTAINTY = millimetres(0.005);

/** Linear expansion per kelvin near 20 °C; handbook values, from memory. */
const EXPANSIONS: Readonly<Record<string, number>> = {
  steel: 11.5e-6,
  "stainless steel": 16e-6,
  aluminium: 23e-6,
  aluminum: 23e-6,
  brass: 19e-6,
  "cast iron": 10.5e-6,
  invar: 1.2e-6,
};

const ZERO = millimetres(0);

function expansion(file: RingFile, path: string, read: FileLengths): number {
  if (file.expansion !== undefined) return file.expansion;
  const material = (file.material ?? "steel").toLowerCase().trim();
  if (Object.hasOwn(EXPANSIONS, material)) return EXPANSIONS[material];
  const near = closestName(material, Object.keys(EXPANSIONS));
  read.say(
    "warning",
    "unknown-material",
    `${path}.material`,
    "the expansion of this material is not known here; steel's was taken",
    {
      value: file.material ?? "",
      mend: near === undefined
        ? 'add "expansion", per kelvin'
        : `did you mean "${near}"?`,
    },
  );
  return EXPANSIONS.steel;
}

/** Makes a ring; `undefined` when something that it needs was refused. */
export function ringOfFile(
  file: RingFile,
  path: string,
  read: FileLengths,
): Ring | undefined {
  const before = read.refusals;
  const feet = ringShapeOfFile(file, path, read);
  const radiusUncertainty = read.length(
    file.radius_uncertainty,
    `${path}.radius_uncertainty`,
    "0 or more",
  );
  if (file.radius_uncertainty === undefined) {
    read.say(
      "note",
      "radius-uncertainty-assumed",
      `${path}.radius_uncertainty`,
      `no uncertainty of the radius of ${
        ringName(file.id)
      } is given; ${DEFAULT_RADIUS_UNCERTAINTY} mm was taken`,
      { mend: "give it: it is most of the uncertainty of R" },
    );
  }
  const ballUncertainty = read.length(
    file.ball_radius_uncertainty,
    `${path}.ball_radius_uncertainty`,
    "0 or more",
  );
  const foot = file.foot === undefined
    ? { kind: "unknown" } as const
    : typeof file.foot === "number"
    ? { kind: "angle", degrees: file.foot } as const
    : parseFoot(file.foot, MARK_UNKNOWN);
  if (foot === undefined) {
    read.say(
      "refused",
      "wrong-value",
      `${path}.foot`,
      "this is no direction of foot 1",
      {
        value: String(file.foot),
        expected: 'degrees, "foot out", "feet out" or "unknown"',
      },
    );
  }
  const calibrated = file.calibrated_on;
  if (calibrated !== undefined && parseTakenAt(calibrated) === undefined) {
    read.say(
      "warning",
      "not-a-date",
      `${path}.calibrated_on`,
      "this is not a date that can be read one way only",
      { value: calibrated, expected: "year-month-day, such as 2031-05-17" },
    );
  }
  if (file.measured === false) {
    read.say(
      "warning",
      "ring-not-measured",
      `${path}.measured`,
      `the size of ${
        ringName(file.id)
      } is a stand-in that nobody has measured: no radius found with it means anything`,
      { mend: "measure the ring, write its size here and take “measured” out" },
    );
  }
  const expands = expansion(file, path, read);
  const record = feet === undefined
    ? undefined
    : ringRecordOfFile(file, path, feet, read);
  if (feet === undefined || foot === undefined || read.refusals > before) {
    return undefined;
  }
  return {
    id: file.id,
    shape: feet,
    radiusUncertainty: radiusUncertainty ?? DEFAULT_RADIUS_UNCERTAINTY,
    radiusUncertaintyAssumed: radiusUncertainty === undefined,
    ballRadiusUncertainty: ballUncertainty ??
      (feet.kind === "edge" ? ZERO : DEFAULT_BALL_RADIUS_UNCERTAINTY),
    expansion: expands,
    foot,
    ...(calibrated === undefined
      ? {}
      : { calibratedOn: parseTakenAt(calibrated) ?? calibrated }),
    ...(record === undefined ? {} : { record }),
  };
}
