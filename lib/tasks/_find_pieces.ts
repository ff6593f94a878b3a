/**
 * The pieces that a folder of the command line means, or what was meant.
 *
 * @module
 */
import { basename, dirname, join } from "node:path";
import { closestName } from "../records/closest_name.ts";
import { displayPath } from "./_task_words.ts";

/** What a folder holds. */
export interface FoundPieces {
  /** The folder as it was given. */
  readonly folder: string;
  /** Folders of pieces: itself, those in it, or itself when there is none. */
  readonly pieces: readonly string[];
  /** True when the pieces lie in it, one folder each. */
  readonly isGroup: boolean;
  /** What was probably meant, where no piece was found. */
  readonly hint?: string;
}

/** How deep a hint looks for pieces. */
const DEEPEST = 3;

async function kindOf(path: string): Promise<"file" | "folder" | "none"> {
  try {
    const { isFile, isDirectory } = await Deno.stat(path);
    return isFile ? "file" : isDirectory ? "folder" : "none";
  } catch {
    return "none";
  }
}

async function holds(folder: string, ...names: string[]): Promise<boolean> {
  for (const name of names) {
    if (await kindOf(join(folder, name)) !== "none") return true;
  }
  return false;
}

/** The folders in a folder, by name; reports and hidden ones left out. */
async function foldersIn(folder: string): Promise<string[]> {
  const found: string[] = [];
  try {
    for await (const { name } of Deno.readDir(folder)) {
      if (name.startsWith(".") || name === "report") continue;
      if (name === "node_modules") continue;
      const inside = join(folder, name);
      if (await kindOf(inside) === "folder") found.push(inside);
    }
  } catch {
    // It cannot be read, which is said when the piece in it is.
  }
  return found.sort();
}

/** Folders that are a piece, or were meant to be one. */
async function piecesIn(folder: string): Promise<string[]> {
  const found: string[] = [];
  for (const inside of await foldersIn(folder)) {
    if (await holds(inside, "piece.json", "bench.json", "readings.csv")) {
      found.push(inside);
    }
  }
  return found;
}

/** Folders further down that hold pieces. */
async function groupsBelow(folder: string, depth: number): Promise<string[]> {
  if (depth === 0) return [];
  const found: string[] = [];
  for (const inside of await foldersIn(folder)) {
    if ((await piecesIn(inside)).length > 0) found.push(inside);
    else found.push(...await groupsBelow(inside, depth - 1));
  }
  return found;
}

/**
 * What was probably meant by a folder in which there is no piece.
 *
 * @param folder The folder as it was typed.
 * @returns A sentence; undefined where there is nothing to guess.
 */
export async function folderHint(
  folder: string,
): Promise<string | undefined> {
  const kind = await kindOf(folder);
  const above = dirname(folder);
  if (kind === "file") {
    return await holds(above, "piece.json")
      ? `Did you mean its folder, ${displayPath(above)}?`
      : undefined;
  }
  if (kind === "none") {
    const beside = (await foldersIn(above)).map((path) => basename(path));
    const meant = closestName(basename(folder), beside);
    return meant === undefined
      ? undefined
      : `Did you mean ${displayPath(join(above, meant))}?`;
  }
  if (await holds(folder, "finished.csv")) {
    return `This folder holds finished.csv, so it is a shop's: deno task focal FOLDER --shop ${
      displayPath(folder)
    } takes it.`;
  }
  const below = await groupsBelow(folder, DEEPEST);
  if (below.length === 0) return undefined;
  const named = below.slice(0, 3).map(displayPath).join(", ");
  const more = below.length > 3 ? `, and ${below.length - 3} more` : "";
  return `There are pieces further down, in ${named}${more}: give that folder.`;
}

/**
 * Finds the pieces of a folder: itself, or the folders in it that are one or
 * lack only some of their files. A bench that several share may lie beside them.
 *
 * @param folder A path of the command line.
 * @returns The pieces; where there is none the folder itself, and a hint.
 */
export async function findPieces(folder: string): Promise<FoundPieces> {
  if (await holds(folder, "piece.json", "readings.csv")) {
    return { folder, pieces: [folder], isGroup: false };
  }
  const pieces = await piecesIn(folder);
  // A bench alone is the pieces' common one, unless there are no pieces.
  if (pieces.length === 0 && await holds(folder, "bench.json")) {
    return { folder, pieces: [folder], isGroup: false };
  }
  if (pieces.length > 0) return { folder, pieces, isGroup: true };
  const hint = await folderHint(folder);
  return {
    folder,
    pieces: [folder],
    isGroup: false,
    ...(hint === undefined ? {} : { hint }),
  };
}
