/**
 * The text of `tests/studies/RESULTS.md`, a section for each study.
 *
 * @module
 */
import {
  ALLOWED_ERRORS,
  holds,
  pooled,
  slackAt,
  type Study,
  type StudyRow,
} from "./_study.ts";

const HEAD = `# What the simulations show

Made by \`deno task study\`; the seeds were fixed before any result was seen. Every
bound allows ${ALLOWED_ERRORS} simulation errors of one seed's repetitions where the value is a
share of them. All seeds together are held against it: what breaks it is marked
✗. A single seed beyond it is marked · and is no failure, since of values that
lie at the very bound one in 40 is beyond it by chance.
`;

const mark = (name: string): string => `<!-- study ${name} -->`;

/** The sections of a file of results, by study; others are left out. */
export function readSections(
  text: string,
  names: readonly string[],
): Map<string, string> {
  const sections = new Map<string, string>();
  const parts = text.split(/^<!-- study (.*) -->\n/m);
  for (let k = 1; k + 1 < parts.length; k += 2) {
    if (names.includes(parts[k])) sections.set(parts[k], parts[k + 1].trim());
  }
  return sections;
}

/** The whole file. */
export function writeResults(sections: ReadonlyMap<string, string>): string {
  const parts = [...sections].sort(([a], [b]) => a < b ? -1 : 1)
    .map(([name, text]) => `${mark(name)}\n\n${text}\n`);
  return [HEAD, ...parts].join("\n");
}

function written({ as = "share" }: StudyRow, value: number): string {
  return as === "share"
    ? (100 * value).toFixed(1)
    : String(Number(value.toPrecision(4)));
}

function bounds(row: StudyRow): string {
  const { atLeast, atMost } = row;
  const low = atLeast === undefined
    ? ""
    : `≥ ${written(row, atLeast - slackAt(atLeast, row))}`;
  const high = atMost === undefined
    ? ""
    : `≤ ${written(row, atMost + slackAt(atMost, row))}`;
  return [low, high].filter((part) => part !== "").join(", ");
}

/** One study's section, and how many of its bounds are broken. */
export function section(
  study: Study,
  seeds: readonly number[],
  bySeed: readonly (readonly StudyRow[])[],
  made: { readonly date: string; readonly versions: string },
): { text: string; broken: number } {
  const all = pooled(bySeed);
  const lines = all.map((row, k) => {
    const each = bySeed.map((rows) =>
      `${written(row, rows[k].value)}${holds(rows[k]) ? "" : " ·"}`
    );
    const verdict = holds(row) ? "" : " ✗";
    const unit = (row.as ?? "share") === "share" ? ", %" : "";
    return [
      row.case,
      `${row.measure}${unit}`,
      bounds(row),
      `${written(row, row.value)}${verdict}`,
      ...each,
    ];
  });
  const header = [
    "case",
    "measure",
    "bound",
    "all",
    ...seeds.map((seed) => `seed ${seed}`),
  ];
  const table = [header, header.map((_, k) => k < 2 ? "---" : "---:"), ...lines]
    .map((cells) => `| ${cells.join(" | ")} |`);
  return {
    text: [
      `## ${study.title}`,
      `${made.date}, ${made.versions}, seeds ${seeds.join(", ")}.`,
      ...(study.about === undefined ? [] : [study.about.trim()]),
      table.join("\n"),
    ].join("\n\n"),
    broken: all.filter((row) => !holds(row)).length,
  };
}
