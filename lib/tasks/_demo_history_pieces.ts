/**
 * What was done to the invented pieces with a whole history.
 *
 * @module
 */

/** One stretch of work. */
export interface HistoryWork {
  /** Date. */
  readonly date: string;
  /** Grade. */
  readonly grade: string;
  /** Wets; none for polishing. */
  readonly wets?: number;
  /** Minutes. */
  readonly minutes: number;
  /** Which lies on top. */
  readonly position: "mirror on top" | "tool on top";
  /** Name of the session that followed; none where none did. */
  readonly session?: string;
  /** The loupe's verdict. */
  readonly pits?: string;
  /** Note. */
  readonly note?: string;
  /** Depth of a hole left in the middle, in mm; 0 unless stated. */
  readonly hole?: number;
}

/** One invented piece with its history. */
export interface HistoryPiece {
  /** Folder. */
  readonly folder: string;
  /** Seed, fixed before any result was seen. */
  readonly seed: number;
  /** Name. */
  readonly name: string;
  /** Target radius in mm. */
  readonly target: number;
  /** Tolerance in mm. */
  readonly tolerance: number;
  /** Radius before the first session, in mm. */
  readonly start: number;
  /** Hole in the middle before the first session, in mm. */
  readonly hole: number;
  /** The first evening. */
  readonly first: { readonly session: string; readonly date: string };
  /** The work. */
  readonly work: readonly HistoryWork[];
  /**
   * Radius at the end of grinding and its standard uncertainty in mm, as the
   * piece's own page states them; none where it was not finished.
   */
  readonly ground?: { readonly radius: number; readonly uncertainty: number };
}

/** Depth of glass for one wet, in mm of sag over the half diameter. */
export const HISTORY_RATES: Readonly<Record<string, number>> = {
  F80: 0.012,
  F120: 0.006,
  F220: 0.003,
  F320: 0.0015,
  F500: 0.0008,
};

const TOP = "mirror on top";
const MINUTES: Readonly<Record<string, number>> = {
  F80: 6,
  F120: 7,
  F220: 8,
  F320: 9,
  F500: 10,
};

type Line = readonly [
  date: string,
  grade: string,
  wets: number,
  session: string,
  more?: Partial<HistoryWork>,
];

const lines = (list: readonly Line[]): HistoryWork[] =>
  list.map(([date, grade, wets, session, more]) => ({
    date,
    grade,
    wets,
    minutes: wets * MINUTES[grade],
    position: TOP,
    session,
    ...more,
  }));

const polishing: readonly HistoryWork[] = [
  {
    date: "2024-05-20",
    grade: "polishing",
    minutes: 240,
    position: TOP,
    note: "pitch lap; hot pitch burns, and the gauge stays off the polish",
  },
  {
    date: "2024-05-25",
    grade: "polishing",
    minutes: 300,
    position: TOP,
    pits: "none",
    note: "polished out",
  },
];

/** The invented pieces. */
export const HISTORY_PIECES: readonly HistoryPiece[] = [
  {
    folder: "history-300",
    seed: 1712,
    name: "disc 300, f/5, from rough to polished",
    target: 3000,
    tolerance: 10,
    start: 3480,
    hole: 0.03,
    first: { session: "E1", date: "2024-03-02" },
    work: [
      ...lines([
        ["2024-03-03", "F80", 10, "E2", {
          hole: 0.012,
          note: "hollowed out before with a ring tool",
        }],
        ["2024-03-05", "F80", 9, "E3"],
        ["2024-03-09", "F80", 6, "E4", {
          position: "tool on top",
          note: "the discs were set up the wrong way round",
        }],
        ["2024-03-10", "F80", 12, "E5", { note: "turned back" }],
        ["2024-03-12", "F80", 8, "E6", { pits: "all" }],
        ["2024-03-16", "F120", 6, "E7", { pits: "all" }],
        ["2024-03-19", "F120", 5, "E8", { pits: "edge" }],
        ["2024-03-23", "F120", 4, "E9", { pits: "none" }],
        ["2024-03-26", "F220", 4, "E10", { pits: "all" }],
        ["2024-03-30", "F220", 4, "E11"],
        ["2024-04-02", "F220", 2, "E12", { pits: "edge" }],
        ["2024-04-06", "F220", 2, "E13", { pits: "none" }],
        ["2024-04-13", "F320", 3, "E14", { pits: "all" }],
        ["2024-04-16", "F320", 2, "E15"],
        ["2024-04-20", "F320", 2, "E16", { pits: "edge" }],
        ["2024-04-23", "F320", 2, "E17", { pits: "none" }],
        ["2024-05-04", "F500", 2, "E18", { pits: "all" }],
        ["2024-05-07", "F500", 2, "E19", { pits: "centre" }],
        ["2024-05-11", "F500", 2, "E20", { pits: "none" }],
      ]),
      ...polishing,
    ],
    ground: { radius: 3002.6, uncertainty: 3.4 },
  },
  {
    folder: "history-300-before",
    seed: 1711,
    name: "disc 300, f/5.3, the one before",
    target: 3200,
    tolerance: 20,
    start: 3620,
    hole: 0,
    first: { session: "E1", date: "2023-09-02" },
    work: lines([
      ["2023-09-03", "F80", 9, "E2"],
      ["2023-09-06", "F80", 9, "E3"],
      ["2023-09-10", "F80", 4, "E4", { pits: "all" }],
      ["2023-09-17", "F120", 5, "E5"],
      ["2023-09-20", "F120", 4, "E6"],
      ["2023-09-24", "F120", 3, "E7", { pits: "none" }],
      ["2023-10-01", "F220", 4, "E8"],
      ["2023-10-04", "F220", 4, "E9"],
      ["2023-10-08", "F220", 3, "E10", { pits: "none" }],
      ["2023-10-15", "F320", 8, "E11"],
      ["2023-10-18", "F320", 8, "E12", { pits: "none" }],
      ["2023-10-25", "F500", 10, "E13"],
      ["2023-10-29", "F500", 10, "E14", { pits: "none" }],
    ]),
  },
];
