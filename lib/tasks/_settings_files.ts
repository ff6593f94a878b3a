/**
 * The files outside a piece's folder that its own files name.
 *
 * @module
 */
import { resolve } from "node:path";
import { namedPath } from "../files/named_path.ts";
import { readOrdinaryFile } from "../files/read_ordinary_file.ts";

/**
 * Finds what reading a piece's folder reads beside it: the bench's file where
 * `piece.json` names one elsewhere, and the files of spacings that it names.
 *
 * Only files of these kinds count, `.json` and `.csv` or `.txt`: what is found
 * here a notebook may read.
 *
 * @param folder The piece's folder.
 * @returns Absolute paths; files that are not there or not readable name none.
 */
export async function settingsFiles(folder: string): Promise<string[]> {
  const piece = resolve(folder, "piece.json");
  const named = objectOf(await readJson(piece)).bench;
  const bench = namedPath(
    piece,
    typeof named === "string" ? named : "bench.json",
  );
  if (!bench.endsWith(".json")) return [];
  const { rings } = objectOf(await readJson(bench));
  const spacings = (Array.isArray(rings) ? rings : []).flatMap((ring) => [
    objectOf(ring).spacings,
    objectOf(objectOf(ring).calibration).spacings,
  ]);
  const files = spacings.filter((one): one is string =>
    typeof one === "string" && /\.(csv|txt)$/i.test(one)
  );
  return [bench, ...files.map((one) => namedPath(bench, one))];
}

function objectOf(value: unknown): Record<string, unknown> {
  return typeof value === "object" && value !== null
    ? value as Record<string, unknown>
    : {};
}

async function readJson(path: string): Promise<unknown> {
  try {
    const text = new TextDecoder().decode(await readOrdinaryFile(path));
    return JSON.parse(text);
  } catch {
    return undefined; // whoever reads the folder says what is wrong with it
  }
}
