/**
 * `deno task new FOLDER`: a folder for a new piece, that passes the check.
 *
 * @module
 */
import { basename, resolve } from "node:path";
import { describeProblems } from "../records/describe_problem.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { parseLength } from "../units/parse_length.ts";
import { newFolderFiles, type NewPiece, refusalsOf } from "./_new_folder.ts";
import {
  answer,
  type AnswerSource,
  asBench,
  asLength,
  asRatio,
  asRatioTolerance,
  asRingRadius,
  asText,
  asTolerance,
  asWord,
  QuestionError,
} from "./_new_questions.ts";
import { FLAGS, USAGE } from "./_new_usage.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, shellWord, wrongCall } from "./_task_words.ts";
import { existing, fileTrouble, writeNew } from "./_new_files.ts";
import { complain, say } from "./_terminal.ts";

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
    const good = answer(
      source,
      "tolerance",
      "How far from it is still good, either way, such as 0.05?",
      asRatioTolerance,
      false,
    );
    return {
      focal_ratio: ratio,
      ...(good === undefined ? {} : { tolerance: good }),
    };
  }
  const length = answer(
    source,
    way,
    way === "radius" ? "Radius of curvature" : "Focal length",
    asLength(unit, "above 0"),
    true,
  );
  const good = answer(
    source,
    "tolerance",
    "How far from it is still good, either way?",
    asTolerance(unit),
    false,
  );
  const tolerance = good === undefined ? {} : { tolerance: good };
  return way === "radius"
    ? { radius: length, ...tolerance }
    : { focal_length: length, ...tolerance };
}

/** Refuses what was given and has no place, rather than lose it. */
function refuseUnused({ flags, used }: AnswerSource): void {
  const unused = Object.keys(flags).find((flag) => !used?.has(flag));
  if (unused === undefined) return;
  throw new QuestionError(
    unused === "tolerance"
      ? "--tolerance says how far from the target is still good, and no target is given: add --radius, --focal-length or --focal-ratio."
      : `--${unused} has no place beside --bench: ring and gauge stand in that bench file.`,
  );
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
    "A bench file shared with other pieces, such as ../bench.json",
    source.ask === undefined ? asText : asBench(folder),
    false,
  );
  const ring = (flag: string, question: string, read = length) =>
    bench === undefined
      ? answer(source, flag, question, read, false)
      : undefined;
  const name = answer(source, "name", "Name of the piece", asText, false) ??
    (basename(resolve(folder)) || "piece");
  const form = answer(
    source,
    "form",
    "Does the surface curve concave or convex?",
    asWord("concave", "convex"),
    true,
  ) as "concave" | "convex";
  const diameter = answer(source, "diameter", "Diameter", length, true)!;
  return {
    name,
    form,
    diameter,
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
    sphericity: answer(
      source,
      "sphericity",
      'Largest good difference of sag between zones, such as "2 µm"',
      asTolerance(unit),
      false,
    ),
    bench,
    ringRadius: ring(
      "ring-radius",
      "Radius of the circle through the ring's ball centres, half its diameter",
      asRingRadius(unit, diameter),
    ),
    ringUncertainty: ring(
      "ring-uncertainty",
      "Standard uncertainty of that radius",
    ),
    foot: bench === undefined
      ? answer(
        source,
        "foot",
        "At the edge, does one foot point out or do two: foot out or feet out?",
        asWord("foot out", "feet out"),
        false,
      ) as NewPiece["foot"]
      : undefined,
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
    say(USAGE);
    return EXIT.ok;
  }
  if (problem !== undefined || rest.length !== 1) {
    const said = problem?.includes("--ring-diameter:")
      ? "There is no flag --ring-diameter: --ring-radius takes half the diameter of the circle through the ball centres."
      : problem;
    complain(wrongCall(said ?? "Name one folder to make.", USAGE));
    return EXIT.usage;
  }
  const [folder] = rest;
  try {
    const known = ["piece.json", "bench.json", "readings.csv", "worklog.csv"];
    const there = await existing(folder, known);
    if (there.length > 0) {
      complain(
        `${folder} holds ${
          there.join(", ")
        } already; nothing was overwritten. Name a new folder.`,
      );
      return EXIT.failed;
    }
    const source = { flags, used: new Set<string>(), ...(ask ? { ask } : {}) };
    const piece = pieceOf(source, folder);
    refuseUnused(source);
    const shared = piece.bench === undefined
      ? undefined
      : asBench(folder)(piece.bench);
    if (shared !== undefined && "fault" in shared) {
      throw new QuestionError(
        `--bench “${piece.bench}” cannot be used: ${shared.fault}.`,
      );
    }
    const diameter = parseLength(piece.diameter, { decimal: "." });
    const halfDiameter = diameter.kind === "length" ? diameter.value / 2 : 0;
    const files = await newFolderFiles(piece, { halfDiameter });
    const refused = await refusalsOf(files);
    if (refused.length > 0) {
      complain(
        `Nothing was made, since the answers do not go together.\n${
          describeProblems(refused)
        }`,
      );
      return EXIT.usage;
    }
    await writeNew(folder, files);
    const { problems } = await readPieceFolder(folder);
    say(`Made ${folder} for ${piece.name}.`);
    const warnings = problems.filter((one) => one.severity !== "note");
    if (warnings.length > 0) say(describeProblems(warnings));
    say(
      `Next: write readings into readings.csv, or copy sheet-template.csv into sheets/ for each session; then deno task check ${
        shellWord(folder)
      }`,
    );
    return EXIT.ok;
  } catch (error) {
    if (error instanceof QuestionError) {
      complain(wrongCall(error.message, USAGE));
      return EXIT.usage;
    }
    complain(fileTrouble(error, folder));
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
