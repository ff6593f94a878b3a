/**
 * The log of the work: one line per stretch of grinding.
 *
 * @module
 */
import type { Millimetres } from "../units/length.ts";
import type { LineCount } from "./folder.ts";
import type { LengthUnit } from "./piece.ts";
import type { Problem } from "./problem.ts";
import type { TableLine } from "./_table_line.ts";
import { readTypedTable } from "./_typed_table.ts";

/** Which disc was on top. */
export type WorkPosition = "mirror on top" | "tool on top";

/** Where the loupe still sees pits. */
export type PitsSeen = "none" | "centre" | "edge" | "all";

/** One stretch of work. */
export interface WorkLogEntry {
  /** Line of the file, from 1. */
  readonly line: number;
  /** ISO date. */
  readonly date?: string;
  /** The abrasive grade. */
  readonly grade?: string;
  /** Minutes of work. */
  readonly minutes?: number;
  /** Wets of work: charges of abrasive and water ground out. */
  readonly wets?: number;
  /** Which disc was on top. */
  readonly position?: WorkPosition;
  /** The stroke, in the user's words. */
  readonly stroke?: string;
  /** The session of readings that followed. */
  readonly session?: string;
  /** Thickness at the centre, in mm. */
  readonly thicknessCentre?: Millimetres;
  /** Thickness at the edge, in mm. */
  readonly thicknessEdge?: Millimetres;
  /** The loupe's verdict. */
  readonly pits?: PitsSeen;
  /** The user's note. */
  readonly note?: string;
}

/** A work log, and what became of its lines. */
export interface WorkLog {
  /** The stretches of work, in the order of the lines. */
  readonly entries: readonly WorkLogEntry[];
  /** How many lines were read, used and reported. */
  readonly lines: LineCount;
  /** Everything the reader has to say. */
  readonly problems: readonly Problem[];
}

/** The header of a work log. */
export const WORK_LOG_HEADER: readonly string[] = [
  "date",
  "grade",
  "minutes",
  "wets",
  "position",
  "stroke",
  "session",
  "thickness_centre",
  "thickness_edge",
  "pits",
  "note",
];

const SPEC = {
  columns: {
    date: ["day", "taken_at"],
    grade: ["abrasive", "grit"],
    minutes: ["min", "time"],
    wets: ["wet"],
    position: ["on_top"],
    stroke: ["strokes"],
    session: [],
    thickness_centre: ["thickness_center", "centre_thickness"],
    thickness_edge: ["edge_thickness"],
    pits: ["pit"],
    note: ["notes", "remark", "remarks", "comment"],
    unit: ["units"],
  },
  required: [],
} as const;

const POSITIONS = ["mirror on top", "tool on top"] as const;
const PITS = ["none", "centre", "edge", "all"] as const;

function entryOf(line: TableLine): WorkLogEntry | undefined {
  const entry: WorkLogEntry = {
    line: line.line,
    date: line.date("date"),
    grade: line.text("grade"),
    minutes: line.amount("minutes"),
    wets: line.amount("wets"),
    position: line.word("position", POSITIONS),
    stroke: line.text("stroke"),
    session: line.text("session"),
    thicknessCentre: line.length("thickness_centre"),
    thicknessEdge: line.length("thickness_edge"),
    pits: line.word("pits", PITS),
    note: line.text("note"),
  };
  return entry;
}

/**
 * Reads a work log.
 *
 * Every column may be blank or missing: a log is worth keeping with half its
 * cells filled. A cell that is filled and cannot be read refuses its line.
 *
 * @param content Text, or the bytes of the file.
 * @param file The file's name, for messages.
 * @param unit The unit of a thickness that names none; without it such a
 * thickness is refused.
 * @returns The stretches of work and what became of the lines.
 *
 * @example
 * ```ts
 * import { readWorkLog } from "sagbook/records/work_log.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { entries, lines } = await readWorkLog(
 *   "date,grade,wets,position\n2031-05-17,80 grit,12,mirror on top\n",
 *   "worklog.csv",
 *   "mm",
 * );
 * deepEqual([entries[0].wets, entries[0].position], [12, "mirror on top"]);
 * deepEqual(lines, { read: 1, used: 1, reported: 0 });
 * ```
 */
export async function readWorkLog(
  content: string | Uint8Array,
  file: string,
  unit?: LengthUnit,
): Promise<WorkLog> {
  const { records, lines, problems } = await readTypedTable(
    content,
    file,
    SPEC,
    unit,
    entryOf,
  );
  return {
    entries: records,
    lines,
    problems: [...problems, ...datesGoingBack(records, file)],
  };
}

/** The first line that is dated before one above it. */
function datesGoingBack(
  entries: readonly WorkLogEntry[],
  file: string,
): readonly Problem[] {
  let latest = "";
  for (const { date, line } of entries) {
    if (date === undefined) continue;
    if (date.slice(0, 10) < latest) {
      return [{
        severity: "note",
        code: "dates-go-back",
        file,
        line,
        column: "date",
        value: date,
        message:
          `this line is dated before one above it (${latest}); where all lines are dated, work is taken in the order of the dates`,
        mend: "correct the date, if that is not the order of the work",
      }];
    }
    latest = date.slice(0, 10);
  }
  return [];
}
