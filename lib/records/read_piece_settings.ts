/**
 * What a folder says of the piece and the bench, without its readings.
 *
 * @module
 */
import { join } from "node:path";
import { namedPath } from "../files/named_path.ts";
import type { Bench } from "./bench.ts";
import type { Piece } from "./piece.ts";
import type { Problem } from "./problem.ts";
import { readBytes } from "./_read_bytes.ts";
import { benchOfBytes, pieceOfBytes, type Settings } from "./_read_settings.ts";
import { RecordError } from "./record_error.ts";

/** The piece and the bench of a folder. */
export interface PieceSettings {
  /** The piece. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** What there is to say of the two files. */
  readonly problems: readonly Problem[];
}

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
 * Reads the piece and the bench of a folder, and none of its readings.
 *
 * It refuses what {@linkcode readPieceFolder} refuses, at once however long the
 * files of readings are.
 *
 * @param path The folder.
 * @returns The piece, the bench, and what there is to say of their files.
 * @throws {RecordError} If the folder, the piece or the bench cannot be used;
 * it carries every problem found in both files.
 *
 * @example
 * ```ts
 * import { readPieceSettings } from "sagbook/records/read_piece_settings.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, bench } = await readPieceSettings("data/metric-250");
 * equal(piece.name, "disc 250, f/6");
 * equal(bench.rings.length, 1);
 * ```
 */
export async function readPieceSettings(path: string): Promise<PieceSettings> {
  const summary = `Cannot use the folder ${path}`;
  const wrong = await folderProblem(path);
  if (wrong !== undefined) throw new RecordError(summary, [wrong]);
  const piece = await settings(
    join(path, "piece.json"),
    "piece.json",
    pieceOfBytes,
  );
  const benchName = piece.content?.bench ?? piece.rest?.bench ?? "bench.json";
  const benchPath = namedPath(join(path, "piece.json"), benchName);
  const bench = await settings(
    benchPath,
    benchName,
    (bytes, file) =>
      benchOfBytes(
        bytes,
        file,
        (name) => readBytes(namedPath(benchPath, name), name),
      ),
  );
  // A piece.json that is no JSON may name a bench that lies elsewhere.
  const nameUnknown = (piece.content ?? piece.rest) === undefined &&
    piece.problems.some(({ code }) => code !== "no-file");
  const found = [
    ...piece.problems,
    ...bench.problems.filter(({ code }) => code !== "no-file" || !nameUnknown),
  ];
  if (piece.value === undefined || bench.value === undefined) {
    throw new RecordError(summary, found);
  }
  return { piece: piece.value, bench: bench.value, problems: found };
}
