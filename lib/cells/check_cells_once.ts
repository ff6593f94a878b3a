/**
 * Checking a notebook only when something has changed.
 *
 * @module
 */
import { join } from "node:path";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import { checkCells } from "./check_cells.ts";
import type { LanguageServerSettings } from "./language_server.ts";
import { parseCell } from "./parse_cell.ts";

/** Where passed checks are remembered, and what they depend on. */
export interface CheckMemory {
  /** Folder for the marks of checks that have passed; made when needed. */
  readonly folder: string;
  /** Files and folders whose change makes every check void: library, lock. */
  readonly dependsOn: readonly string[];
}

/** Marks that are kept; the oldest are dropped. */
const KEPT = 200;

/**
 * Checks cells as {@linkcode checkCells} does, unless the same cells have
 * passed before with the same library, lock file and runtime.
 *
 * Of the library's files path, size and time of the last change count, not
 * their content, so the question takes a few milliseconds. Cells that import a
 * file beside the notebook are always checked, since that file may import
 * others. What has not passed is not remembered.
 *
 * @param sources Texts of the code cells, in order.
 * @param settings Folder, deno.json and program of the checker.
 * @param memory Where to remember, and what counts.
 * @returns For each cell what is wrong with it.
 *
 * @example The second time nothing is started
 * ```ts
 * import { checkCellsOnce } from "sagbook/cells/check_cells_once.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const memory = { folder: await Deno.makeTempDir(), dependsOn: [] };
 * const cells = ["const sag: number = 0.715;"];
 * await checkCellsOnce(cells, { folder: "file:///notebook/" }, memory);
 * const found = await checkCellsOnce(
 *   cells,
 *   { folder: "file:///notebook/", program: "/no/such/program" },
 *   memory,
 * );
 * deepEqual(found, [[]]);
 * ```
 */
export async function checkCellsOnce(
  sources: readonly string[],
  settings: LanguageServerSettings,
  memory: CheckMemory,
): Promise<CellDiagnostic[][]> {
  const local = sources.some((source) =>
    parseCell(source).imports.some((name) => /^(\.{0,2}\/|file:)/.test(name))
  );
  if (local) return await checkCells(sources, settings);
  const mark = join(memory.folder, await keyOf(sources, settings, memory));
  try {
    await Deno.stat(mark);
    return sources.map(() => []);
  } catch {
    // Not passed before.
  }
  const found = await checkCells(sources, settings);
  if (found.every((cell) => cell.length === 0)) {
    try {
      await Deno.mkdir(memory.folder, { recursive: true });
      await Deno.writeTextFile(mark, "");
      await dropOldest(memory.folder);
    } catch {
      // What cannot be remembered is checked again the next time.
    }
  }
  return found;
}

async function keyOf(
  sources: readonly string[],
  { folder, config }: LanguageServerSettings,
  { dependsOn }: CheckMemory,
): Promise<string> {
  const files: string[] = [];
  for (const path of [...dependsOn, ...(config ? [config] : [])]) {
    await list(path, files);
  }
  const text = JSON.stringify([Deno.version, folder, sources, files.sort()]);
  const bytes = new TextEncoder().encode(text);
  const hash = await crypto.subtle.digest("SHA-256", bytes);
  return new Uint8Array(hash).toHex();
}

/** Adds path, size and time of every file at or below a path. */
async function list(path: string, files: string[]): Promise<void> {
  let stat: Deno.FileInfo;
  try {
    stat = await Deno.stat(path);
  } catch {
    files.push(`${path} is missing`);
    return;
  }
  if (!stat.isDirectory) {
    files.push(`${path} ${stat.size} ${stat.mtime?.getTime()}`);
    return;
  }
  for await (const { name } of Deno.readDir(path)) {
    await list(join(path, name), files);
  }
}

async function dropOldest(folder: string): Promise<void> {
  const marks: { path: string; time: number }[] = [];
  for await (const { name } of Deno.readDir(folder)) {
    const path = join(folder, name);
    const { mtime } = await Deno.stat(path);
    marks.push({ path, time: mtime?.getTime() ?? 0 });
  }
  marks.sort((a, b) => b.time - a.time);
  for (const { path } of marks.slice(KEPT)) {
    await Deno.remove(path).catch(() => {});
  }
}
