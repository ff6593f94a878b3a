/**
 * What was measured to calibrate a ring, from `bench.json`, in millimetres.
 *
 * @module
 */
import {
  circleRadiusFromSpacings,
  spacingsFromOutside,
} from "../geometry/ring_from_spacings.ts";
import type { RingShape } from "../geometry/ring.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { KnownSurfaceFile, RingFile } from "./bench_file.ts";
import type { FileLengths } from "./_file_lengths.ts";
import type { LengthText } from "./piece_file.ts";
import type {
  EarlierCalibration,
  KnownSurfaceRecord,
  RingRecord,
  SpacingsRecord,
} from "./ring_record.ts";
import { parseTakenAt } from "./_taken_at.ts";

/** Standard uncertainty of a caliper figure over balls: common practice, no source. */
const DEFAULT_CALIPER = millimetres(0.02);

function spacings(
  file: RingFile,
  path: string,
  shape: RingShape,
  read: FileLengths,
): SpacingsRecord | undefined {
  const kept = file.calibration;
  const own = Array.isArray(file.spacings);
  if (own && kept?.spacings !== undefined) {
    return read.say(
      "refused",
      "wrong-value",
      `${path}.calibration.spacings`,
      "the spacings are given twice",
      { mend: "keep one of the two" },
    );
  }
  const list = own ? file.spacings : kept?.spacings;
  const at = own ? `${path}.spacings` : `${path}.calibration.spacings`;
  if (list === undefined || shape.kind !== "balls") return undefined;
  if (typeof list === "string") {
    return read.say(
      "refused",
      "no-file",
      at,
      "the file of spacings could not be used",
      { value: list, mend: "mend it, or write the three spacings here" },
    );
  }
  const [a, b, c] = (list as readonly LengthText[]).map((one, i) =>
    read.length(one, `${at}.${i}`)
  );
  if (a === undefined || b === undefined || c === undefined) return undefined;
  const measured = (own ? file : kept)?.spacings_measured;
  const over = measured === "outside to outside" ? "outsides" : "centres";
  const figures = [a, b, c] as const;
  try {
    circleRadiusFromSpacings(
      over === "outsides"
        ? spacingsFromOutside(figures, shape.ballRadius)
        : figures,
    );
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return read.say(
      "refused",
      "wrong-value",
      at,
      "three balls cannot stand at these spacings",
      { value: `${a} mm, ${b} mm, ${c} mm`, mend: "measure them again" },
    );
  }
  const doubt = read.length(
    kept?.caliper?.uncertainty,
    `${path}.calibration.caliper.uncertainty`,
  );
  return {
    figures,
    over,
    overStated: measured !== undefined,
    caliper: {
      id: kept?.caliper?.id ?? "caliper",
      standardUncertainty: doubt ?? DEFAULT_CALIPER,
      assumed: doubt === undefined,
      scaleUncertainty: kept?.caliper?.scale_uncertainty ?? 0,
    },
  };
}

/** A length that a sign would make another thing. */
function unsigned(
  value: LengthText,
  path: string,
  what: string,
  read: FileLengths,
): Millimetres | undefined {
  const length = read.length(value, path, "any");
  if (length === undefined || length > 0) return length;
  return read.say(
    "refused",
    "wrong-sign",
    path,
    `${what} carries no sign: “form” says which way the surface curves`,
    {
      value: typeof value === "string" ? value : `${value.value} ${value.unit}`,
      mend: "take the sign off, or correct the form if it curves the other way",
    },
  );
}

function surface(
  file: KnownSurfaceFile,
  path: string,
  shape: RingShape,
  read: FileLengths,
): KnownSurfaceRecord | undefined {
  const radius = unsigned(file.radius, `${path}.radius`, "a radius", read);
  const doubt = read.length(
    file.radius_uncertainty,
    `${path}.radius_uncertainty`,
    "0 or more",
  );
  const sags = file.sags.flatMap((one, i) =>
    unsigned(one, `${path}.sags.${i}`, "a sag on a known surface", read) ?? []
  );
  if (radius === undefined || doubt === undefined) return undefined;
  const ball = shape.kind === "edge" ? 0 : shape.ballRadius;
  const sphere = radius + (file.form === "concave" ? -ball : ball);
  const high = sags.find((sag) => sag >= sphere);
  if (high !== undefined) {
    return read.say(
      "refused",
      "wrong-value",
      `${path}.sags`,
      "a sag this large does not fit on a surface of this radius",
      { value: `${high} mm on ${radius} mm`, mend: "correct one of the two" },
    );
  }
  return {
    id: file.id,
    form: file.form,
    radius,
    radiusUncertainty: doubt,
    sags,
  };
}

/** Makes the record; `undefined` when there is none, or it was refused. */
export function ringRecordOfFile(
  file: RingFile,
  path: string,
  shape: RingShape,
  read: FileLengths,
): RingRecord | undefined {
  const before = read.refusals;
  const kept = file.calibration;
  const found = spacings(file, path, shape, read);
  const at = `${path}.calibration`;
  const surfaces = (kept?.known_surfaces ?? []).flatMap((one, i) =>
    surface(one, `${at}.known_surfaces.${i}`, shape, read) ?? []
  );
  const earlier = (kept?.earlier ?? []).flatMap((one, i) => {
    const place = `${at}.earlier.${i}`;
    const radius = read.length(one.radius, `${place}.radius`);
    const doubt = read.length(
      one.radius_uncertainty,
      `${place}.radius_uncertainty`,
    );
    const on = parseTakenAt(one.on);
    if (on === undefined) {
      return read.say(
        "refused",
        "not-a-date",
        `${place}.on`,
        "this is not a date that can be read one way only",
        { value: one.on, expected: "year-month-day, such as 2031-05-17" },
      ) ?? [];
    }
    return radius === undefined || doubt === undefined ? [] : [
      { on, radius, radiusUncertainty: doubt } as EarlierCalibration,
    ];
  });
  if (read.refusals > before) return undefined;
  if (found === undefined && kept === undefined) return undefined;
  const { every_months: months, twin } = kept ?? {};
  return {
    ...(found === undefined ? {} : { spacings: found }),
    surfaces,
    earlier,
    ...(months === undefined ? {} : { everyMonths: months }),
    ...(twin === undefined ? {} : { twin }),
  };
}
