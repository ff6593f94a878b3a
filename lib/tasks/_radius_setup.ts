/**
 * Piece, bench and ring for a quick answer: from a folder, or from flags.
 *
 * @module
 */
import type { GaugeScatter } from "../narrative/bench_scatter.ts";
import { ringNamed } from "../narrative/bench_ring_named.ts";
import type { Bench, Ring } from "../records/bench.ts";
import type { BenchFile, RingFile } from "../records/bench_file.ts";
import type { Piece } from "../records/piece.ts";
import type { PieceFile } from "../records/piece_file.ts";
import type { Problem } from "../records/problem.ts";
import { parseLength } from "../units/parse_length.ts";

/** Flags as read. */
export type Flags = Readonly<Record<string, string | true>>;

/** What a quick answer needs. */
export interface RadiusSetup {
  readonly piece: Piece;
  readonly bench: Bench;
  /** The ring that was meant; absent where several may be, for the reverse. */
  readonly ring?: Ring;
  readonly scatter: GaugeScatter;
  /** False where nobody said how large the work is. */
  readonly sizeKnown: boolean;
  /** What was taken for granted, to be said beside the answer. */
  readonly said: readonly string[];
}

/** A wrong call, in words for the user. */
export class CallError extends Error {}

const SIZES = ["form", "diameter", "ball", "ball-diameter"] as const;

/** Reads a flag as a length of at least 0 and returns its text with the unit. */
function length(
  flags: Flags,
  name: string,
  unit: "mm" | "in",
): string | undefined {
  const typed = flags[name];
  if (typeof typed !== "string") return undefined;
  const read = parseLength(typed, { decimal: ".", defaultUnit: unit });
  if (read.kind === "length" && read.value >= 0) {
    return read.unitAssumed ? `${typed} ${unit}` : typed;
  }
  const why = read.kind === "refused"
    ? read.reason
    : read.kind === "ambiguous"
    ? `it can be read as ${read.amounts.join(" or ")} ${read.unit}`
    : read.kind === "blank"
    ? "it is blank"
    : "it must not be below 0";
  throw new CallError(
    `--${name} “${typed.slice(0, 60)}” cannot be used: ${why}.`,
  );
}

function unitOf(flags: Flags): "mm" | "in" {
  const { unit = "mm" } = flags;
  if (unit === "mm" || unit === "in") return unit;
  throw new CallError(`--unit is mm or in: current value is ${unit}.`);
}

function formOf(flags: Flags): "concave" | "convex" {
  const { form } = flags;
  if (form === "concave" || form === "convex") return form;
  throw new CallError(
    form === undefined
      ? "--form is missing: concave or convex. The wrong one moves R by two ball radii."
      : `--form is concave or convex: current value is ${form}.`,
  );
}

/** The ring of the flags as a bench file would hold it. */
function ringFile(flags: Flags, unit: "mm" | "in"): RingFile {
  const radius = length(flags, "ring", unit);
  if (radius === undefined) {
    throw new CallError(
      "Say where the ring is: --folder DIR, or --ring with the radius of the circle through the ball centres.",
    );
  }
  const sure = length(flags, "ring-uncertainty", unit);
  const known = sure === undefined ? {} : { radius_uncertainty: sure };
  if (flags.sharp) {
    return {
      id: "ring",
      feet: "edge",
      inner_radius: radius,
      outer_radius: radius,
      ...known,
    };
  }
  const ball = length(flags, "ball", unit);
  const across = length(flags, "ball-diameter", unit);
  if ((ball === undefined) === (across === undefined)) {
    throw new CallError(
      "Say the size of the balls in one way: --ball with their radius, --ball-diameter, or --sharp for a ring with a sharp edge.",
    );
  }
  return {
    id: "ring",
    radius,
    ...(ball === undefined ? { ball_diameter: across } : { ball_radius: ball }),
    ...known,
  };
}

async function fromFlags(flags: Flags): Promise<RadiusSetup> {
  const { settingsOfText } = await import("../records/settings_of_text.ts");
  const unit = unitOf(flags);
  const step = length(flags, "step", unit);
  const target = length(flags, "target", unit);
  const diameter = length(flags, "diameter", unit);
  const ring = ringFile(flags, unit);
  const piece: PieceFile = {
    name: "piece",
    form: formOf(flags),
    // Without a diameter nothing is said about the whole surface.
    diameter: diameter ?? "1000 m",
    ...(target === undefined || diameter === undefined
      ? {}
      : { target: { radius: target } }),
    unit,
  };
  const bench: BenchFile = {
    gauge: { unit, ...(step === undefined ? {} : { display_step: step }) },
    rings: [ring],
  };
  const found = await settingsOfText(piece, bench, "command line");
  refuse(found.problems);
  const { rings } = found.bench!;
  const assumed = rings[0].radiusUncertaintyAssumed
    ? [
      `The uncertainty of the ring's radius was taken as ${
        rings[0].radiusUncertainty
      } mm; give it with --ring-uncertainty.`,
    ]
    : [];
  return {
    piece: found.piece!,
    bench: found.bench!,
    ring: rings[0],
    scatter: {},
    sizeKnown: diameter !== undefined,
    said: assumed,
  };
}

function refuse(problems: readonly Problem[]): void {
  const refused = problems.filter(({ severity }) => severity === "refused");
  if (refused.length === 0) return;
  throw new CallError(
    refused.map(({ column, value, message, expected }) =>
      `${[column, value].filter(Boolean).join(" ")}: ${message}${
        expected === undefined ? "" : ` (expected ${expected})`
      }`
    ).join("\n"),
  );
}

async function fromFolder(
  folder: string,
  flags: Flags,
  anyRing: boolean,
): Promise<RadiusSetup> {
  const clash = SIZES.filter((name) => flags[name] !== undefined);
  if (clash.length > 0) {
    throw new CallError(
      `--${clash[0]} does not go with --folder, which knows it already.`,
    );
  }
  const { readPieceFolder } = await import("../records/read_piece_folder.ts");
  const { piece, bench, readings, problems } = await readPieceFolder(folder);
  const name = typeof flags.ring === "string" ? flags.ring : undefined;
  const ring = ringNamed(bench, name);
  if (typeof ring === "string") {
    if (name === undefined && anyRing) {
      return { piece, bench, scatter: {}, sizeKnown: true, said: [] };
    }
    throw new CallError(ring);
  }
  const { gaugeScatter } = await import("../narrative/bench_scatter.ts");
  const unit = typeof flags.unit === "string" ? unitOf(flags) : piece.unit;
  const said = problems.filter(({ code }) => code === "ring-not-measured")
    .map(({ message }) => `warning: ${message}.`);
  return {
    piece: { ...piece, unit },
    // With one ring left a reading needs no name for it.
    bench: anyRing && name === undefined ? bench : { ...bench, rings: [ring] },
    ring,
    scatter: gaugeScatter(readings, ring.id, piece, bench),
    sizeKnown: true,
    said,
  };
}

/**
 * Finds piece, bench and ring.
 *
 * @param flags The flags.
 * @param anyRing True where all rings of the bench are meant unless one is
 * named.
 * @throws {CallError} If something is missing or cannot be read.
 * @throws {RecordError} If the folder cannot be used.
 */
export function radiusSetup(
  flags: Flags,
  anyRing: boolean,
): Promise<RadiusSetup> {
  return typeof flags.folder === "string"
    ? fromFolder(flags.folder, flags, anyRing)
    : fromFlags(flags);
}
