/**
 * The tables of a report.
 *
 * @module
 */
import { table } from "../display/table.ts";
import type { Displayable } from "../display/bundle.ts";
import { groupProblems, type ProblemGroup } from "../records/group_problems.ts";
import type { Problem } from "../records/problem.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { nearest } from "../zones/sphericity.ts";
import { smallUnit, writeSmall } from "./sag_words.ts";
import { stateZoneRadius } from "./radius_statement.ts";
import { verdictWords } from "./_verdict_words.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import { sentences } from "./show.ts";
import type { SessionReport } from "./session_report.ts";
import { writeColumn } from "./write_column.ts";
import { writeRadii } from "./write_radius.ts";
import { isCentre } from "./zone_words.ts";

/**
 * Tabulates the zones of the session: sag, radius, sag less the innermost.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function zonesTable(report: SessionReport): Displayable {
  const { session, folder: { piece, bench } } = report;
  if (!session) return table([], { caption: "No zone was read." });
  const { unit } = piece;
  const { zones, differences, sphericity: { tolerance } } = session;
  const small = smallUnit(unit);
  const inner = zones[0].place.label;
  const radii = writeRadii(
    zones.map((_, index) => stateZoneRadius(session, piece, bench, index)),
    unit,
  );
  const sags = writeColumn(
    zones.map(({ mean }) => ({
      value: mean.sag,
      ...(mean.interval95 ? { half: mean.interval95.high - mean.sag } : {}),
    })),
    unit,
    unit === "mm" ? 4 : 5,
  );
  const against = zones.map((_, index) =>
    differences.find(({ first, second }) => first === 0 && second === index)
  );
  const apart = writeColumn(
    against.map((one) =>
      one && {
        value: -one.mean,
        ...(one.simultaneous95
          ? { half: (one.simultaneous95.high - one.simultaneous95.low) / 2 }
          : {}),
      }
    ),
    small,
    small === "µm" ? 1 : 3,
    true,
  );
  const rows = zones.map(({ place, mean }, index) => ({
    zone: place.label,
    "from centre": formatLength(place.distance, unit, unit === "mm" ? 1 : 2),
    readings: mean.readings,
    zeroings: mean.zeroings,
    "mean sag": sags[index] ?? "—",
    "radius": radii[index],
    [`sag less ${inner}`]: index === 0 ? "—" : apart[index] ?? "not in one set",
  }));
  const limit = tolerance === undefined
    ? ""
    : ` Tolerance ${writeSmall(tolerance.sag, unit)}.`;
  return table(rows, {
    caption:
      `What each zone read. ± is 95 %: of the sag for repeating and the display step; of the radius for ring, gauge and flat as well; of the difference for all pairs of zones together.${limit}`,
  });
}

/**
 * Tabulates every pair of zones with the intervals that decide.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function differencesTable(report: SessionReport): Displayable {
  const { session, folder: { piece: { unit } } } = report;
  if (!session || session.differences.length === 0) {
    return table([], { caption: "No two zones were read in one set." });
  }
  const small = smallUnit(unit);
  const most = unit === "mm" ? 2 : 3;
  const limit = session.sphericity.tolerance?.sag;
  const rows = session.differences.map((one) => {
    const { interval90, interval95, simultaneous95 } = one;
    // No more figures than the narrowest interval of the row supports.
    const half = interval90 === undefined
      ? 0
      : amountIn(millimetres(interval90.high - interval90.low), small) / 2;
    const decimals = half === 0
      ? most
      : Math.min(most, Math.max(0, decimalsFor(half)));
    const write = (length: number): string =>
      formatLength(millimetres(length), small, decimals);
    // Outer less inner, as in the table of zones and the figure.
    const range = (interval: typeof interval90): string =>
      interval === undefined
        ? "needs two sets"
        : `${withoutUnit(write(-interval.high))} to ${
          withoutUnit(write(-interval.low))
        }`;
    return {
      "zones": `${session.zones[one.second].place.label} less ${
        session.zones[one.first].place.label
      }`,
      sets: one.sets,
      difference: write(-one.mean),
      [`is it within? 90 % (${small})`]: range(interval90),
      [`this pair alone, 95 % (${small})`]: range(interval95),
      [`all pairs, is it out? 95 % (${small})`]: range(simultaneous95),
      "verdict": limit === undefined || interval90 === undefined
        ? "—"
        : simultaneous95 !== undefined && nearest(simultaneous95) > limit
        ? "out"
        : Math.max(Math.abs(interval90.low), Math.abs(interval90.high)) <= limit
        ? "within"
        : "not decided",
    };
  });
  return table(rows, {
    caption:
      "Differences of sag within sets, free of the zero: the outer zone less the inner one.",
  });
}

/** A length whose unit stands above. */
function withoutUnit(text: string): string {
  return text.replace(/[ \u00a0]\S+$/, "");
}

/**
 * Tabulates every session and ring.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function sessionsTable(report: SessionReport): Displayable {
  const { sessions, sessionsLeftOut: left = 0, folder } = report;
  const { piece, bench } = folder;
  const radii = writeRadii(
    sessions.map((session) => stateZoneRadius(session, piece, bench, 0)),
    piece.unit,
  );
  const place = sessions.every(({ zones }) => isCentre(zones[0]))
    ? "radius at the centre"
    : "radius of the innermost zone";
  const rows = sessions.map((session, index) => ({
    session: session.session,
    date: session.takenAt?.slice(0, 10) ?? "—",
    grade: session.grade ?? "—",
    ring: session.ring.id,
    sets: session.sets.length,
    [place]: radii[index],
    "a sphere?": session.zones[0].radius === undefined
      ? "no radius"
      : verdictWords(session, piece.unit),
  }));
  const note =
    `± is 95 %, for all that the budget names: repeating, display, ring, gauge and flat.${
      oneZeroing(sessions)
    }`;
  return table(rows, {
    caption: left === 0
      ? `Every session and ring; ${note}`
      : `The first session and the last ${rows.length - 1} of ${
        rows.length + left
      }, each with its ring; the ${left} between were read and not worked out; ${note}`,
  });
}

/** How many sessions are named. */
const MOST_SESSIONS_NAMED = 8;

/** Says whose ± lacks the scatter of the zero. */
function oneZeroing(sessions: readonly SessionAnalysis[]): string {
  const names = [
    ...new Set(
      sessions.filter(({ zones }) => zones[0].mean.zeroings === 1)
        .map(({ session }) => session),
    ),
  ];
  if (names.length === 0) return "";
  const more = names.length > MOST_SESSIONS_NAMED ? " and others" : "";
  return ` Zeroed once only: ${
    names.slice(0, MOST_SESSIONS_NAMED).join(", ")
  }${more}; how the zero scatters is not in that ±.`;
}

/** How many problems are shown in full. */
const MOST_PROBLEMS = 50;

/**
 * Tabulates what could not be read and what looked odd.
 *
 * @param report The report.
 * @returns A table a cell may return; a sentence when there is nothing.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function problemsTable(report: SessionReport): Displayable {
  const { lines, problems } = report.folder;
  const counted =
    `${lines.read} lines of readings were read: ${lines.used} used, ${lines.reported} left out.`;
  if (problems.length === 0) {
    return sentences([counted, "Nothing in the files looked odd."]);
  }
  const rank: Record<Problem["severity"], number> = {
    refused: 0,
    warning: 1,
    note: 2,
  };
  const ordered = groupProblems(
    [...problems].sort((a, b) => rank[a.severity] - rank[b.severity]),
  );
  const rows = ordered.slice(0, MOST_PROBLEMS).map((group) =>
    [group, group.first] as const
  ).map(([group, problem]) => ({
    "": SEVERITY[problem.severity],
    where: whereOf(group),
    what: [
      problem.column === undefined ? "" : `${problem.column}: `,
      (problem.value ?? "") === "" ? "" : `“${problem.value}” — `,
      problem.message,
    ].join(""),
    "what to do": problem.mend ?? problem.expected ?? "",
  }));
  const left = ordered.length - rows.length;
  return table(rows, {
    columns: ["", "where", "what", "what to do"],
    caption: left > 0
      ? `${counted} The first ${rows.length} of ${ordered.length} remarks.`
      : counted,
  });
}

/** The file and every line that a group of problems stands in, twelve at most. */
function whereOf({ first, others }: ProblemGroup): string {
  const lines = [first, ...others].flatMap(({ line }) => line ?? []);
  if (lines.length === 0) return first.file;
  const named = lines.slice(0, 12).join(", ");
  const left = lines.length - 12;
  return `${first.file}, line${lines.length === 1 ? "" : "s"} ${named}${
    left > 0 ? ` and ${left} more` : ""
  }`;
}

const SEVERITY: Record<Problem["severity"], string> = {
  refused: "not used",
  warning: "suspicious",
  note: "note",
};
