/**
 * The feet of a ring in `bench.json`, in millimetres.
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
import type { RingFile } from "./bench_file.ts";
import type { FileLengths } from "./_file_lengths.ts";

const ZERO = millimetres(0);

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
  if (typeof file.spacings === "string") {
    return read.say(
      "refused",
      "no-file",
      `${path}.spacings`,
      "the file of spacings could not be used",
      {
        value: file.spacings,
        mend: "mend it, or write the three spacings here",
      },
    );
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

const round = (length: number): string => String(Number(length.toPrecision(4)));

/** Makes the feet; `undefined` when something that they need was refused. */
export function ringShapeOfFile(
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
  const apart = Math.min(...found.spacings ?? [Math.sqrt(3) * found.radius]);
  if (file.measured !== false && 2 * ball >= apart) {
    return read.say(
      "refused",
      "wrong-value",
      `${path}.${
        file.ball_radius === undefined ? "ball_diameter" : "ball_radius"
      }`,
      `balls of this size do not fit side by side: they are ${
        round(2 * ball)
      } mm across, and their centres ${round(apart)} mm apart`,
      { mend: "correct the size of the balls, or of the circle" },
    );
  }
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
