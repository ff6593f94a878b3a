/**
 * From `bench.json` as written to a bench in millimetres.
 *
 * @module
 */
import {
  circleRadiusFromSpacings,
  type Spacings,
  spacingsFromOutside,
} from "../geometry/ring_from_spacings.ts";
import type { RingShape } from "../geometry/ring.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Bench, Gauge, GaugeShows, ReferenceFlat, Ring } from "./bench.ts";
import type { BenchFile, FlatFile, GaugeFile, RingFile } from "./bench_file.ts";
import { closestName } from "./_closest_name.ts";
import type { FileLengths } from "./_file_lengths.ts";
import { parseFoot } from "./_foot_cell.ts";
import type { LengthUnit } from "./piece.ts";
import { MARK_UNKNOWN } from "./_read_cell.ts";
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

function refusals(read: FileLengths): number {
  return read.problems.filter((p) => p.severity === "refused").length;
}

function shows(file: GaugeFile, read: FileLengths): GaugeShows | undefined {
  const kind = file.shows ?? "sag";
  if (kind === "sag") return { kind };
  const set = file.set_ring;
  if (set === undefined) {
    return read.say(
      "refused",
      "missing-key",
      "gauge.set_ring",
      `a gauge that shows ${kind} has a ring size set in it, and this is missing`,
      { mend: 'add "set_ring": { "circle_radius": "…", "ball_radius": "…" }' },
    );
  }
  const circleRadius = read.length(
    set.circle_radius,
    "gauge.set_ring.circle_radius",
  );
  const ballRadius = read.length(
    set.ball_radius,
    "gauge.set_ring.ball_radius",
    "0 or more",
  ) ?? ZERO;
  if (circleRadius === undefined) return undefined;
  if (kind === "radius") return { kind, circleRadius, ballRadius };
  if (set.index === undefined) {
    return read.say(
      "refused",
      "missing-key",
      "gauge.set_ring.index",
      "a gauge that shows power has a refractive index set in it, and this is missing",
      { mend: 'add "index": 1.53, or the index your gauge was made for' },
    );
  }
  return { kind, index: set.index, circleRadius, ballRadius };
}

function steps(
  file: GaugeFile,
  read: FileLengths,
): Partial<Record<LengthUnit, Millimetres>> {
  const step = file.display_step;
  if (step === undefined) {
    read.say(
      "note",
      "no-display-step",
      "gauge.display_step",
      "no display step is given: its share of the uncertainty cannot be counted",
      { mend: 'add "display_step": "0.001 mm", or what your display steps by' },
    );
    return {};
  }
  if (typeof step === "string" || "value" in step) {
    const length = read.length(step, "gauge.display_step");
    const unit = read.unitOf(step);
    if (length === undefined || unit === undefined) return {};
    return { [unit]: length };
  }
  const mm = read.length(step.mm, "gauge.display_step.mm");
  const inch = read.length(step.in, "gauge.display_step.in");
  return {
    ...(mm === undefined ? {} : { mm }),
    ...(inch === undefined ? {} : { in: inch }),
  };
}

function scaleUncertainty(file: GaugeFile, read: FileLengths): number {
  const given = file.scale_uncertainty;
  if (given === undefined) {
    read.say(
      "note",
      "no-scale-uncertainty",
      "gauge.scale_uncertainty",
      "no uncertainty of the gauge's scale is given; it was taken as 0",
      { mend: 'add it as a fraction or as "0.1 %"' },
    );
    return 0;
  }
  if (typeof given === "number") {
    if (given < 0.1) return given;
  } else {
    const match = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*%\s*$/.exec(given);
    if (match !== null && Number(match[1]) < 10) return Number(match[1]) / 100;
  }
  read.say(
    "refused",
    "wrong-value",
    "gauge.scale_uncertainty",
    "this is no fraction of the sag below one tenth",
    {
      value: String(given),
      expected: 'a fraction such as 0.001, or "0.1 %"',
      mend: "write the fraction, not a length",
    },
  );
  return 0;
}

function gauge(file: GaugeFile, read: FileLengths): Gauge | undefined {
  const before = refusals(read);
  const shown = shows(file, read);
  const result = {
    id: file.id ?? "gauge",
    countsUpOn: file.counts_up_on ?? "declared surface",
    ...(file.unit === undefined ? {} : { unit: file.unit }),
    steps: steps(file, read),
    scaleUncertainty: scaleUncertainty(file, read),
    ...(file.stem_tilt_deg === undefined
      ? {}
      : { tiltDegrees: file.stem_tilt_deg }),
  } as const;
  if (shown === undefined || refusals(read) > before) return undefined;
  return { ...result, shows: shown };
}

/** Exactly the keys that a kind of feet wants. */
const WANTED = {
  balls: ["radius", "spacings", "ball_radius", "ball_diameter", "probe_offset"],
  edge: ["inner_radius", "outer_radius"],
  bar: ["span", "ball_radius", "ball_diameter"],
} as const;
const SHAPE_KEYS = [...new Set(Object.values(WANTED).flat())];

function ballRadius(
  file: RingFile,
  path: string,
  needed: boolean,
  read: FileLengths,
): Millimetres | undefined {
  if (file.ball_radius !== undefined && file.ball_diameter !== undefined) {
    return read.say(
      "refused",
      "wrong-value",
      `${path}.ball_diameter`,
      "the ball is given twice",
      { mend: "keep ball_radius or ball_diameter" },
    );
  }
  if (file.ball_diameter !== undefined) {
    const size = read.length(file.ball_diameter, `${path}.ball_diameter`);
    return size === undefined ? undefined : millimetres(size / 2);
  }
  if (file.ball_radius !== undefined) {
    return read.length(file.ball_radius, `${path}.ball_radius`, "0 or more");
  }
  if (!needed) return ZERO;
  return read.say(
    "refused",
    "missing-key",
    `${path}.ball_radius`,
    "the size of the balls is missing",
    { mend: 'add "ball_radius" or "ball_diameter"' },
  );
}

function circle(
  file: RingFile,
  path: string,
  ball: Millimetres | undefined,
  read: FileLengths,
): { radius: Millimetres; spacings?: Spacings } | undefined {
  if ((file.radius === undefined) === (file.spacings === undefined)) {
    return read.say(
      "refused",
      file.radius === undefined ? "missing-key" : "wrong-value",
      `${path}.radius`,
      file.radius === undefined
        ? "neither radius nor spacings of the feet are given"
        : "radius and spacings are both given",
      { mend: "give one of the two" },
    );
  }
  if (file.spacings === undefined) {
    const radius = read.length(file.radius, `${path}.radius`);
    return radius === undefined ? undefined : { radius };
  }
  const lengths = file.spacings.map((spacing, i) =>
    read.length(spacing, `${path}.spacings.${i}`)
  );
  const [a, b, c] = lengths;
  if (a === undefined || b === undefined || c === undefined) return undefined;
  if (file.spacings_measured === undefined) {
    read.say(
      "note",
      "spacings-unsaid",
      `${path}.spacings`,
      "nothing says how the spacings were measured; they were taken centre to centre",
      {
        mend:
          'add "spacings_measured": "centre to centre" or "outside to outside"',
      },
    );
  }
  try {
    const spacings = file.spacings_measured === "outside to outside"
      ? spacingsFromOutside([a, b, c], ball ?? ZERO)
      : [a, b, c] as const;
    return { radius: circleRadiusFromSpacings(spacings), spacings };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return read.say(
      "refused",
      "wrong-value",
      `${path}.spacings`,
      "three balls cannot stand at these spacings",
      { value: `${a} mm, ${b} mm, ${c} mm`, mend: "measure them again" },
    );
  }
}

function shape(
  file: RingFile,
  path: string,
  read: FileLengths,
): RingShape | undefined {
  const kind = file.feet ?? "balls";
  for (const key of SHAPE_KEYS) {
    const fits = (WANTED[kind] as readonly string[]).includes(key);
    if (!fits && file[key] !== undefined) {
      read.say(
        "warning",
        "unused-key",
        `${path}.${key}`,
        `a ring whose feet are “${kind}” has no ${key}; it is not used`,
        { mend: 'take it out, or correct "feet"' },
      );
    }
  }
  if (kind === "edge") {
    const innerRadius = read.length(file.inner_radius, `${path}.inner_radius`);
    const outerRadius = read.length(file.outer_radius, `${path}.outer_radius`);
    if (file.inner_radius === undefined || file.outer_radius === undefined) {
      return read.say(
        "refused",
        "missing-key",
        path,
        "a sharp edge has two radii: concave work touches the outer, convex work the inner",
        { mend: "give inner_radius and outer_radius" },
      );
    }
    if (innerRadius === undefined || outerRadius === undefined) {
      return undefined;
    }
    if (innerRadius > outerRadius) {
      return read.say(
        "refused",
        "wrong-value",
        `${path}.inner_radius`,
        "the inner radius is larger than the outer",
        { mend: "exchange them" },
      );
    }
    return { kind, innerRadius, outerRadius };
  }
  const ball = ballRadius(file, path, kind === "balls", read);
  if (kind === "bar") {
    if (file.span === undefined) {
      return read.say(
        "refused",
        "missing-key",
        `${path}.span`,
        "the span of the bar is missing",
        { mend: 'add "span", the distance between its feet' },
      );
    }
    const span = read.length(file.span, `${path}.span`);
    if (span === undefined || ball === undefined) return undefined;
    return { kind, span, ballRadius: ball };
  }
  const found = circle(file, path, ball, read);
  const probeOffset = read.length(
    file.probe_offset,
    `${path}.probe_offset`,
    "0 or more",
  ) ?? ZERO;
  if (found === undefined || ball === undefined) return undefined;
  if (probeOffset >= found.radius) {
    return read.say(
      "refused",
      "wrong-value",
      `${path}.probe_offset`,
      "the probe would stand outside the feet",
      { mend: "give its distance from the centre of the foot circle" },
    );
  }
  return {
    kind,
    circleRadius: found.radius,
    ballRadius: ball,
    probeOffset,
    ...(found.spacings === undefined ? {} : { spacings: found.spacings }),
  };
}

function expansion(file: RingFile, path: string, read: FileLengths): number {
  if (file.expansion !== undefined) return file.expansion;
  const material = (file.material ?? "steel").toLowerCase().trim();
  const known = EXPANSIONS[material];
  if (known !== undefined) return known;
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

function ring(
  file: RingFile,
  path: string,
  read: FileLengths,
): Ring | undefined {
  const before = refusals(read);
  const feet = shape(file, path, read);
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
      `no uncertainty of the radius of ring ${file.id} is given; ${DEFAULT_RADIUS_UNCERTAINTY} mm was taken`,
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
  const expands = expansion(file, path, read);
  if (feet === undefined || foot === undefined || refusals(read) > before) {
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
    ...(calibrated === undefined ? {} : { calibratedOn: calibrated }),
  };
}

function flat(file: FlatFile, read: FileLengths): ReferenceFlat {
  const size = read.length(file.size, "flat.size");
  const flatness = read.length(file.flatness, "flat.flatness", "0 or more");
  return {
    id: file.id ?? "flat",
    ...(size === undefined ? {} : { size }),
    ...(flatness === undefined ? {} : { flatness }),
  };
}

/** Makes a bench; `undefined` when something that it needs was refused. */
export function benchOfFile(
  file: BenchFile,
  read: FileLengths,
): Bench | undefined {
  const before = refusals(read);
  const dial = gauge(file.gauge, read);
  const rings = file.rings.map((one, i) => ring(one, `rings.${i}`, read));
  const ids = new Set<string>();
  file.rings.forEach((one, i) => {
    const id = one.id.toLowerCase();
    if (ids.has(id)) {
      read.say(
        "refused",
        "repeated-ring",
        `rings.${i}.id`,
        "two rings have this name",
        { value: one.id, mend: "give each ring a name of its own" },
      );
    }
    ids.add(id);
  });
  const plane = file.flat === undefined ? undefined : flat(file.flat, read);
  if (dial === undefined || refusals(read) > before) return undefined;
  return {
    gauge: dial,
    rings: rings.filter((one) => one !== undefined),
    ...(plane === undefined ? {} : { flat: plane }),
    ...(file.decimal_mark === undefined
      ? {}
      : { decimalMark: file.decimal_mark }),
  };
}
