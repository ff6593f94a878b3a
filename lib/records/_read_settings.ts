/**
 * `piece.json` and `bench.json` against their schemas, loaded when needed.
 *
 * @module
 */
import type { Bench } from "./bench.ts";
import type { BenchFile } from "./bench_file.ts";
import { benchOfFile } from "./_bench_of_file.ts";
import { FileLengths } from "./_file_lengths.ts";
import { readJsonFile } from "./_json_file.ts";
import type { SchemaNode } from "./_schema_words.ts";
import { pieceOfFile } from "./_piece_of_file.ts";
import type { Piece } from "./piece.ts";
import type { PieceFile } from "./piece_file.ts";
import type { Problem } from "./problem.ts";

/** A settings file, read: what it means, what it says, and what is wrong. */
export interface Settings<T, F> {
  readonly value?: T;
  readonly content?: F;
  readonly problems: readonly Problem[];
}

const PIECE_STAND_IN: PieceFile = {
  name: "?",
  form: "concave",
  diameter: "1 m",
};
const BENCH_STAND_IN: BenchFile = {
  gauge: {},
  rings: [{ id: "?", radius: "1 mm", ball_radius: "0 mm" }],
};
const isNoNote = (problem: Problem) => problem.severity !== "note";

/** Reads the bytes of a `piece.json`. */
export async function pieceOfBytes(
  bytes: Uint8Array,
  file: string,
): Promise<Settings<Piece, PieceFile>> {
  const { pieceSchema } = await import("./_file_schema.ts");
  const { toJSONSchema } = await import("zod");
  const names = toJSONSchema(pieceSchema, { io: "input" }) as SchemaNode;
  const { content, problems, map, rest } = readJsonFile<PieceFile>(
    bytes,
    file,
    pieceSchema,
    names,
    PIECE_STAND_IN,
  );
  if (content === undefined) {
    if (rest !== undefined) {
      const more = new FileLengths(file, map, []);
      pieceOfFile(rest, more);
      problems.push(...more.problems.filter(isNoNote));
    }
    return { problems };
  }
  const value = pieceOfFile(content, new FileLengths(file, map, problems));
  return { problems, content, ...(value === undefined ? {} : { value }) };
}

/** Reads the bytes of a `bench.json`. */
export async function benchOfBytes(
  bytes: Uint8Array,
  file: string,
): Promise<Settings<Bench, BenchFile>> {
  const { benchSchema } = await import("./_file_schema.ts");
  const { toJSONSchema } = await import("zod");
  const names = toJSONSchema(benchSchema, { io: "input" }) as SchemaNode;
  const { content, problems, map, rest } = readJsonFile<BenchFile>(
    bytes,
    file,
    benchSchema,
    names,
    BENCH_STAND_IN,
  );
  if (content === undefined) {
    if (rest !== undefined) {
      const more = new FileLengths(file, map, []);
      benchOfFile(rest, more);
      problems.push(...more.problems.filter(isNoNote));
    }
    return { problems };
  }
  const value = benchOfFile(content, new FileLengths(file, map, problems));
  return { problems, content, ...(value === undefined ? {} : { value }) };
}
