/**
 * A user's folder, read whole.
 *
 * @module
 */
import { join } from "node:path";
import { datedByLog, datesOfLog, withDates } from "./_date_by_work_log.ts";
import type { FileAccount, LineCount, PieceFolder } from "./folder.ts";
import { KeptReadings } from "./_kept_readings.ts";
import { listReadingFiles } from "./_list_reading_files.ts";
import { PlausibilityWatch } from "./_plausibility.ts";
import { ProblemCollector } from "./_problem_collector.ts";
import { readFolderWorkLog } from "./read_folder_work_log.ts";
import { readPieceSettings } from "./read_piece_settings.ts";
import { scanFile } from "./_scan_file.ts";

/** How far the reading of a long file is. */
export interface ReadingProgress {
  /** The file. */
  readonly file: string;
  /** How much of it has been read, 0 to 1. */
  readonly part: number;
  /** Readings taken so far, all files together. */
  readonly readings: number;
}

/** How a folder is read. */
export interface ReadOptions {
  /** Told now and then how far a file above 4 MB has been read. */
  readonly onProgress?: (progress: ReadingProgress) => void;
}

/**
 * Reads a folder: the piece, the bench and every reading.
 *
 * `piece.json` says what is being made and may name a shared bench file;
 * without one `bench.json` beside it is read. Readings come from
 * `readings.csv` and from every bench sheet or cable log under `sheets/`.
 * Nothing is dropped: every line of readings becomes a reading or is reported
 * with its reason, and the user's files are never written to. A line with a
 * mark in its column `withdrawn` (an x, a reason) is reported and left out.
 * Sessions without a date get that of the work before them where `worklog.csv`
 * dates every one of them, so that the last session is the last in time.
 *
 * Problems of one kind in one column are kept one by one up to twenty; the
 * rest of them are one problem with a count.
 *
 * Of more than 20,000 readings the list is kept in columns, about 40 bytes a
 * reading, and makes its items when they are looked at. A file above 4 MB is
 * read block by block, unless it holds quotes or is not plain UTF-8; one above
 * 512 MB, about ten million readings, is refused.
 *
 * @param path The folder.
 * @param options Who is told how far the reading is.
 * @returns The readings, the count of lines, and everything there is to say.
 * @throws {RecordError} If the folder, the piece or the bench cannot be used;
 * it carries every problem found in both files.
 *
 * @example
 * ```ts
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * await Deno.writeTextFile(
 *   `${path}/piece.json`,
 *   '{ "name": "blank 7", "form": "concave", "diameter": "210 mm", "bevel": "1.5 mm" }',
 * );
 * await Deno.writeTextFile(
 *   `${path}/bench.json`,
 *   '{ "gauge": { "unit": "mm" }, "rings": [{ "id": "A", "radius": "60 mm", "ball_radius": "3 mm" }] }',
 * );
 * await Deno.writeTextFile(
 *   `${path}/readings.csv`,
 *   "session,zeroing,zone,reading\nS1,1,centre,0.715\nS1,1,edge,0.712 mm\n",
 * );
 * const { readings, lines } = await readPieceFolder(path);
 * equal(readings[0].sag, 0.715);
 * equal(lines.used, 2);
 * await Deno.remove(path, { recursive: true });
 * ```
 */
export async function readPieceFolder(
  path: string,
  options: ReadOptions = {},
): Promise<PieceFolder> {
  const { onProgress } = options;
  const { piece, bench, problems: found } = await readPieceSettings(path);
  const problems = new ProblemCollector();
  const watch = new PlausibilityWatch(piece, bench);
  const readings = new KeptReadings();
  const files: FileAccount[] = [];
  const listed = await listReadingFiles(path);
  problems.addAll(listed.problems);
  for (const file of listed.files) {
    const account = await scanFile(join(path, file), {
      file,
      piece,
      bench,
      firstOrder: readings.length,
      sheetSession: file.replace(/^.*\//, "").replace(/\.[^.]*$/, ""),
      problems,
      visit: (reading) => {
        watch.see(reading);
        readings.add(reading);
      },
    }, (bytes, size) => {
      onProgress?.({ file, part: bytes / size, readings: readings.length });
    });
    if (account !== undefined) files.push(account);
  }
  const sum = (part: keyof LineCount) =>
    files.reduce((total, account) => total + account[part], 0);
  if (sum("read") === 0) {
    problems.add({
      severity: "note",
      code: "no-readings",
      file: path,
      message: "the folder holds no readings yet",
      mend: "write them into readings.csv, or a bench sheet under sheets/",
    });
  }
  const undated = watch.undated();
  const dates = undated.length === 0
    ? new Map<string, string>()
    : datesOfLog(undated, (await readFolderWorkLog(path, piece.unit)).entries);
  watch.date(dates);
  problems.addAll(watch.problems());
  problems.addAll(datedByLog(dates));
  return {
    path,
    piece,
    bench,
    readings: withDates(readings.list(), dates),
    files,
    lines: { read: sum("read"), used: sum("used"), reported: sum("reported") },
    problems: [...found, ...problems.list()],
  };
}
