/**
 * The one-page record that goes with a finished optic.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { markup } from "../display/markup.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { HistoryReport } from "./history_report.ts";
import { writeRadius } from "./write_radius.ts";
import { measuredHow } from "./shop_piece.ts";
import { sphericitySentence } from "./sphericity_sentence.ts";

/** One line of the record. */
interface RecordLine {
  readonly name: string;
  readonly value: string;
}

/**
 * Makes the record of a piece: a page of its own when it is printed.
 *
 * What was measured on the finished piece stands in it where the report knows
 * it from a list of finished pieces.
 *
 * @param report Its history.
 * @returns A value a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function pieceRecord(report: HistoryReport): Displayable {
  const { folder: { piece } } = report;
  const lines = recordLines(report);
  const title = `Record of ${piece.name}`;
  const unseen = report.unseen;
  const note = piece.invented
    ? "Invented demonstration data: no such piece exists."
    : undefined;
  const html =
    markup`<section class="record" style="break-before:page;break-after:page;break-inside:avoid"><h2>${title}</h2>${
      note === undefined ? "" : markup`<p><em>${note}</em></p>`
    }<table><caption>Ground surface, with 95 % uncertainties</caption><tbody>${
      lines.map(({ name, value }) =>
        markup`<tr><th scope="row">${name}</th><td>${value}</td></tr>`
      )
    }</tbody></table><h3>What could not have been seen</h3><ul>${
      unseen.map((sentence) => markup`<li>${sentence}</li>`)
    }</ul></section>`;
  const text = [
    title,
    ...(note === undefined ? [] : [note]),
    ...lines.map(({ name, value }) => `${name}: ${value}`),
    "What could not have been seen:",
    ...unseen.map((sentence) => `- ${sentence}`),
  ].join("\n");
  return {
    [jupyterDisplay]: () => ({ "text/plain": text, "text/html": html.html }),
  };
}

function recordLines(
  { folder: { piece, bench }, points, radius, timeline, finished }:
    HistoryReport,
): readonly RecordLine[] {
  const { unit } = piece;
  const size = (length: number): string =>
    formatLength(millimetres(length), unit, unit === "mm" ? 0 : 2);
  const lines: RecordLine[] = [];
  const add = (name: string, value: string | undefined): void => {
    if (value !== undefined && value !== "") lines.push({ name, value });
  };
  add("Glass", piece.glass);
  add("Diameter", size(piece.diameter));
  add("Thickness", piece.thickness && size(piece.thickness));
  add("Surface", piece.form);
  const last =
    points.find(({ session }) =>
      session.session === timeline.sessions.at(-1)?.session
    ) ?? points.at(-1);
  if (radius !== undefined) {
    add(
      "Radius of curvature at the end of grinding",
      `${writeRadius(radius, unit)}${
        radius.covers === "everything"
          ? ""
          : " (one zeroing: its scatter is not in it)"
      }`,
    );
    if (piece.form === "concave" && piece.lens === undefined) {
      add(
        "Focal length of that sphere",
        writeRadius(radius, unit, 0.5),
      );
    }
  }
  if (finished !== undefined) {
    const { focalLength, focalLengthUncertainty: u, figuring } = finished;
    const how = measuredHow(finished, unit);
    add(
      "Focal length of the finished piece",
      `${
        u === undefined
          ? `${
            formatLength(focalLength, unit, unit === "mm" ? 0 : 2)
          }, its uncertainty not stated`
          : formatWithUncertainty(focalLength, millimetres(2 * u), unit)
      }${how === undefined ? "" : `, ${how}`}`,
    );
    add("Figured to", figuring);
  }
  if (last !== undefined) {
    const { session } = last;
    add("Sphericity at the end of grinding", sphericitySentence(session, unit));
    add(
      "How measured",
      `${session.readings.length} readings in ${session.sets.length} sets on ${session.whole.mean.zeroings} zeroings with ${
        ringName(session.ring.id)
      } and ${bench.gauge.id}${
        session.takenAt === undefined ? "" : `, ${session.takenAt.slice(0, 10)}`
      }`,
    );
    add(
      "Uncertainty counts",
      radius?.budget.lines.map(({ source }) => source).join(", "),
    );
    add("Uncertainty leaves out", radius?.budget.notCounted.join(", "));
  }
  const dates = timeline.entries.flatMap(({ date }) =>
    date === undefined ? [] : [date]
  ).sort();
  if (dates.length > 0) {
    add("Worked", `${dates[0]} to ${dates[dates.length - 1]}`);
  }
  const grades = [
    ...new Set(
      timeline.entries.flatMap(({ grade }) =>
        grade === undefined ? [] : [grade]
      ),
    ),
  ];
  add("Grades", grades.join(", "));
  add("Note", piece.note);
  return lines;
}
