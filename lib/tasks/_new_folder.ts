/**
 * The files of a new piece's folder.
 *
 * @module
 */
import { familyOf } from "../units/unit_family.ts";
import { parseLength } from "../units/parse_length.ts";
import type { Problem } from "../records/problem.ts";
import { settingsOfText } from "../records/settings_of_text.ts";
import type { BenchFile } from "../records/bench_file.ts";
import type { PieceFile } from "../records/piece_file.ts";
import { csvText } from "../records/csv_text.ts";
import { recordSchema } from "../records/record_schema.ts";
import { WORK_LOG_HEADER } from "../records/work_log.ts";

/** What is known of a new piece; lengths are texts with their unit. */
export interface NewPiece {
  readonly name: string;
  readonly form: "concave" | "convex";
  readonly diameter: string;
  readonly unit: "mm" | "in";
  readonly bevel?: string;
  readonly thickness?: string;
  readonly glass?: string;
  readonly target?: PieceFile["target"];
  /** Largest good difference of sag between zones. */
  readonly sphericity?: string;
  /** Relative path of a shared bench file; without it one is made. */
  readonly bench?: string;
  readonly ringRadius?: string;
  readonly ringUncertainty?: string;
  readonly foot?: "foot out" | "feet out";
  readonly ballDiameter?: string;
  readonly displayStep?: string;
  readonly countsUpOn?: "concave" | "convex";
}

/** Half the diameter of the work in mm, to size a stand-in ring by. */
export interface NewSizes {
  readonly halfDiameter: number;
}

const json = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;

const READINGS_HEADER = [
  "session",
  "taken_at",
  "ring",
  "zeroing",
  "diameter_deg",
  "foot_deg",
  "zone",
  "reading",
  "unit",
  "operator",
  "note",
];

function pieceText(piece: NewPiece): string {
  const file: PieceFile = {
    $schema: "./schemas/piece.schema.json",
    name: piece.name,
    form: piece.form,
    diameter: piece.diameter,
    ...(piece.bevel === undefined ? {} : { bevel: piece.bevel }),
    ...(piece.thickness === undefined ? {} : { thickness: piece.thickness }),
    ...(piece.glass === undefined ? {} : { glass: piece.glass }),
    ...(piece.target === undefined ? {} : { target: piece.target }),
    ...(piece.sphericity === undefined
      ? {}
      : { sphericity_tolerance: { sag: piece.sphericity } }),
    unit: piece.unit,
    ...(piece.bench === undefined ? {} : { bench: piece.bench }),
  };
  return json(file);
}

/** A ring size that fits the work, until the real one is measured. */
function standIn(halfDiameter: number) {
  const radius = halfDiameter < 10
    ? halfDiameter / 2
    : Math.max(5, Math.round(halfDiameter / 10) * 5);
  return {
    radius: `${Number(radius.toPrecision(3))} mm`,
    ball_diameter: halfDiameter < 30 ? "1 mm" : "5 mm",
  };
}

/** The unit that the gauge shows: its display step's, else the answers'. */
function gaugeUnit({ displayStep, unit }: NewPiece): "mm" | "in" {
  const read = displayStep === undefined
    ? undefined
    : parseLength(displayStep, { decimal: ".", defaultUnit: unit });
  return read?.kind === "length" ? familyOf(read.unit) : unit;
}

/** Whether some answer was typed with a decimal comma. */
function hasComma(piece: NewPiece): boolean {
  const typed = Object.values({
    ...piece,
    ...piece.target,
    name: "",
    glass: "",
  });
  return typed.some((text) => typeof text === "string" && /\d,\d/.test(text));
}

function benchText(piece: NewPiece, sizes: NewSizes): string {
  const measured = piece.ringRadius !== undefined &&
    piece.ballDiameter !== undefined;
  const spare = standIn(sizes.halfDiameter);
  const file: BenchFile = {
    $schema: "./schemas/bench.schema.json",
    // Who types 1,5 mm will read 1,004: said here, it has one meaning.
    ...(hasComma(piece) ? { decimal_mark: "comma" as const } : {}),
    gauge: {
      id: "gauge",
      shows: "sag",
      ...(piece.countsUpOn === undefined
        ? {}
        : { counts_up_on: piece.countsUpOn }),
      unit: gaugeUnit(piece),
      ...(piece.displayStep === undefined
        ? {}
        : { display_step: piece.displayStep }),
    },
    rings: [{
      id: "A",
      feet: "balls",
      radius: piece.ringRadius ?? spare.radius,
      ball_diameter: piece.ballDiameter ?? spare.ball_diameter,
      ...(piece.ringUncertainty === undefined
        ? {}
        : { radius_uncertainty: piece.ringUncertainty }),
      foot: piece.foot ?? "unknown",
      ...(measured ? {} : { measured: false }),
    }],
  };
  return json(file);
}

/**
 * Makes the files of a new folder, by their paths inside it.
 *
 * The bench sheet is a form to copy into sheets/ for each session; it is not
 * read where it lies.
 */
export async function newFolderFiles(
  piece: NewPiece,
  sizes: NewSizes,
): Promise<ReadonlyMap<string, string>> {
  const sheet = ["zeroing", "diameter_deg", "centre", "50%", "edge", "note"];
  return new Map([
    ["piece.json", pieceText(piece)],
    ...(piece.bench === undefined
      ? [["bench.json", benchText(piece, sizes)] as const]
      : []),
    ["readings.csv", csvText([READINGS_HEADER])],
    [
      "sheet-template.csv",
      csvText([
        sheet,
        ...["0", "60", "120"].map((degrees, i) => [
          String(i + 1),
          degrees,
          "",
          "",
          "",
          "",
        ]),
      ]),
    ],
    ["worklog.csv", csvText([WORK_LOG_HEADER])],
    ["schemas/piece.schema.json", await recordSchema("piece")],
    ["schemas/bench.schema.json", await recordSchema("bench")],
  ]);
}

/** Stands in for a bench that lies elsewhere. */
const STAND_IN_BENCH: BenchFile = {
  gauge: {},
  rings: [{ id: "A", radius: "1 mm", ball_radius: "0.5 mm" }],
};

/** What the readers would refuse in the files, before any is written. */
export async function refusalsOf(
  files: ReadonlyMap<string, string>,
): Promise<readonly Problem[]> {
  const piece: PieceFile = JSON.parse(files.get("piece.json")!);
  const own = files.get("bench.json");
  const bench: BenchFile = own === undefined ? STAND_IN_BENCH : JSON.parse(own);
  const { problems } = await settingsOfText(piece, bench, "the answers");
  return problems.filter(({ severity }) => severity === "refused");
}
