/**
 * A user's folder, read whole.
 *
 * @module
 */
import { dirname, join } from "node:path";
import type { FileAccount, LineCount, PieceFolder } from "./folder.ts";
import { KeptReadings } from "./_kept_readings.ts";
import { listReadingFiles } from "./_list_reading_files.ts";
import { PlausibilityWatch } from "./_plausibility.ts";
import type { Problem } from "./problem.ts";
import { ProblemCollector } from "./_problem_collector.ts";
import { readBytes } from "./_read_bytes.ts";
import { benchOfBytes, pieceOfBytes, type Settings } from "./_read_settings.ts";
import { RecordError } from "./record_error.ts";
import { scanText } from "./_scan_text.ts";

async function folderProblem(path: string): Promise<Problem | undefined> {
  const at = { severity: "refused", file: path } as const;
  try {
    if ((await Deno.stat(path)).isDirectory) return undefined;
    return {
      ...at,
      code: "not-a-folder",
      message: "this is a file, not a folder",
      mend: "give the folder that holds piece.json",
    };
  } catch (error) {
    const absent = error instanceof Deno.errors.NotFound ||
      error instanceof Deno.errors.NotADirectory;
    return {
      ...at,
      code: absent ? "no-folder" : "unreadable",
      message: absent
        ? "there is no such folder"
        : "the folder may not be read",
      mend: absent
        ? "check the name, or make one with “deno task new FOLDER”"
        : "check who may read it",
    };
  }
}

async function settings<T, F>(
  path: string,
  file: string,
  read: (bytes: Uint8Array, file: string) => Promise<Settings<T, F>>,
): Promise<Settings<T, F>> {
  const found = await readBytes(path, file);
  if (found.kind === "bytes") return await read(found.bytes, file);
  if (found.kind === "unreadable") return { problems: [found.problem] };
  return {
    problems: [{
      severity: "refused",
      code: "no-file",
      file,
      message: "the file is missing",
      mend:
        "write it, or make a folder that holds one with “deno task new FOLDER”",
    }],
  };
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
 *
 * Problems of one kind in one column are kept one by one up to twenty; the
 * rest of them are one problem with a count.
 *
 * @param path The folder.
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
export async function readPieceFolder(path: string): Promise<PieceFolder> {
  const summary = `Cannot use the folder ${path}`;
  const wrong = await folderProblem(path);
  if (wrong !== undefined) throw new RecordError(summary, [wrong]);
  const piece = await settings(
    join(path, "piece.json"),
    "piece.json",
    pieceOfBytes,
  );
  const benchName = piece.content?.bench ?? "bench.json";
  const benchPath = /^(?:[/\\]|[A-Za-z]:)/.test(benchName)
    ? benchName
    : join(path, benchName);
  const bench = await settings(
    benchPath,
    benchName,
    (bytes, file) =>
      benchOfBytes(
        bytes,
        file,
        (name) => readBytes(join(dirname(benchPath), name), name),
      ),
  );
  const found = [...piece.problems, ...bench.problems];
  if (piece.value === undefined || bench.value === undefined) {
    throw new RecordError(summary, found);
  }
  const problems = new ProblemCollector();
  const watch = new PlausibilityWatch(piece.value, bench.value);
  const readings = new KeptReadings();
  const files: FileAccount[] = [];
  const listed = await listReadingFiles(path);
  problems.addAll(listed.problems);
  for (const file of listed.files) {
    const read = await readBytes(join(path, file), file);
    if (read.kind === "absent") continue;
    if (read.kind === "unreadable") {
      problems.add(read.problem);
      continue;
    }
    const account = await scanText(read.bytes, {
      file,
      piece: piece.value,
      bench: bench.value,
      firstOrder: readings.length,
      sheetSession: file.replace(/^.*\//, "").replace(/\.[^.]*$/, ""),
      problems,
      visit: (reading) => {
        watch.see(reading);
        readings.add(reading);
      },
    });
    files.push(account);
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
  problems.addAll(watch.problems());
  return {
    path,
    piece: piece.value,
    bench: bench.value,
    readings: readings.list(),
    files,
    lines: { read: sum("read"), used: sum("used"), reported: sum("reported") },
    problems: [...found, ...problems.list()],
  };
}
