/**
 * Readings of one text, visited one by one.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import type { FileAccount } from "./folder.ts";
import type { Piece } from "./piece.ts";
import { PlausibilityWatch } from "./_plausibility.ts";
import type { Problem } from "./problem.ts";
import { ProblemCollector } from "./_problem_collector.ts";
import type { Reading } from "./reading.ts";
import { scanText } from "./_scan_text.ts";

/** What a text of readings is read against. */
export interface ReadingsContext {
  /** The file's name, for messages. */
  readonly file: string;
  /** The piece that was measured. */
  readonly piece: Piece;
  /** The bench it was measured on. */
  readonly bench: Bench;
  /** Session of a bench sheet that names none; the file's name unless given. */
  readonly session?: string;
  /** Running number of the first reading; 0 unless given. */
  readonly firstOrder?: number;
}

/** What became of a text of readings. */
export interface ReadingsScan {
  /** How many lines were read, used and reported. */
  readonly account: FileAccount;
  /** Everything the reader has to say. */
  readonly problems: readonly Problem[];
}

/**
 * Reads a tidy file, a bench sheet or a cable's log, one reading at a time.
 *
 * The text is parsed in slices and no list of readings is kept, so that a
 * million lines need no more memory than their text. Every line is used or
 * reported: `account.read = account.used + account.reported`.
 *
 * @param content Text, or the bytes of a file in UTF-8, UTF-16 or
 * Windows-1252.
 * @param context Piece, bench and names.
 * @param visit Called with each reading in the order of the lines.
 * @returns The count of lines and everything there is to say.
 *
 * @example
 * ```ts
 * import { scanReadings } from "sagbook/records/scan_readings.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const piece = {
 *   name: "blank 7",
 *   form: "concave",
 *   diameter: mm(210),
 *   bevel: mm(1.5),
 *   margin: mm(0.5),
 *   unit: "mm",
 *   invented: true,
 * } as const;
 * const bench = {
 *   gauge: {
 *     id: "gauge",
 *     shows: { kind: "sag" },
 *     countsUpOn: "declared surface",
 *     unit: "mm",
 *     steps: { mm: mm(0.001) },
 *     scaleUncertainty: 0,
 *   },
 *   rings: [{
 *     id: "A",
 *     shape: {
 *       kind: "balls",
 *       circleRadius: mm(60),
 *       ballRadius: mm(3),
 *       probeOffset: mm(0),
 *     },
 *     radiusUncertainty: mm(0.02),
 *     radiusUncertaintyAssumed: false,
 *     ballRadiusUncertainty: mm(0.005),
 *     expansion: 11.5e-6,
 *     foot: { kind: "unknown" },
 *   }],
 * } as const;
 * const sags: number[] = [];
 * const { account } = await scanReadings(
 *   "session;zeroing;zone;reading\nS1;1;centre;0,715 mm\n",
 *   { file: "readings.csv", piece, bench },
 *   (reading) => sags.push(reading.sag),
 * );
 * deepEqual(sags, [0.715]);
 * equal(account.read, account.used + account.reported);
 * ```
 */
export async function scanReadings(
  content: string | Uint8Array,
  context: ReadingsContext,
  visit: (reading: Reading) => void,
): Promise<ReadingsScan> {
  const { file, piece, bench, session, firstOrder = 0 } = context;
  const problems = new ProblemCollector();
  const watch = new PlausibilityWatch(piece, bench);
  const account = await scanText(content, {
    file,
    piece,
    bench,
    firstOrder,
    sheetSession: session ??
      file.replace(/^.*[/\\]/, "").replace(/\.[^.]*$/, ""),
    problems,
    visit: (reading) => {
      watch.see(reading);
      visit(reading);
    },
  });
  problems.addAll(watch.problems());
  return { account, problems: problems.list() };
}
