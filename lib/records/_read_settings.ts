/**
 * `piece.json` and `bench.json` against their schemas, loaded when needed.
 *
 * @module
 */
import { ringName } from "./ring_name.ts";
import type { Bench } from "./bench.ts";
import type { BenchFile, RingFile } from "./bench_file.ts";
import { benchOfFile } from "./_bench_of_file.ts";
import { FileLengths } from "./_file_lengths.ts";
import { readJsonFile } from "./_json_file.ts";
import type { SchemaNode } from "./_schema_words.ts";
import type { FileBytes } from "./_read_bytes.ts";
import { readRingSpacings } from "./ring_spacings.ts";
import { pieceOfFile } from "./_piece_of_file.ts";
import type { Piece } from "./piece.ts";
import type { PieceFile } from "./piece_file.ts";
import type { Problem } from "./problem.ts";

/** A settings file, read: what it means, what it says, and what is wrong. */
export interface Settings<T, F> {
  readonly value?: T;
  readonly content?: F;
  /** What is left of the content without its wrong values, where it has any. */
  readonly rest?: Partial<F>;
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
    return { problems, ...(rest === undefined ? {} : { rest }) };
  }
  const value = pieceOfFile(content, new FileLengths(file, map, problems));
  return { problems, content, ...(value === undefined ? {} : { value }) };
}

/** Reads a file that a settings file names, by its path seen from there. */
export type SiblingReader = (path: string) => Promise<FileBytes>;

/** Puts the spacings that rings keep in files of their own in their place. */
async function withSpacings(
  file: BenchFile,
  sibling: SiblingReader,
  problems: Problem[],
): Promise<BenchFile> {
  const inPlace = async <Holder extends Pick<RingFile, "spacings">>(
    holder: Holder,
    ring: string,
  ): Promise<Holder> => {
    const path = holder.spacings;
    if (typeof path !== "string") return holder;
    const found = await sibling(path);
    if (found.kind === "unreadable") problems.push(found.problem);
    if (found.kind === "absent") {
      problems.push({
        severity: "refused",
        code: "no-file",
        file: path,
        message: `the spacings of ${ringName(ring)} are missing`,
        mend: "write the file, or the three spacings into bench.json",
      });
    }
    if (found.kind !== "bytes") return holder;
    const read = await readRingSpacings(found.bytes, path, file.gauge.unit);
    problems.push(...read.problems);
    return {
      ...holder,
      spacings: read.spacings?.map((value) => ({ value, unit: "mm" })) ?? path,
    };
  };
  const rings = [];
  for (const one of file.rings) {
    const ring = await inPlace(one, one.id);
    const calibration = ring.calibration &&
      await inPlace(ring.calibration, one.id);
    rings.push(calibration === undefined ? ring : { ...ring, calibration });
  }
  return { ...file, rings };
}

/** Reads the bytes of a `bench.json`. */
export async function benchOfBytes(
  bytes: Uint8Array,
  file: string,
  sibling: SiblingReader,
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
  const whole = await withSpacings(content, sibling, problems);
  const value = benchOfFile(whole, new FileLengths(file, map, problems));
  return { problems, content, ...(value === undefined ? {} : { value }) };
}
