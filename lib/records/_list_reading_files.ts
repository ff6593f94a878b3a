/**
 * Which files of a folder hold readings.
 *
 * @module
 */
import { join } from "node:path";
import type { Problem } from "./problem.ts";

/** Files of readings, and what lies beside them that nobody reads. */
export interface ReadingFiles {
  /** Paths inside the folder, in the order they are read. */
  readonly files: readonly string[];
  /** What there is to say about the others. */
  readonly problems: readonly Problem[];
}

const READINGS = /^readings\.(?:csv|tsv|txt)$/i;
const SHEET = /\.(?:csv|tsv|txt|log)$/i;
const SPREADSHEET = /\.(?:xlsx?|xlsm|ods|numbers)$/i;
const KNOWN = /^(?:worklog|finished|sheet-template|plan)\.csv$/i;
const TABLE = /\.(?:csv|tsv)$/i;
const MOST_NAMED = 8;

const inOrder = new Intl.Collator("en", { numeric: true });
/** By name, numbers in a name by their size: evening 9 before evening 10. */
const byName = (a: string, b: string) =>
  inOrder.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);

async function namesIn(path: string, expected: RegExp): Promise<string[]> {
  const names: string[] = [];
  try {
    for await (const { name, isDirectory } of Deno.readDir(path)) {
      // A folder where readings are expected is listed, to be refused.
      if (isDirectory && !expected.test(name)) continue;
      // Editors and spreadsheets leave locks and copies of such names.
      if (!/^[.~]/.test(name)) names.push(name);
    }
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return [];
    if (error instanceof Deno.errors.NotADirectory) return [];
    throw error;
  }
  return names.sort(byName);
}

function notRead(names: readonly string[], mend: string): Problem[] {
  return names.slice(0, MOST_NAMED).map((file) => ({
    severity: "note",
    code: "file-not-read",
    file,
    message: "this file is not read",
    mend,
  }));
}

/**
 * Lists the files of readings: `readings.csv` (or .tsv, .txt, in any case),
 * then everything under `sheets/` by name, evening 9 before evening 10.
 *
 * Tables that lie elsewhere are named in a note, and so are spreadsheets, for
 * nothing in them is read.
 */
export async function listReadingFiles(path: string): Promise<ReadingFiles> {
  let beside: string[];
  let sheets: string[];
  try {
    beside = await namesIn(path, READINGS);
    sheets = await namesIn(join(path, "sheets"), SHEET);
  } catch {
    return {
      files: [],
      problems: [{
        severity: "refused",
        code: "unreadable",
        file: path,
        message: "the folder, or sheets/ in it, may not be listed",
        mend: "check who may read it",
      }],
    };
  }
  const stray = beside.filter((name) =>
    SHEET.test(name) && !READINGS.test(name) && !KNOWN.test(name) &&
    (TABLE.test(name) || /reading|session|sheet/i.test(name))
  );
  const spreadsheets = [
    ...beside.filter((name) => SPREADSHEET.test(name)),
    ...sheets.filter((name) => SPREADSHEET.test(name))
      .map((name) => `sheets/${name}`),
  ];
  return {
    files: [
      ...beside.filter((name) => READINGS.test(name)),
      ...sheets.filter((name) => SHEET.test(name))
        .map((name) => `sheets/${name}`),
    ],
    problems: [
      ...notRead(stray, "put it under sheets/, or name it readings.csv"),
      ...notRead(spreadsheets, "save the sheet as CSV under sheets/"),
    ],
  };
}
