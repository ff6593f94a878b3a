/**
 * Writes the invented demonstration pieces under `data/`.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { effectiveFeet } from "../geometry/effective_feet.ts";
import type { SimulatedReading } from "../geometry/simulate_session.ts";
import type { DemoPiece, DemoSession } from "./_demo_piece.ts";
import { benchFile, INVENTED, json, pieceFile } from "./_demo_json.ts";
import { DEMO_PIECES } from "./_demo_pieces.ts";
import { HISTORY_FOLDERS, historyFiles } from "./_demo_history.ts";
import { ringShape, simulated } from "./_demo_simulated.ts";
import { STUDY_FOLDERS, studyFiles } from "./_demo_study.ts";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { say } from "./_terminal.ts";
import { runTool } from "./_tool.ts";

/** Text files by their path inside a piece's folder. */
export type DemoFiles = ReadonlyMap<string, string>;

const csv = (rows: readonly (readonly (string | number)[])[]) =>
  rows.map((row) => row.join(",")).join("\n") + "\n";

function shownText(reading: SimulatedReading, unit: "mm" | "in"): string {
  return unit === "mm"
    ? reading.shown.toFixed(4).replace(/0$/, "")
    : (reading.shown / 25.4).toFixed(5);
}

/** Minutes after seven in the evening as a clock shows them. */
function clock(date: string, minutes: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date}T${two(19 + Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function tidyFile(piece: DemoPiece): string {
  const rows: (string | number)[][] = [
    // deno-fmt-ignore
    ["session", "taken_at", "grade", "ring", "zeroing", "diameter_deg", "foot_deg", "zone", "reading", "unit", "operator", "temperature_air", "temperature_bench", "temperature_work", "note"],
  ];
  for (const session of piece.sessions) {
    simulated(piece, session).forEach((reading, i) => {
      const air = session.airCelsius;
      // deno-fmt-ignore
      rows.push([session.id, clock(session.date, i + 2 * reading.set), session.grade, piece.ring.id, reading.set + 1, reading.diameterDegrees, piece.foot, reading.zone, shownText(reading, piece.unit), piece.unit, session.operator, air.toFixed(1), (air - 0.2).toFixed(1), (air - 0.1).toFixed(1), i === 0 ? "invented" : ""]);
    });
  }
  return csv(rows);
}

function sheetFile(piece: DemoPiece, session: DemoSession): string {
  const readings = simulated(piece, session);
  const rows = session.diameters.map((diameter, set) => [
    set + 1,
    diameter,
    piece.foot,
    piece.unit,
    ...readings.filter((reading) => reading.set === set)
      .map((reading) => shownText(reading, piece.unit)),
  ]);
  return [
    `# ${INVENTED}`,
    `# ${session.date}, after ${session.grade}, ${session.operator}`,
    csv([
      [
        "zeroing",
        "diameter_deg",
        "foot_deg",
        "unit",
        ...piece.places.map(({ zone }) => zone),
      ],
      ...rows,
    ]),
  ].join("\n");
}

function workFile(piece: DemoPiece): string {
  const quoted = (cell: string | number) =>
    typeof cell === "string" && cell.includes(",") ? `"${cell}"` : cell;
  return csv([
    // deno-fmt-ignore
    ["date", "grade", "abrasive", "minutes", "wets", "position", "stroke", "session", "thickness_centre", "thickness_edge", "pits", "note"],
    ...piece.work.map((line) => line.map(quoted)),
  ]);
}

function truthFile(piece: DemoPiece): string {
  const still = { repeat: 0, zeroing: 0, diameter: 0 };
  const [first] = piece.sessions;
  const sags = simulated({
    ...piece,
    step: 0,
    scatter: { ...piece.scatter, ...still } as DemoPiece["scatter"],
  }, { ...first, diameters: [first.diameters[0]] });
  const shape = effectiveFeet(ringShape(piece), "concave");
  return json({
    invented: true,
    note: `${INVENTED} What the simulation put in; nothing reads this file.`,
    seed: piece.seed,
    unit: "mm",
    vertex_radius: piece.trueRadius,
    departures: piece.departures.map(({ kind, sizes }) => ({ kind, ...sizes })),
    ring: {
      true_circle_radius: piece.ring.trueRadius,
      stated_circle_radius: Number(shape.circleRadius.toFixed(4)),
      ball_radius: piece.ring.ballRadius,
    },
    standard_deviations: piece.scatter,
    display_step: piece.step,
    sag_without_scatter: {
      diameter_deg: first.diameters[0],
      zones: sags.filter(({ zone }) => zone !== "flat").map((reading) => ({
        zone: reading.zone,
        offset: Number(reading.offset.toFixed(4)),
        sag: Number(reading.truth.toFixed(9)),
      })),
    },
  });
}

/**
 * Makes the files of one invented piece.
 *
 * @param folder Name of the piece's folder, such as `metric-250`.
 * @returns The text of each file, by its path inside the folder.
 * @throws {RangeError} If there is no such piece.
 */
export function demoFiles(folder: string): DemoFiles {
  const study = STUDY_FOLDERS.find((name) => name === folder);
  if (study !== undefined) return new Map(Object.entries(studyFiles(study)));
  const piece = DEMO_PIECES.find((one) => one.folder === folder);
  if (piece === undefined) {
    throw new RangeError(
      `Cannot make a demo piece as its folder must be one of ${
        DEMO_FOLDERS.join(", ")
      }: current value is ${folder}`,
    );
  }
  return filesOf(piece);
}

/**
 * Makes the files of an invented piece from its plan.
 *
 * @param piece What is simulated.
 * @returns The text of each file, by its path inside the folder.
 */
export function filesOf(piece: DemoPiece): DemoFiles {
  const files = new Map<string, string>([
    ["piece.json", pieceFile(piece)],
    ["bench.json", benchFile(piece)],
    ["truth.json", truthFile(piece)],
  ]);
  if (piece.work.length > 0) files.set("worklog.csv", workFile(piece));
  if (piece.layout === "tidy") files.set("readings.csv", tidyFile(piece));
  else {
    for (const session of piece.sessions) {
      files.set(`sheets/${session.id}.csv`, sheetFile(piece, session));
    }
  }
  return files;
}

/** Names of the folders of every invented piece. */
export const DEMO_FOLDERS: readonly string[] = [
  ...DEMO_PIECES.map(({ folder }) => folder),
  ...STUDY_FOLDERS,
];

const USAGE = `deno task demo-data [FOLDER ...]

Writes the invented pieces under data/ again, from their plans and seeds; what
they held is replaced. Without a FOLDER, such as ${
  DEMO_PIECES[0].folder
}, all of them.

  --help   this text

Exit codes: 0 written, 1 failed, 2 wrong call.`;

async function writeDemoData(folders: readonly string[]): Promise<number> {
  for (const folder of folders) {
    const files = HISTORY_FOLDERS.includes(folder)
      ? historyFiles(folder)
      : demoFiles(folder);
    for (const [path, text] of files) {
      const target = join(ROOT, "data", folder, path);
      await Deno.mkdir(dirname(target), { recursive: true });
      await writeAtomically(target, text);
    }
    say(`data/${folder}`);
  }
  return EXIT.ok;
}

if (import.meta.main) {
  const code = await runTool({
    usage: USAGE,
    names: {
      what: "piece",
      known: () => [...DEMO_FOLDERS, ...HISTORY_FOLDERS],
    },
    run: ({ chosen }) => writeDemoData(chosen),
  }, Deno.args);
  Deno.exit(code);
}
