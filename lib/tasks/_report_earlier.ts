/**
 * Reports that an earlier run has left.
 *
 * @module
 */
import { join } from "node:path";
import { settingsFiles } from "./_settings_files.ts";
import type { JsonObject } from "../notebook/document.ts";
import { VERSION } from "../version.ts";
import type { PieceOutcome } from "./_report_index.ts";
import { type ReportKind, subtitleOf } from "./_report_run.ts";

async function modified(path: string): Promise<number | undefined> {
  try {
    return (await Deno.stat(path)).mtime?.getTime();
  } catch {
    return undefined;
  }
}

/** The whole report that stands in a folder, if one does, and when it was made. */
export async function earlierReport(
  folder: string,
  kind: ReportKind,
): Promise<
  | { readonly outcome: PieceOutcome; readonly at: number; version: unknown }
  | undefined
> {
  const page = join(folder, "report", `${kind.file}.html`);
  const at = await modified(page);
  if (at === undefined) return undefined;
  try {
    const path = join(folder, "report", kind.results);
    const results: JsonObject = JSON.parse(await Deno.readTextFile(path));
    const { name } = (results.piece ?? {}) as JsonObject;
    return {
      at,
      version: results.version,
      outcome: {
        folder,
        ...(typeof name === "string" ? { name } : {}),
        about: subtitleOf(results),
        answer: Array.isArray(results.answer) ? results.answer.map(String) : [],
        page,
        faults: [],
        earlier: new Date(at).toISOString().slice(0, 16).replace("T", " "),
      },
    };
  } catch {
    // A page without results is of a run that did not end well.
    return undefined;
  }
}

/** When anything of a piece but its reports was last changed, in ms. */
async function lastChange(folder: string): Promise<number> {
  let last = 0;
  const look = async (path: string): Promise<void> => {
    last = Math.max(last, await modified(path) ?? Infinity);
  };
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    if (name === "report" || name.startsWith(".")) continue;
    const path = join(folder, name);
    await look(path);
    if (name !== "sheets" || !isDirectory) continue;
    for await (const sheet of Deno.readDir(path)) {
      await look(join(path, sheet.name));
    }
  }
  for (const path of await settingsFiles(folder)) await look(path);
  return last;
}

/**
 * The report of a piece, where it is whole, of this version, and younger than
 * every file it was made from.
 */
export async function reportUpToDate(
  folder: string,
  kind: ReportKind,
): Promise<PieceOutcome | undefined> {
  const found = await earlierReport(folder, kind);
  if (found === undefined || found.version !== VERSION) return undefined;
  try {
    return await lastChange(folder) < found.at ? found.outcome : undefined;
  } catch {
    return undefined;
  }
}
