/**
 * From `piece.json` as written to a piece in millimetres.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { FileLengths } from "./_file_lengths.ts";
import { lensOfFile, testPlateOfFile } from "./_lens_of_file.ts";
import type { Piece, SphericityTolerance, Target } from "./piece.ts";
import type {
  LengthText,
  PieceFile,
  SphericityFile,
  TargetFile,
} from "./piece_file.ts";
import { withoutPlusMinus } from "./without_plus_minus.ts";

/** How far inside the bevel a foot must stay unless the user says: common practice, no source. */
const DEFAULT_MARGIN = millimetres(0.5);
/** A wider tolerance, as a part of the target, is asked about. */
const MOST_TOLERANCE = 0.3;

type Stated = Target["statedAs"];

function given<T extends object>(group: T, keys: readonly (keyof T)[]) {
  return keys.filter((key) => group[key] !== undefined);
}

function target(
  file: TargetFile,
  diameter: Millimetres,
  read: FileLengths,
): Target | undefined {
  const ways = given(file, ["radius", "focal_length", "focal_ratio"]);
  if (ways.length !== 1) {
    return read.say(
      "refused",
      "wrong-value",
      "target",
      ways.length === 0
        ? "the target says no radius"
        : "the target is stated more than once",
      {
        expected: "exactly one of radius, focal_length, focal_ratio",
        mend: ways.length === 0 ? "add one" : "keep one",
      },
    );
  }
  const [way] = ways;
  const statedAs = String(way).replace("_", " ") as Stated;
  const path = `target.${String(way)}`;
  const scale = way === "radius"
    ? 1
    : way === "focal_length"
    ? 2
    : 2 * diameter;
  const stated = way === "focal_ratio"
    ? file.focal_ratio
    : read.length(file[way] as LengthText, path);
  if (stated === undefined) return undefined;
  const tolerance = targetTolerance(file, way === "focal_ratio", read);
  if (tolerance !== undefined && tolerance > MOST_TOLERANCE * stated) {
    read.say(
      "warning",
      "wide-tolerance",
      "target.tolerance",
      `the tolerance is ${
        Math.round(100 * tolerance / stated)
      } % of the target: nearly anything would pass`,
      {
        value: JSON.stringify(file.tolerance),
        mend: "correct it: it says how far from the target is still good",
      },
    );
  }
  return {
    radius: millimetres(scale * stated),
    ...(tolerance === undefined
      ? {}
      : { tolerance: millimetres(scale * tolerance) }),
    statedAs,
  };
}

/** A tolerance without the ± that people write before one. */
function bare(tolerance: LengthText): LengthText {
  return typeof tolerance === "string"
    ? withoutPlusMinus(tolerance)
    : tolerance;
}

function targetTolerance(
  file: TargetFile,
  isRatio: boolean,
  read: FileLengths,
): number | undefined {
  const { tolerance } = file;
  if (tolerance === undefined) return undefined;
  if (isRatio === (typeof tolerance === "number")) {
    return typeof tolerance === "number"
      ? tolerance
      : read.length(bare(tolerance), "target.tolerance");
  }
  return read.say(
    "refused",
    "wrong-value",
    "target.tolerance",
    isRatio
      ? "the tolerance of a focal ratio is a plain number"
      : "this number has no unit",
    {
      value: JSON.stringify(tolerance),
      mend: isRatio
        ? "write a number such as 0.05"
        : `write "${tolerance} mm" or "${tolerance} in"`,
    },
  );
}

function sphericity(
  file: SphericityFile,
  read: FileLengths,
): SphericityTolerance | undefined {
  const ways = given(file, ["sag", "surface", "radius"]);
  if (ways.length !== 1) {
    return read.say(
      "refused",
      "wrong-value",
      "sphericity_tolerance",
      "a tolerance is stated in exactly one way",
      { expected: "one of sag, surface, radius", mend: "keep one" },
    );
  }
  const [way] = ways;
  const amount = read.length(
    bare(file[way]!),
    `sphericity_tolerance.${way}`,
  );
  return amount === undefined ? undefined : { statedAs: way, amount };
}

/** Makes a piece; `undefined` when something that it needs was refused. */
export function pieceOfFile(
  file: PieceFile,
  read: FileLengths,
): Piece | undefined {
  const before = read.refusals;
  const diameter = read.length(file.diameter, "diameter");
  const bevel = read.length(file.bevel, "bevel", "0 or more");
  const margin = read.length(file.margin, "margin", "0 or more");
  const thickness = read.length(file.thickness, "thickness");
  const startingRadius = read.length(file.starting_radius, "starting_radius");
  const tolerance = file.sphericity_tolerance === undefined
    ? undefined
    : sphericity(file.sphericity_tolerance, read);
  if (file.bevel === undefined) {
    read.say(
      "note",
      "no-bevel",
      "bevel",
      "no bevel is given; it was taken as 0 mm",
      { mend: "measure it: the reach of every ring depends on it" },
    );
  }
  if (diameter === undefined) return undefined;
  const goal = file.target === undefined
    ? undefined
    : target(file.target, diameter, read);
  const lens = file.lens === undefined
    ? undefined
    : lensOfFile(file.lens, read);
  const plate = file.test_plate === undefined
    ? undefined
    : testPlateOfFile(file.test_plate, diameter, read);
  if (2 * ((bevel ?? 0) + (margin ?? DEFAULT_MARGIN)) >= diameter) {
    read.say(
      "refused",
      "wrong-value",
      "bevel",
      "bevel and margin leave nothing of the surface",
      { mend: "correct bevel, margin or diameter" },
    );
  }
  for (
    const [radius, path] of [[goal?.radius, "target"], [
      startingRadius,
      "starting_radius",
    ]] as const
  ) {
    if (radius !== undefined && radius < diameter / 2) {
      read.say(
        "refused",
        "wrong-value",
        path,
        `a radius of curvature of ${radius} mm is less than half the diameter`,
        { mend: "correct it, or the diameter" },
      );
    }
  }
  if (read.refusals > before) return undefined;
  return {
    name: file.name,
    form: file.form,
    diameter,
    bevel: bevel ?? millimetres(0),
    margin: margin ?? DEFAULT_MARGIN,
    ...(thickness === undefined ? {} : { thickness }),
    ...(file.glass === undefined ? {} : { glass: file.glass }),
    ...(goal === undefined ? {} : { target: goal }),
    ...(tolerance === undefined ? {} : { sphericity: tolerance }),
    ...(startingRadius === undefined ? {} : { startingRadius }),
    ...(lens === undefined ? {} : { lens }),
    ...(plate === undefined ? {} : { testPlate: plate }),
    unit: file.unit ?? read.unitOf(file.diameter) ?? "mm",
    invented: file.invented ?? false,
    ...(file.note === undefined ? {} : { note: file.note }),
  };
}
