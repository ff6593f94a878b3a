/**
 * `deno task export [FOLDER …]`: figures, tables and results of a piece's
 * reports as files for other programs.
 *
 * @module
 */
import { basename, join, resolve } from "node:path";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { newestRecord } from "./_export_age.ts";
import { ALL_RESULTS, writeExport } from "./_export_folder.ts";
import {
  type KeptReport,
  keptReports,
  type Kind,
  KINDS,
  type PartFile,
  partFiles,
  type PartOptions,
} from "./_export_parts.ts";
import { findPieces } from "./_find_pieces.ts";
import { reportOn } from "./_report_run.ts";
import { ROOT } from "./_root.ts";
import { readFlags } from "./_read_flags.ts";
import { displayPath, EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

const USAGE =
  `deno task export [FOLDER ...] [--to FOLDER] [--only svg,png,csv,json]

Takes what the reports of each FOLDER show and writes it to
FOLDER/report/export/: every figure as SVG and as PNG, every table as CSV, and
the results of all reports with their units as one ${ALL_RESULTS}. It takes the
reports that lie in FOLDER/report (deno task report, gauge, plan, history and
focal make them); where there is none, it makes that of the session first.
Without a folder it takes an invented piece in data/.

The CSV files open in a spreadsheet by a double click. The pages in
FOLDER/report are one HTML file each and can be sent and printed as they are.
The first PNG fetches two packages (15 MB) from npm; nothing else does.

  --to FOLDER      where to write; for several pieces a folder each in it
  --only KINDS     some of svg, png, csv, json, with commas between
  --dark           figures for a dark page
  --width PIXELS   width of PNG pictures, 50 to 10000; 1440 unless told
  --decimal-comma  tables for a spreadsheet that writes 0,5 for 0.5
  --replace        write over files of your own that have the same names
  --help           this text

Exit codes: 0 all written, 1 something could not be, 2 wrong call.`;

interface Wanted extends PartOptions {
  readonly to?: string;
  readonly replace: boolean;
}

/** What the flags ask for, or what is wrong with them. */
function wantedOf(
  flags: Readonly<Record<string, string | true>>,
): Wanted | string {
  const { only, to, width } = flags;
  const words = typeof only === "string"
    ? only.toLowerCase().split(/[\s,]+/).filter((word) => word !== "")
    : [...KINDS];
  const odd = words.find((word) => !KINDS.includes(word as Kind));
  if (odd !== undefined || words.length === 0) {
    return `--only needs some of ${
      KINDS.join(", ")
    }: current value is ${only}.`;
  }
  const pixels = typeof width === "string" ? Number(width) : undefined;
  const isWidth = pixels === undefined ||
    Number.isInteger(pixels) && pixels >= 50 && pixels <= 10_000;
  if (!isWidth) {
    return `--width needs a whole number of 50 to 10000 pixels: current value is ${width}.`;
  }
  return {
    kinds: new Set(words as Kind[]),
    theme: flags.dark ? "dark" : "light",
    ...(pixels === undefined ? {} : { width: pixels }),
    decimalComma: flags["decimal-comma"] === true,
    ...(typeof to === "string" ? { to } : {}),
    replace: flags.replace === true,
  };
}

/** The reports of a piece; that of the session is made where there is none. */
async function reportsOf(folder: string): Promise<KeptReport[]> {
  const found = await keptReports(folder);
  if (found.length > 0) return found;
  await readPieceFolder(folder);
  const { run } = await reportOn(folder, { onUnchecked: complain });
  for (const { message } of run.problems) complain(message);
  return await keptReports(folder);
}

/** Says which reports are older than the readings. */
async function sayOld(
  folder: string,
  reports: readonly KeptReport[],
): Promise<void> {
  const newest = await newestRecord(folder);
  for (const { name, path } of reports) {
    const { mtime } = await Deno.stat(path);
    if (newest === undefined || mtime === null || mtime >= newest.changed) {
      continue;
    }
    complain(
      `${displayPath(folder)}: ${
        basename(newest.path)
      } was changed after the report "${name}" was made; make it again to export what it says now.`,
    );
  }
}

const several = (count: number, word: string): string =>
  `${count} ${word}${count === 1 ? "" : "s"}`;

async function exportOne(
  folder: string,
  to: string,
  wanted: Wanted,
): Promise<number> {
  const name = displayPath(folder);
  const reports = await reportsOf(folder);
  await sayOld(folder, reports);
  const whole = reports.filter(({ failed }) => !failed);
  let code: number = EXIT.ok;
  for (const { name: report, failed } of reports) {
    if (!failed) continue;
    code = EXIT.failed;
    complain(
      `${name}: nothing of the report "${report}" was exported, as a cell of it failed.`,
    );
  }
  if (whole.length === 0) return EXIT.failed;
  const files: PartFile[] = [];
  const kinds = new Set(wanted.kinds);
  for (const report of whole) {
    const made = await partFiles(report, { ...wanted, kinds });
    files.push(...made.files);
    if (made.noPictures === undefined) continue;
    // What is there already stays, and the other kinds are written.
    complain(`${name}: ${made.noPictures}`);
    code = EXIT.failed;
    kinds.delete("png");
  }
  const inTheWay = await writeExport({
    folder,
    to,
    reports: whole,
    files,
    kinds,
    replace: wanted.replace,
  });
  if (inTheWay.length > 0) {
    complain(
      `${name}: nothing was exported, as ${displayPath(to)} holds ${
        several(inTheWay.length, "file")
      } of these names that no export made, or that were changed since: ${
        inTheWay.slice(0, 5).join(", ")
      }${
        inTheWay.length > 5 ? " and more" : ""
      }. Choose another folder with --to, or write over them with --replace.`,
    );
    return EXIT.failed;
  }
  const count = (kind: Kind): number =>
    files.filter((file) => file.kind === kind).length;
  const told = [
    ...(["svg", "png"] as const).filter((kind) => kinds.has(kind))
      .map((kind) =>
        `${several(count(kind), "figure")} as ${kind.toUpperCase()}`
      ),
    ...(kinds.has("csv") ? [`${several(count("csv"), "table")} as CSV`] : []),
    `${several(whole.length, "report")} in ${ALL_RESULTS}`,
  ];
  say(`${name}: ${told.join(", ")}\nIn: ${displayPath(to)}\n`);
  return code;
}

async function main(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    to: "value",
    only: "value",
    width: "value",
    dark: "switch",
    "decimal-comma": "switch",
    replace: "switch",
    help: "switch",
  });
  if (flags.help) {
    say(USAGE);
    return EXIT.ok;
  }
  const wanted = problem ?? wantedOf(flags);
  if (typeof wanted === "string") {
    complain(wrongCall(wanted, USAGE));
    return EXIT.usage;
  }
  const given = rest.length > 0 ? rest : [join(ROOT, "data/metric-250")];
  const groups = await Promise.all(given.map(findPieces));
  const areMany = groups.flatMap(({ pieces }) => pieces).length > 1;
  let worst: number = EXIT.ok;
  for (const { pieces, hint } of groups) {
    for (const piece of pieces) {
      const to = wanted.to === undefined
        ? join(piece, "report", "export")
        : areMany
        ? join(wanted.to, basename(resolve(piece)))
        : wanted.to;
      const code = await exportOne(piece, to, wanted).catch((error) => {
        complain(`${displayPath(piece)}: nothing was exported.\n`);
        complain(plainWords(error));
        if (hint !== undefined) complain(`\n${hint}`);
        return EXIT.failed;
      });
      worst = Math.max(worst, code);
    }
  }
  return worst;
}

if (import.meta.main) {
  try {
    Deno.exit(await main(Deno.args));
  } catch (error) {
    complain(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
