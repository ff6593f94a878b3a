/**
 * Invented shops: finished pieces whose ground radius and later focal length
 * are both known.
 *
 * @module
 */
import { Random } from "../numerics/random.ts";
import { INVENTED, json } from "./_demo_json.ts";

/** Names of the folders. */
export const SHOP_FOLDERS = ["shop-twelve", "shop-two"] as const;

/** The shop's habit: polishing lengthens, figuring shortens; together. */
export const HABIT = -0.0012;
/** How it scatters from piece to piece. */
export const BETWEEN = 0.0008;

const METHODS = ["centre of curvature", "lamp", "star"] as const;
/** The same where the file states focal lengths found elsewhere. */
const STATED = [
  "centre of curvature, 70 % zone, source moves",
  "lamp at 180 m, corrected",
  "star",
] as const;
/** Distance of the lamp, in mm. */
const LAMP = 180_000;
/** The zone read at the centre of curvature, as a part of the half diameter. */
const ZONE = 0.7;

/**
 * Where the rays of a zone of a paraboloid cross, from its vertex, when the
 * source moves with the knife; all in mm.
 */
export function crossingOf(focalLength: number, zone: number): number {
  return 2 * focalLength + zone ** 2 / (4 * focalLength);
}

/**
 * Makes the files of one shop.
 *
 * @param folder Its name.
 * @returns Path inside the folder to text.
 */
export function shopFiles(
  folder: typeof SHOP_FOLDERS[number],
): ReadonlyMap<string, string> {
  const count = folder === "shop-twelve" ? 12 : 2;
  const random = new Random(count === 12 ? 1212 : 22);
  const twelve = count === 12;
  const rows = [
    // deno-fmt-ignore
    ["piece", "diameter", "ground_radius", "ground_radius_uncertainty", "focal_length", "focal_length_uncertainty", "unit", "method", "figuring", ...(twelve ? ["centre", "zone", "source", "image", "lamp", "distance_uncertainty"] : []), "note"],
  ];
  for (let k = 0; k < count; k++) {
    const diameter = 150 + 50 * random.integer(5);
    const ratio = [4, 5, 6, 8][random.integer(4)];
    const truth = 2 * diameter * ratio * (1 + 0.006 * random.normal());
    const uRadius = truth * (0.0006 + 0.0006 * random.uniform());
    const focus = truth / 2 * (1 + HABIT + BETWEEN * random.normal());
    const method = k % 3;
    const uFocus = focus * [0.0003, 0.0008, 0.0005][method];
    const inches = count === 12 && k === 4;
    const scale = inches ? 1 / 25.4 : 1;
    const say = (value: number, digits: number): string =>
      (scale * value).toFixed(inches ? digits + 2 : digits);
    const ground = truth + uRadius * random.normal();
    // What the maker of the piece read, from which the focal length follows.
    const read = focus + uFocus * random.normal();
    const crossing = crossingOf(read, ZONE * diameter / 2);
    const image = 1 / (1 / read - 1 / LAMP);
    const stated = !twelve || method === 2;
    rows.push([
      `disc ${k + 1}`,
      say(diameter, 0),
      say(ground, 1),
      say(uRadius, 1),
      stated ? say(read, 1) : "",
      stated ? say(uFocus, 1) : "",
      inches ? "in" : "mm",
      (twelve ? METHODS : STATED)[method],
      "paraboloid, centre deepened",
      ...(!twelve
        ? []
        : stated
        ? ["", "", "", "", "", ""]
        : method === 0
        ? [say(crossing, 1), "70 %", "moves", "", "", say(2 * uFocus, 1)]
        : ["", "", "", say(image, 1), "180 m", say(uFocus, 1)]),
      k === 0 ? "invented" : "",
    ]);
  }
  const quoted = (cell: string) => cell.includes(",") ? `"${cell}"` : cell;
  return new Map([
    [
      "finished.csv",
      rows.map((row) => row.map(quoted).join(",")).join("\n") + "\n",
    ],
    [
      "truth.json",
      json({
        invented: true,
        note:
          `${INVENTED} What the simulation put in; nothing reads this file.`,
        mean_of_two_f_over_r_less_one: HABIT,
        standard_deviation_between_pieces: BETWEEN,
      }),
    ],
  ]);
}
