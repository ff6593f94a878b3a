/**
 * `deno task new FOLDER`: a folder for a new piece, that passes the check.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { describeProblems } from "../records/describe_problem.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { parseLength } from "../units/parse_length.ts";
import { newFolderFiles, type NewPiece } from "./_new_folder.ts";
import {
  answer,
  type AnswerSource,
  asLength,
  asRatio,
  asText,
  asWord,
  QuestionError,
} from "./_new_questions.ts";
import { EXIT, plainWords, readFlags } from "./_task_words.ts";

const USAGE =
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
  --ring-radius LENGTH    radius of the circle through the ball centres
  --ball-diameter LENGTH  diameter of the balls
  --display-step LENGTH   what the gauge's display steps by
  --counts-up-on concave|convex   the surface on which the gauge counts up
  --bench PATH            a bench file shared by several pieces, seen from FOLDER
  --help                  this text

Exit codes: 0 made, 1 not made, 2 wrong call.`;

const FLAGS = {
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
  "ring-radius": "value",
  "ball-diameter": "value",
  "display-step": "value",
  "counts-up-on": "value",
  bench: "value",
  help: "switch",
  h: "switch",
} as const;

const TARGETS = ["radius", "focal-length", "focal-ratio"] as const;

/** The target from its flag, or asked for in the way the user prefers. */
function targetOf(
  source: AnswerSource,
  unit: "mm" | "in",
): NewPiece["target"] {
  const given = TARGETS.filter((way) => source.flags[way] !== undefined);
  if (given.length > 1) {
    throw new QuestionError(
      `Give one of --${given.join(" and --")}, not several.`,
    );
  }
  const way = given[0] ?? answer(
    source,
    "target",
    "Is the target a radius, a focal-length or a focal-ratio?",
    asWord(...TARGETS),
    false,
  );
  if (way === undefined) return undefined;
  if (way === "focal-ratio") {
    const ratio = answer(source, way, "Focal ratio", asRatio, true);
    return { focal_ratio: ratio };
  }
  const length = answer(
    source,
    way,
    way === "radius" ? "Radius of curvature" : "Focal length",
    asLength(unit, "above 0"),
    true,
  );
  return way === "radius" ? { radius: length } : { focal_length: length };
}

function pieceOf(source: AnswerSource, folder: string): NewPiece {
  const unit = answer(
    source,
    "unit",
    "Unit of the answers, mm or in",
    asWord("mm", "in"),
    false,
  ) ?? "mm";
  const length = asLength(unit, "above 0");
  const bench = answer(
    source,
    "bench",
    "A bench file shared with other pieces",
    asText,
    false,
  );
  const ring = (flag: string, question: string) =>
    bench === undefined
      ? answer(source, flag, question, length, false)
      : undefined;
  return {
    name: answer(source, "name", "Name of the piece", asText, false) ??
      (basename(resolve(folder)) || "piece"),
    form: answer(
      source,
      "form",
      "Does the surface curve concave or convex?",
      asWord("concave", "convex"),
      true,
    ) as "concave" | "convex",
    diameter: answer(source, "diameter", "Diameter", length, true) as string,
    unit,
    bevel: answer(
      source,
      "bevel",
      "Width of the bevel",
      asLength(unit, "0 or more"),
      false,
    ),
    thickness: answer(source, "thickness", "Edge thickness", length, false),
    glass: answer(source, "glass", "Glass", asText, false),
    target: targetOf(source, unit),
    bench,
    ringRadius: ring(
      "ring-radius",
      "Radius of the circle through the ring's ball centres",
    ),
    ballDiameter: ring("ball-diameter", "Diameter of the ring's balls"),
    displayStep: ring("display-step", "Step of the gauge's display"),
    countsUpOn: bench === undefined
      ? answer(
        source,
        "counts-up-on",
        "On which surface does the gauge count up, concave or convex?",
        asWord("concave", "convex"),
        false,
      )
      : undefined,
  };
}

/** Writes the files; takes back what it made when it cannot make all. */
async function write(
  folder: string,
  files: ReadonlyMap<string, string>,
): Promise<void> {
  const made: string[] = [];
  try {
    for (const [name, text] of files) {
      const path = join(folder, name);
      await Deno.mkdir(dirname(path), { recursive: true });
      await Deno.writeTextFile(path, text, { createNew: true });
      made.push(path);
    }
    await Deno.mkdir(join(folder, "sheets"), { recursive: true });
  } catch (error) {
    for (const path of made) await Deno.remove(path).catch(() => {});
    throw error;
  }
}

async function existing(
  folder: string,
  names: Iterable<string>,
): Promise<string[]> {
  const found: string[] = [];
  for (const name of names) {
    try {
      await Deno.lstat(join(folder, name));
      found.push(name);
    } catch {
      // Not there, as it should be; anything else shows when it is written.
    }
  }
  return found;
}

function fileTrouble(error: unknown, folder: string): string | undefined {
  if (error instanceof Deno.errors.AlreadyExists) {
    return `${folder} holds files already; nothing was overwritten. Name a new folder.`;
  }
  if (
    error instanceof Deno.errors.PermissionDenied ||
    error instanceof Deno.errors.NotCapable
  ) {
    return `${folder} may not be written to. Name a folder of your own.`;
  }
  if (
    error instanceof Deno.errors.NotADirectory ||
    error instanceof Deno.errors.NotFound
  ) {
    return `${folder} cannot be a folder: a part of its path is a file.`;
  }
  return undefined;
}

/**
 * Makes a new piece's folder.
 *
 * @param args The command line.
 * @param ask Asks at the terminal; without it only flags are looked at.
 * @returns The exit code.
 */
export async function newFolder(
  args: readonly string[],
  ask?: (question: string) => string | null,
): Promise<number> {
  const { flags, rest, problem } = readFlags(args, FLAGS);
  if (flags.help || flags.h) {
    console.log(USAGE);
    return EXIT.ok;
  }
  if (problem !== undefined || rest.length !== 1) {
    console.error(`${problem ?? "Name one folder to make."}\n\n${USAGE}`);
    return EXIT.usage;
  }
  const [folder] = rest;
  try {
    const known = ["piece.json", "bench.json", "readings.csv", "worklog.csv"];
    const there = await existing(folder, known);
    if (there.length > 0) {
      console.error(
        `${folder} holds ${
          there.join(", ")
        } already; nothing was overwritten. Name a new folder.`,
      );
      return EXIT.failed;
    }
    const piece = pieceOf({ flags, ...(ask ? { ask } : {}) }, folder);
    const diameter = parseLength(piece.diameter, { decimal: "." });
    const halfDiameter = diameter.kind === "length" ? diameter.value / 2 : 0;
    await write(folder, await newFolderFiles(piece, { halfDiameter }));
    const { problems } = await readPieceFolder(folder);
    console.log(`Made ${folder} for ${piece.name}.`);
    const warnings = problems.filter((one) => one.severity !== "note");
    if (warnings.length > 0) console.log(describeProblems(warnings));
    console.log(
      `Next: write readings into readings.csv, or copy sheet-template.csv into sheets/ for each session; then deno task check ${folder}`,
    );
    return EXIT.ok;
  } catch (error) {
    if (error instanceof QuestionError) {
      console.error(`${error.message}\n\n${USAGE}`);
      return EXIT.usage;
    }
    const words = fileTrouble(error, folder);
    console.error(words ?? plainWords(error));
    return EXIT.failed;
  }
}

if (import.meta.main) {
  const terminal = Deno.stdin.isTerminal();
  Deno.exit(
    await newFolder(
      Deno.args,
      terminal ? (question) => prompt(question) : undefined,
    ),
  );
}
