/**
 * Invented pieces with a whole history, and invented shops.
 *
 * @module
 */
import { deepCentre } from "../geometry/contact_departures.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { conicSurface, withDepartures } from "../geometry/contact_surface.ts";
import { simulateSession } from "../geometry/simulate_session.ts";
import { radiusFromSurfaceSag, surfaceSag } from "../geometry/surface_sag.ts";
import { Random } from "../numerics/random.ts";
import { millimetres as mm } from "../units/length.ts";
import { benchFile, INVENTED, json } from "./_demo_json.ts";
import {
  HISTORY_PIECES,
  HISTORY_RATES,
  type HistoryPiece,
  type HistoryWork,
} from "./_demo_history_pieces.ts";
import { FOUR, ring, scatter } from "./_demo_settings.ts";
import {
  BETWEEN,
  crossingOf,
  HABIT,
  SHOP_FOLDERS,
  shopFiles,
} from "./_demo_shops.ts";

const HALF = 150;
const BEVEL = 2;
const MARGIN = 1;
const RING = ring("ring 120", 59.996, 60, 6);
const STEP = 0.001;
const SCATTER = scatter(0.0006, 0.001, 0.0003);
/** How unevenly a wet works: standard deviation over its mean. */
const UNEVEN = 0.2;

const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) =>
    row.map((cell) => /[,"]/.test(String(cell)) ? `"${cell}"` : cell).join(",")
  ).join("\n") + "\n";

/** The surface at one session. */
interface Evening {
  readonly session: string;
  readonly date: string;
  readonly grade: string;
  readonly radius: number;
  readonly hole: number;
}

/** Grinds the piece; the sag follows the work, unevenly. */
function evenings(piece: HistoryPiece): readonly Evening[] {
  const random = new Random(piece.seed).fork("work");
  let sag: number = surfaceSag(mm(piece.start), mm(HALF));
  const found: Evening[] = [{
    ...piece.first,
    grade: "hogged",
    radius: piece.start,
    hole: piece.hole,
  }];
  for (const stretch of piece.work) {
    const { grade, wets = 0, position, session, date, hole = 0 } = stretch;
    for (let wet = 0; wet < wets; wet++) {
      sag += (position === "mirror on top" ? 1 : -1) * HISTORY_RATES[grade] *
        (1 + UNEVEN * random.normal());
    }
    if (session === undefined) continue;
    const radius = radiusFromSurfaceSag(mm(sag), mm(HALF));
    found.push({ session, date, grade, radius, hole });
  }
  return found;
}

/** Minutes after seven in the evening. */
function clock(date: string, minutes: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date}T${two(19 + Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function readingsFile(piece: HistoryPiece): string {
  const random = new Random(piece.seed);
  const reach = 88 - 0.5 - MARGIN;
  const rows: (string | number)[][] = [
    // deno-fmt-ignore
    ["session", "taken_at", "grade", "ring", "zeroing", "diameter_deg", "foot_deg", "zone", "offset", "reading", "unit", "operator", "note"],
  ];
  for (const { session, date, grade, radius, hole } of evenings(piece)) {
    const readings = simulateSession(
      {
        surface: withDepartures(
          conicSurface(radius, 0),
          ...(hole > 0 ? [deepCentre({ radius: 120, depth: hole })] : []),
        ),
        form: "concave",
        gauge: ringGauge(RING.trueRadius, RING.ballRadius),
        diameters: FOUR,
        places: [
          { zone: "centre", offset: mm(0) },
          { zone: "50%", offset: mm(HALF / 2) },
          { zone: "edge", offset: mm(Math.floor(reach)) },
          { zone: "flat", offset: mm(0) },
        ],
        foot: "foot out",
        scatter: SCATTER,
        step: mm(STEP),
      },
      random.fork(session),
      random.fork("diameters"),
    );
    readings.forEach((one, i) => {
      // deno-fmt-ignore
      rows.push([session, clock(date, i + 2 * one.set), grade, RING.id, one.set + 1, one.diameterDegrees, "foot out", one.zone, one.zone === "flat" ? "" : one.offset, one.shown.toFixed(3), "mm", "operator A", i === 0 ? "invented" : ""]);
    });
  }
  return csv(rows);
}

function workFile(piece: HistoryPiece): string {
  let thickness = 40.2;
  return csv([
    // deno-fmt-ignore
    ["date", "grade", "abrasive", "minutes", "wets", "position", "stroke", "session", "thickness_centre", "thickness_edge", "pits", "note"],
    ...piece.work.map((line: HistoryWork) => {
      const { date, grade, minutes, wets, position, session, pits, note } =
        line;
      // A wet also takes glass off everywhere, which no gauge sees.
      thickness -= 1.6 * (HISTORY_RATES[grade] ?? 0) * (wets ?? 0);
      const centre = pits === "none" && wets !== undefined
        ? `${thickness.toFixed(2)} mm`
        : "";
      // deno-fmt-ignore
      return [date, grade, grade === "polishing" ? "cerium oxide" : "silicon carbide", minutes, wets ?? "", position, "1/3, centre over centre", session ?? "", centre, "", pits ?? "", note ?? ""];
    }),
  ]);
}

/** What the piece became, where it was polished out. */
function finishedFile(piece: HistoryPiece): string | undefined {
  const { ground } = piece;
  if (ground === undefined) return undefined;
  const random = new Random(piece.seed).fork("finished");
  const { radius } = evenings(piece).at(-1)!;
  const focus = radius / 2 * (1 + HABIT + BETWEEN * random.normal());
  const crossing = crossingOf(focus, 0.7 * HALF) + random.normal();
  return csv([
    // deno-fmt-ignore
    ["piece", "diameter", "ground_radius", "ground_radius_uncertainty", "unit", "method", "centre", "zone", "source", "distance_uncertainty", "figuring", "note"],
    // deno-fmt-ignore
    [piece.name, 2 * HALF, ground.radius, ground.uncertainty, "mm", "centre of curvature", crossing.toFixed(1), "70 %", "moves", 1, "paraboloid, centre deepened", "invented"],
  ]);
}

/** Names of the folders of pieces and shops. */
export const HISTORY_FOLDERS: readonly string[] = [
  ...HISTORY_PIECES.map(({ folder }) => folder),
  ...SHOP_FOLDERS,
];

/**
 * Makes the files of one piece with a history, or of one shop.
 *
 * @param folder Its name.
 * @returns Path inside the folder to text.
 * @throws {RangeError} If there is none of that name.
 */
export function historyFiles(folder: string): ReadonlyMap<string, string> {
  const shop = SHOP_FOLDERS.find((name) => name === folder);
  if (shop !== undefined) return shopFiles(shop);
  const piece = HISTORY_PIECES.find((one) => one.folder === folder);
  if (piece === undefined) {
    throw new RangeError(
      `Cannot make a history as its folder must be one of ${
        HISTORY_FOLDERS.join(", ")
      }: current value is ${folder}`,
    );
  }
  const finished = finishedFile(piece);
  return new Map([
    [
      "piece.json",
      json({
        name: piece.name,
        form: "concave",
        diameter: "300 mm",
        bevel: `${BEVEL} mm`,
        margin: `${MARGIN} mm`,
        thickness: "40 mm",
        glass: "borosilicate",
        target: {
          radius: `${piece.target} mm`,
          tolerance: `${piece.tolerance} mm`,
        },
        sphericity_tolerance: { sag: "0.003 mm" },
        starting_radius: `${piece.start} mm`,
        unit: "mm",
        invented: true,
        note: `${INVENTED} An invented club workshop.`,
      }),
    ],
    [
      "bench.json",
      benchFile({ ring: RING, unit: "mm", foot: "foot out", step: STEP }),
    ],
    ["readings.csv", readingsFile(piece)],
    ["worklog.csv", workFile(piece)],
    ...(finished === undefined
      ? []
      : [["finished.csv", finished] as [string, string]]),
    [
      "truth.json",
      json({
        invented: true,
        note:
          `${INVENTED} What the simulation put in; nothing reads this file.`,
        seed: piece.seed,
        unit: "mm",
        sag_for_one_wet: HISTORY_RATES,
        unevenness_of_a_wet: UNEVEN,
        standard_deviations: SCATTER,
        display_step: STEP,
        sessions: evenings(piece).map(({ session, radius, hole }) => ({
          session,
          radius: Number(radius.toFixed(3)),
          hole,
        })),
      }),
    ],
  ]);
}
