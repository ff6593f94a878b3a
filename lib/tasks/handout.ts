/**
 * `deno task handout [FOLDER]`: a sheet for a class, and bench cards.
 *
 * @module
 */
import { join } from "node:path";
import { expectWritable } from "../files/expect_writable.ts";
import { writeAllAtomically } from "../files/write_atomically.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { millimetres } from "../units/length.ts";
import { parseLength } from "../units/parse_length.ts";
import { BENCH_CARDS, HANDOUT, handoutFiles } from "./_handout_files.ts";
import { strangersAmong } from "./_handout_owner.ts";
import { ROOT } from "./_root.ts";
import { readFlags } from "./_read_flags.ts";
import { displayPath, EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

const USAGE = `deno task handout [FOLDER] [--radius LENGTH] [--out FOLDER]

Reads FOLDER (piece.json and bench.json) and writes two pages to print, on A4 or
Letter, into FOLDER/report/:
${HANDOUT}      for a class: formulas, rules of reading and the rings at
                  hand, on one sheet
${BENCH_CARDS}  for the wall: radius against sag for each ring, a row for
                  each display step, in mm and inches; one sheet for each ring

Every number is worked out from piece.json and bench.json. Without a folder it
is made for an invented piece in data/.

  --radius LENGTH  the radius to make them for, such as "2400 mm"; the target
                   of piece.json unless told
  --out FOLDER     where to write; FOLDER/report unless told
  --help           this text

Exit codes: 0 written, 1 could not be made or written, 2 wrong call.`;

const FLAGS = {
  radius: "value",
  out: "value",
  help: "switch",
  h: "switch",
} as const;

/** Reads the pieces of a folder and writes the pages. */
async function make(
  folder: string,
  out: string,
  radius: number | undefined,
): Promise<number> {
  const { piece, bench, problems } = await readPieceFolder(folder);
  const { files, said } = handoutFiles(
    piece,
    bench,
    radius === undefined ? undefined : millimetres(radius),
  );
  for (const { code, message } of problems) {
    if (code === "ring-not-measured") complain(`warning: ${message}.`);
  }
  await expectWritable(out, "the handout");
  const strangers = await strangersAmong(out, files.keys());
  if (strangers.length > 0) {
    complain(
      `${
        strangers.map((name) => displayPath(join(out, name))).join(" and ")
      } was not made by this task and is left as it is: nothing was written. Rename it, or name another folder with --out.`,
    );
    return EXIT.failed;
  }
  await writeAllAtomically(
    [...files].map(([name, content]) => ({ path: join(out, name), content })),
  );
  for (const name of files.keys()) say(`Page: ${displayPath(join(out, name))}`);
  said.forEach(say);
  return EXIT.ok;
}

/**
 * Writes handout and bench cards of a folder.
 *
 * @param args The command line.
 * @returns The exit code.
 */
export async function handout(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, FLAGS);
  if (flags.help || flags.h) {
    say(USAGE);
    return EXIT.ok;
  }
  const typed = typeof flags.radius === "string" ? flags.radius : undefined;
  const read = typed === undefined
    ? undefined
    : parseLength(typed, { decimal: "." });
  const radius = read?.kind === "length" && read.value > 0 && !read.unitAssumed
    ? read.value
    : undefined;
  const wrong = problem ??
    (rest.length > 1
      ? `One folder at a time: current value is ${rest.join(", ")}.`
      : rest[0] === "" || flags.out === ""
      ? "A folder's name is empty."
      : typed !== undefined && radius === undefined
      ? `--radius needs a length above 0 with its unit, such as "2400 mm": current value is ${typed}.`
      : undefined);
  if (wrong !== undefined) {
    complain(wrongCall(wrong, USAGE));
    return EXIT.usage;
  }
  const folder = rest[0] ?? join(ROOT, "data", "gauge-study");
  const out = typeof flags.out === "string"
    ? flags.out
    : join(folder, "report");
  try {
    return await make(folder, out, radius);
  } catch (error) {
    complain(plainWords(error));
    return EXIT.failed;
  }
}

if (import.meta.main) Deno.exit(await handout(Deno.args));
