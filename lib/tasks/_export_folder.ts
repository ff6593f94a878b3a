/**
 * The folder of exports: what lies there, and what may be written over.
 *
 * @module
 */
import { basename, join, resolve } from "node:path";
import { expectWritable } from "../files/expect_writable.ts";
import {
  type FileToWrite,
  writeAllAtomically,
} from "../files/write_atomically.ts";
import { RESULTS_VERSION } from "../narrative/results_version.ts";
import { VERSION } from "../version.ts";
import {
  type KeptReport,
  type Kind,
  type PartFile,
  sumOf,
} from "./_export_parts.ts";

/** All results and a list of the files, in the folder of exports. */
export const ALL_RESULTS = "results.json";

/** What the list says of one file. */
interface Entry {
  readonly file: string;
  readonly kind: string;
  readonly report: string;
  readonly title: string;
  readonly sha256: string;
}

/** What an earlier export left in a folder. */
interface Earlier {
  /** Its files by name. */
  readonly entries: ReadonlyMap<string, Entry>;
  /** Whether the list itself is an earlier export's. */
  readonly isOurs: boolean;
}

async function readEarlier(folder: string): Promise<Earlier> {
  try {
    const kept = JSON.parse(
      await Deno.readTextFile(join(folder, ALL_RESULTS)),
    );
    const files: readonly Entry[] = Array.isArray(kept?.files)
      ? kept.files
      : [];
    return {
      entries: new Map(
        files.filter((one) => typeof one?.file === "string")
          .map((one) => [one.file, one]),
      ),
      isOurs: kept?.program === "sagbook" && Array.isArray(kept?.files),
    };
  } catch {
    return { entries: new Map(), isOurs: false };
  }
}

async function sumOfFile(path: string): Promise<string | undefined> {
  try {
    return sumOf(await Deno.readFile(path));
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
}

/** All results of a piece's reports in one JSON text, and a list of files. */
function allResults(
  folder: string,
  reports: readonly KeptReport[],
  entries: readonly Entry[],
): string {
  const found = reports.flatMap(({ name, results }) =>
    results === undefined ? [] : [[name, results] as const]
  );
  return JSON.stringify(
    {
      program: "sagbook",
      version: VERSION,
      results_version: RESULTS_VERSION,
      folder: basename(resolve(folder)),
      reports: Object.fromEntries(found),
      files: entries,
    },
    null,
    2,
  ) + "\n";
}

/** What is to be written, and where. */
export interface Export {
  /** The piece's folder. */
  readonly folder: string;
  /** Where to. */
  readonly to: string;
  /** The reports. */
  readonly reports: readonly KeptReport[];
  /** The files. */
  readonly files: readonly PartFile[];
  /** The kinds that were asked for. */
  readonly kinds: ReadonlySet<Kind>;
  /** True: files of the user's own are written over. */
  readonly replace: boolean;
}

/**
 * Writes an export, all of it or nothing. A file of the same name that no
 * export made, or that was changed since, stays, and nothing is written.
 *
 * @returns Names of files in the way; none when it was written.
 */
export async function writeExport(order: Export): Promise<string[]> {
  const { folder, to, reports, files, kinds, replace } = order;
  await expectWritable(to, "the export");
  const { entries, isOurs } = await readEarlier(to);
  const inTheWay: string[] = [];
  const made = files.map(({ content, ...file }): Entry => ({
    file: file.name,
    kind: file.kind,
    report: file.report,
    title: file.title,
    sha256: sumOf(content),
  }));
  for (const { file, sha256 } of made) {
    const there = await sumOfFile(join(to, file));
    const isKnown = there === undefined || there === sha256 ||
      there === entries.get(file)?.sha256;
    if (!isKnown) inTheWay.push(file);
  }
  const isThere = await sumOfFile(join(to, ALL_RESULTS)) !== undefined;
  if (isThere && !isOurs) inTheWay.push(ALL_RESULTS);
  if (inTheWay.length > 0 && !replace) return inTheWay;
  const names = new Set(made.map(({ file }) => file));
  const stale: FileToWrite[] = [];
  const kept: Entry[] = [];
  for (const entry of entries.values()) {
    // A name from the list counts only if it is one that an export gives.
    const isName = /^[a-z0-9._-]+\.(?:svg|png|csv)$/i.test(entry.file);
    if (!isName || names.has(entry.file)) continue;
    const path = join(to, entry.file);
    if (await sumOfFile(path) !== entry.sha256) continue;
    if (!kinds.has(entry.kind as Kind)) kept.push(entry);
    else stale.push({ path, content: undefined });
  }
  const list = [...made, ...kept].sort((a, b) => a.file < b.file ? -1 : 1);
  await writeAllAtomically([
    ...files.map(({ name, content }) => ({ path: join(to, name), content })),
    {
      path: join(to, ALL_RESULTS),
      content: allResults(folder, reports, list),
    },
    ...stale,
  ]);
  return [];
}
