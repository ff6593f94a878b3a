/**
 * What a line says of how a focal length was read.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { FocusReading } from "./focus_reading.ts";
import type { TableLine } from "./_table_line.ts";

/** Columns that say how a focal length was read, each with other names. */
export const FOCUS_COLUMNS = {
  image: ["image_distance"],
  lamp: ["lamp_distance"],
  lamp_uncertainty: ["lamp_distance_uncertainty", "u_lamp"],
  centre: ["center", "centre_of_curvature", "centre_distance"],
  zone: [],
  source: [],
  surface: [],
  distance_uncertainty: ["image_uncertainty", "centre_uncertainty"],
} as const;

/** Reads what was measured; refuses a line that says too little. */
export function focusReadingOf(
  line: TableLine,
  diameter: Millimetres | undefined,
): FocusReading | undefined {
  const uncertainty = line.length("distance_uncertainty");
  const sure = uncertainty === undefined ? {} : { uncertainty };
  if (line.text("centre") !== undefined) {
    const distance = line.length("centre");
    const zone = zoneOf(line, diameter);
    const source = line.word("source", ["moves", "fixed"]);
    const surface = line.word("surface", ["sphere", "paraboloid"]) ??
      "paraboloid";
    if (distance === undefined || zone === undefined) return undefined;
    if (source === undefined && zone > 0 && surface === "paraboloid") {
      return line.text("source") === undefined
        ? line.refuse("source", {
          code: "blank-cell",
          message:
            "a zone off the axis crosses elsewhere when the source stands still",
          expected: "moves, fixed",
          mend: "write whether the source moves with the tester",
        })
        : undefined;
    }
    return {
      method: "centre of curvature",
      distance,
      zone,
      source: source ?? "moves",
      surface,
      ...sure,
    };
  }
  const image = line.length("image");
  const lamp = line.length("lamp");
  const lampUncertainty = line.length("lamp_uncertainty");
  if (image === undefined) return undefined;
  if (lamp !== undefined) {
    return {
      method: "lamp",
      image,
      lamp,
      ...sure,
      ...(lampUncertainty === undefined ? {} : { lampUncertainty }),
    };
  }
  return /lamp|light/i.test(line.text("method") ?? "")
    ? line.refuse("lamp", {
      code: "blank-cell",
      message: "the image of a lamp lies too far out by what its distance says",
      expected: "the lamp's distance, such as 180 m",
      mend: "write how far the lamp was from the surface",
    })
    : { method: "star", image, ...sure };
}

/** A zone as a length, or in per cent of the half diameter; 0 when blank. */
function zoneOf(
  line: TableLine,
  diameter: Millimetres | undefined,
): Millimetres | undefined {
  const typed = line.text("zone");
  if (typed === undefined || /^(?:0|centre|center)$/i.test(typed)) {
    return millimetres(0);
  }
  const percent = /^(\d+(?:[.,]\d+)?)\s*%$/.exec(typed);
  if (percent === null) return line.length("zone");
  const part = Number(percent[1].replace(",", ".")) / 100;
  if (part <= 1 && diameter !== undefined) {
    return millimetres(part * diameter / 2);
  }
  return line.refuse("zone", {
    code: "wrong-value",
    message: part > 1
      ? "a zone lies within the half diameter"
      : "a zone in per cent needs the diameter of the piece",
    expected: "a length, or 0 % to 100 % beside a diameter",
  });
}
