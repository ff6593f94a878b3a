/**
 * `deno task check FOLDER …`: what the readers make of a folder, and nothing
 * else.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import type { LineCount, PieceFolder } from "../records/folder.ts";
import { groupProblems } from "../records/group_problems.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { Millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { describeProblems } from "../records/describe_problem.ts";
import type { Problem } from "../records/problem.ts";
import { readFolderWorkLog } from "../records/read_folder_work_log.ts";
import {
  type ReadingProgress,
  readPieceFolder,
} from "../records/read_piece_folder.ts";
import { RecordError } from "../records/record_error.ts";
import { unknownSessions } from "./_unknown_sessions.ts";
import { findPieces, folderHint } from "./_find_pieces.ts";
import { readingWords } from "../narrative/reading_words.ts";
import { onInterruptSignal } from "../protocol/system.ts";
import { startProgress } from "./_task_progress.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

const USAGE = `deno task check FOLDER ... [--json]

Reads each FOLDER (piece.json, bench.json, readings.csv, sheets/, worklog.csv)
and says everything that is wrong with it, at once; of a folder of pieces, each
of them. Nothing is run, and nothing is written.

  --json   one JSON document in place of text, for scripts
  --help   this text

Exit codes: 0 usable (there may be warnings), 1 something was refused,
2 wrong call.`;

interface Verdict {
  readonly folder: string;
  readonly usable: boolean;
  readonly files: readonly (LineCount & { readonly file: string })[];
  readonly problems: readonly Problem[];
  readonly found?: PieceFolder;
}

/** The work log of a folder; its lines are counted where there is one. */
async function workLogOf(found: PieceFolder) {
  const { path, piece } = found;
  const { lines, problems, entries } = await readFolderWorkLog(
    path,
    piece.unit,
  );
  const isRead = lines.read > 0;
  return {
    lines: isRead ? [{ file: "worklog.csv", ...lines }] : [],
    problems: [...problems, ...unknownSessions(found, entries)],
  };
}

async function judge(
  path: string,
  onProgress: (progress: ReadingProgress) => void,
): Promise<Verdict> {
  try {
    const found = await readPieceFolder(path, { onProgress });
    const log = await workLogOf(found);
    const problems = [...found.problems, ...log.problems];
    return {
      folder: path,
      usable: problems.every((one) => one.severity !== "refused"),
      files: [...found.files, ...log.lines],
      problems,
      found,
    };
  } catch (error) {
    if (!(error instanceof RecordError)) throw error;
    return {
      folder: path,
      usable: false,
      files: [],
      problems: error.problems,
    };
  }
}

const plural = (count: number, one: string) =>
  `${count} ${one}${count === 1 ? "" : "s"}`;

/** How many things are wrong, and how many lines that concerns. */
function count(problems: readonly Problem[], severity: string): number {
  return problems.filter((one) => one.severity === severity)
    .reduce((total, one) => total + (one.count ?? 1), 0);
}

/** How many different warnings there are, however many lines each is for. */
function warnings(problems: readonly Problem[]): string {
  const found = groupProblems(
    problems.filter(({ severity }) => severity === "warning"),
  ).length;
  return found === 0 ? "" : plural(found, "warning");
}

function lengthSaid(length: Millimetres, unit: LengthUnit): string {
  const amount = amountIn(length, unit);
  return `${Number(amount.toFixed(unit === "mm" ? 1 : 3))} ${unit}`;
}

function headOf({ piece, bench }: PieceFolder): string[] {
  const { unit, target } = piece;
  const rings = bench.rings.map((ring) => ring.id).join(", ");
  return [
    `piece: ${piece.name}, ${piece.form}, ${
      lengthSaid(piece.diameter, unit)
    } across, ${
      target === undefined
        ? "no target"
        : `target R ${lengthSaid(target.radius, unit)}`
    }`,
    `bench: ${bench.gauge.id}; ${
      bench.rings.length === 1 ? ringName(rings) : `rings ${rings}`
    }`,
  ];
}

/** How many lines of a file its owner has marked as withdrawn. */
function withdrawnIn(file: string, problems: readonly Problem[]): number {
  return count(
    problems.filter((one) => one.code === "withdrawn" && one.file === file),
    "note",
  );
}

/** What was refused: lines of readings and work, and whatever has no lines. */
function refusals({ files, problems }: Verdict): number {
  const lines = files.reduce(
    (total, { file, reported }) =>
      total + reported - withdrawnIn(file, problems),
    0,
  );
  const told = new Set(
    files.filter(({ reported }) => reported > 0).map(({ file }) => file),
  );
  return lines +
    count(problems.filter(({ file }) => !told.has(file)), "refused");
}

/** The last line: whether the folder can be used, and what is in the way. */
function judgement(verdict: Verdict): string {
  const { folder, found, usable, problems } = verdict;
  const refused = refusals(verdict);
  const warned = warnings(problems);
  const rest = warned === "" ? "" : `, ${warned}`;
  if (found === undefined) {
    return `${folder} cannot be used: ${
      plural(refused, "thing")
    } to mend${rest}.`;
  }
  const onWork = found.readings.some(({ on }) => on === "work");
  if (!onWork) {
    const all = found.lines.reported > 0
      ? `no reading is left (${found.lines.reported} of ${found.lines.read} lines left out)`
      : "no reading of the work yet";
    return `${folder}: ${all}, so there is nothing to report on${rest}.`;
  }
  return usable
    ? `${folder} can be used${rest}.`
    : `${folder}: ${
      plural(refused, "thing")
    } refused${rest}; the rest can be used.`;
}

function wordsOf(verdict: Verdict): string {
  const { found, files, problems } = verdict;
  return [
    ...(found === undefined ? [] : headOf(found)),
    ...files.map(({ file, read, used, reported }) => {
      const withdrawn = withdrawnIn(file, problems);
      const marked = withdrawn === 0 ? "" : `, ${withdrawn} withdrawn`;
      return `${file}: ${read} read, ${used} used, ${
        reported - withdrawn
      } refused${marked}`;
    }),
    ...(problems.length > 0 ? [describeProblems(problems)] : []),
    judgement(verdict),
  ].join("\n");
}

/**
 * Checks folders and says what is wrong with them.
 *
 * @param args The command line.
 * @returns The exit code.
 */
export async function check(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    json: "switch",
    help: "switch",
    h: "switch",
  });
  if (flags.help || flags.h) {
    say(USAGE);
    return EXIT.ok;
  }
  if (problem !== undefined || rest.length === 0) {
    complain(wrongCall(problem ?? "Name the folder to check.", USAGE));
    return EXIT.usage;
  }
  const progress = startProgress();
  const off = onInterruptSignal(() => {
    progress.end();
    Deno.exit(EXIT.stopped);
  });
  // Words are kept and not readings, so that many folders need no more memory.
  const verdicts: (Omit<Verdict, "found"> & { readonly words: string })[] = [];
  const groups = await Promise.all(rest.map(findPieces));
  const paths = groups.flatMap(({ pieces }) => pieces);
  for (const [index, path] of paths.entries()) {
    if (paths.length > 1) {
      progress.part(`folder ${index + 1} of ${paths.length}, ${path}`);
    }
    const { found, ...verdict } = await judge(
      path,
      (told) => progress.tell(readingWords(told)),
    );
    verdicts.push({ ...verdict, words: wordsOf({ ...verdict, found }) });
  }
  progress.end();
  off();
  say(
    flags.json
      ? JSON.stringify(
        verdicts.map(({ folder, usable, files, problems }) => ({
          folder,
          usable,
          files,
          problems,
        })),
        null,
        2,
      )
      : verdicts.map(({ words }) => words).join("\n\n"),
  );
  for (const { folder, files, usable } of flags.json ? [] : verdicts) {
    const hint = usable || files.length > 0
      ? undefined
      : await folderHint(folder);
    if (hint !== undefined) say(`\n${hint}`);
  }
  return verdicts.every((one) => one.usable) ? EXIT.ok : EXIT.failed;
}

if (import.meta.main) {
  try {
    Deno.exit(await check(Deno.args));
  } catch (error) {
    complain(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
