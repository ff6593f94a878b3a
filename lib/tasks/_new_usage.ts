/**
 * What `deno task new` takes.
 *
 * @module
 */

/** Text of `--help`. */
export const USAGE =
  `deno task new FOLDER [--name TEXT] [--form concave|convex] [--diameter LENGTH] ...

Makes FOLDER with piece.json, bench.json, an empty readings.csv, a bench sheet
to copy, worklog.csv and the schemas that an editor checks them by. What the
flags do not say is asked at the terminal. Nothing is ever overwritten.

  --name TEXT             your name for the piece (else the folder's)
  --form concave|convex   which way the surface curves
  --diameter LENGTH       "300 mm", "11 13/16 in"; a bare number takes --unit
  --unit mm|in            the unit answers are given in (else mm)
  --bevel LENGTH          width of the bevel
  --thickness LENGTH      thickness at the edge
  --glass TEXT            the glass
  --radius LENGTH         the wanted radius of curvature, or
  --focal-length LENGTH   the wanted focal length, or
  --focal-ratio NUMBER    the wanted focal ratio
  --tolerance LENGTH      how far from the wanted radius or focal length is good;
                          beside a focal ratio a plain number, such as 0.05
  --sphericity LENGTH     largest good difference of sag between zones, "2 µm"
  --ring-radius LENGTH    radius of the circle through the ball centres (half its
                          diameter)
  --ball-diameter LENGTH  diameter of the balls
  --ring-uncertainty LENGTH  standard uncertainty of that radius
  --foot "foot out"|"feet out"   how the ring usually stands at the edge
  --display-step LENGTH   what the gauge's display steps by
  --counts-up-on concave|convex   the surface on which the gauge counts up
  --bench PATH            a bench file shared by several pieces, seen from FOLDER
  --help                  this text

Exit codes: 0 made, 1 not made, 2 wrong call.`;

/** Flags and whether they take a value. */
export const FLAGS = {
  name: "value",
  form: "value",
  diameter: "value",
  unit: "value",
  bevel: "value",
  thickness: "value",
  glass: "value",
  radius: "value",
  "focal-length": "value",
  "focal-ratio": "value",
  tolerance: "value",
  sphericity: "value",
  "ring-uncertainty": "value",
  foot: "value",
  "ring-radius": "value",
  "ball-diameter": "value",
  "display-step": "value",
  "counts-up-on": "value",
  bench: "value",
  help: "switch",
  h: "switch",
} as const;
