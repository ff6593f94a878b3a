/**
 * The grades as a timeline.
 *
 * @module
 */
import { type Figure, type FigureSettings, svgFigure } from "./figure.ts";
import { dateAxis, dateText, instant } from "./_dates.ts";
import { keyArea, keyOf, keyShape } from "./_key.ts";
import { points } from "./_marks.ts";
import { drawPage } from "./_page.ts";
import { finite, some } from "./_refuse.ts";
import { ROW, rowsAxis } from "./_rows.ts";
import { ink } from "./_theme.ts";
import { written } from "./_ticks.ts";

/** One stretch of work with one grade. */
export interface GradesTimelineFigureStretch {
  /** The grade. */
  readonly grade: string;
  /** ISO date, or date and time, when it began. */
  readonly from: string;
  /** ISO date, or date and time, when it ended; the same day where left out. */
  readonly to?: string;
  /** Work done, in minutes. */
  readonly minutes?: number;
}

/** What `gradesTimelineFigure` draws. */
export interface GradesTimelineFigureInput {
  /** The stretches of work. */
  readonly stretches: readonly GradesTimelineFigureStretch[];
  /** When readings were taken, as ISO dates. */
  readonly sessions?: readonly string[];
}

const ACTION = "the timeline";
const DAY = 86_400_000;

/**
 * Draws a row for each grade, in the order they were first used, with its
 * stretches of work as bars, and the sessions of readings below.
 *
 * Dates are taken as written; the time zone of the machine plays no part.
 *
 * @param input Stretches and sessions with ISO dates.
 * @param settings Title, width.
 * @returns The figure.
 * @throws {RangeError} If there is no stretch, or one ends before it begins.
 * @throws {SyntaxError} If a date is no ISO date.
 *
 * @example
 * ```ts
 * import { gradesTimelineFigure } from "sagbook/figures/grades_timeline_figure.ts";
 * import { match } from "node:assert/strict";
 *
 * const { description } = await gradesTimelineFigure({
 *   stretches: [
 *     { grade: "80", from: "2025-03-01", to: "2025-03-04", minutes: 240 },
 *     { grade: "120", from: "2025-03-05", minutes: 60 },
 *   ],
 * });
 * match(description, /80: 1 Mar 2025 to 4 Mar 2025, 240 minutes; 120: 5 Mar 2025, 60/);
 * ```
 */
export async function gradesTimelineFigure(
  input: GradesTimelineFigureInput,
  settings: FigureSettings = {},
): Promise<Figure> {
  const stretches = some(input.stretches, ACTION, "stretch of work")
    .map(({ grade, from, to = from, minutes }) => {
      const [start, end] = [instant(from, ACTION), instant(to, ACTION)];
      if (end < start) {
        throw new RangeError(
          `Cannot draw ${ACTION} as work with ${grade} must not end before it begins: current value is ${from} to ${to}`,
        );
      }
      if (minutes !== undefined) {
        finite(minutes, ACTION, `the work with ${grade}`, "minutes");
      }
      // A date without a time stands for the whole of its day.
      const whole = to.includes("T") || to.trim().includes(" ") ? 0 : DAY;
      return { grade, start, end, drawnTo: end + whole, minutes };
    });
  const sessions = (input.sessions ?? []).map((at) => instant(at, ACTION));
  const grades = [
    ...new Set(
      [...stretches].sort((a, b) => a.start - b.start).map(({ grade }) =>
        grade
      ),
    ),
  ];
  const sum = (grade: string) => {
    const known = stretches.filter((s) => s.grade === grade)
      .flatMap(({ minutes }) => minutes === undefined ? [] : [minutes]);
    return known.length === 0
      ? undefined
      : `${written(known.reduce((a, b) => a + b), 0)} minutes`;
  };
  const rows = [
    ...grades.map((grade) => {
      const minutes = sum(grade);
      return minutes === undefined ? grade : `${grade}\n${minutes}`;
    }),
    ...(sessions.length > 0 ? ["readings"] : []),
  ];
  const x = dateAxis(
    Math.min(...stretches.map(({ start }) => start), ...sessions),
    Math.max(...stretches.map(({ drawnTo }) => drawnTo), ...sessions),
  );
  const words = grades.map((grade) => {
    const mine = stretches.filter((s) => s.grade === grade);
    const start = dateText(Math.min(...mine.map((s) => s.start)));
    const end = dateText(Math.max(...mine.map((s) => s.end)));
    const minutes = sum(grade);
    return `${grade}: ${start}${end === start ? "" : ` to ${end}`}${
      minutes === undefined ? "" : `, ${minutes}`
    }`;
  });
  return svgFigure(
    await drawPage({
      title: settings.title ?? "The grades, one after the other",
      description: settings.description ??
        `Work by grade. ${words.join("; ")}.${
          sessions.length > 0
            ? ` Readings were taken ${sessions.length} times.`
            : ""
        }`,
      width: settings.width,
      idPrefix: settings.idPrefix,
      key: keyOf(
        keyArea("work", "first"),
        sessions.length > 0 &&
          keyShape("readings taken", "diamond", { fill: "ink", size: 4.5 }),
      ),
      panels: [{
        height: ROW * rows.length,
        x: { ...x, grid: true },
        y: rowsAxis(rows),
        marks: (Plot, area) => {
          const pixel = (x.domain[1] - x.domain[0]) / area.width;
          const bars = stretches.map(({ grade, start, drawnTo }) => {
            const row = grades.indexOf(grade);
            return {
              x1: start,
              x2: Math.max(drawnTo, start + 3 * pixel),
              y1: row - 0.25,
              y2: row + 0.25,
            };
          });
          const times = sessions.map((at) => ({ x: at, y: grades.length }));
          return [
            Plot.rect(bars, {
              x1: "x1",
              x2: "x2",
              y1: "y1",
              y2: "y2",
              fill: ink("first"),
              stroke: ink("paper"),
            }),
            points(Plot, times, "diamond", { fill: "ink", size: 4.5 }),
          ];
        },
      }],
    }),
  );
}
