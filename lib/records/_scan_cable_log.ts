/**
 * What a gauge's data cable wrote: a sign, spaces, a value and its unit.
 *
 * @module
 */
import { cableValue, isCableError } from "./_cable_line.ts";
import { LineReader } from "./_line_reader.ts";
import { tidyColumn } from "./_column_names.ts";
import { TIDY_COLUMNS, type TidyColumn } from "./tidy_columns.ts";
import type { FileAccount } from "./folder.ts";
import { unitOfWord } from "./_read_cell.ts";
import type { ScanSource } from "./_scan_text.ts";

/**
 * Walks a cable's log: a value with its unit in each line, its sign and the
 * date and time before it where the cable writes them.
 *
 * The log names neither session nor zone: `# name: value` lines in it do, and
 * each holds for the lines below it. A value of nought is a look at the flat
 * or an error and is reported, unless the zone in force is the flat.
 */
export function scanCableLog(text: string, source: ScanSource): FileAccount {
  const { file, problems, piece, bench, visit } = source;
  const columns = new Map<TidyColumn, number>(
    TIDY_COLUMNS.map((name, index) => [name, index]),
  );
  const reader = new LineReader({
    file,
    piece,
    bench,
    decimal: { mark: ".", stated: false },
    columns,
    headings: TIDY_COLUMNS,
    unknown: [],
    problems,
  });
  const at = (name: TidyColumn) => columns.get(name) as number;
  const cell = { index: at("reading"), unit: "" };
  const settings: string[] = TIDY_COLUMNS.map(() => "");
  const count = { read: 0, used: 0, reported: 0 };
  let unit = "";
  let order = source.firstOrder;
  const lines = text.split("\n");
  lines.forEach((typed, index) => {
    const line = index + 1;
    const bare = typed.trim();
    if (bare === "") return;
    if (bare.startsWith("#")) {
      const match = /^#\s*([^:=]{1,40})[:=]\s*(.*)$/.exec(bare);
      const name = match === null ? undefined : tidyColumn(match[1]);
      if (name !== undefined && match !== null) settings[at(name)] = match[2];
      return;
    }
    count.read++;
    const refuse = (code: string, message: string, mend: string) => {
      count.reported++;
      problems.add({
        severity: "refused",
        code,
        file,
        line,
        value: bare,
        message,
        mend,
      });
    };
    if (typed.includes("\u0000")) {
      return refuse(
        "cut-off",
        "the line is cut off (it holds NUL bytes)",
        "take the reading again, or type it in",
      );
    }
    const found = cableValue(typed);
    const cut = index === lines.length - 1;
    if (
      found === undefined ||
      unitOfWord(found.unit) === undefined && cut && unit !== ""
    ) {
      return refuse(
        cut && !isCableError(typed) ? "cut-off" : "no-cable-value",
        isCableError(typed)
          ? "the gauge reported an error"
          : cut
          ? "the file ends in the middle of this line"
          : "this is not what the cable writes",
        cut && !isCableError(typed)
          ? "take the reading again, or type it in"
          : "take the line out once you know why",
      );
    }
    const { sign, digits, unit: word, stamp } = found;
    if (unit !== "" && unit !== word.toUpperCase()) {
      problems.add({
        severity: "warning",
        code: "unit-changed",
        file,
        line,
        value: bare,
        message: `the unit changes here from ${unit} to ${word.toUpperCase()}`,
        mend: "check that the unit key was meant to be pressed",
      });
    }
    unit = word.toUpperCase();
    const onFlat = /^flat\b/i.test(settings[at("zone")]);
    if (Number(digits.replace(",", ".")) === 0 && !onFlat) {
      return refuse(
        "zero-reading",
        "a value of nought is a look at the flat or an error, not a surface",
        "put “# zone: flat” above it if it is a look at the flat",
      );
    }
    if (settings[at("session")] === "" || settings[at("zone")] === "") {
      return refuse(
        "no-place",
        `a cable's log says neither session nor zone of this value${
          sign === "" || sign === "+" ? "" : ", and it is negative"
        }`,
        "put lines such as “# session: S1”, “# zeroing: 1”, “# zone: centre” above it, or copy it into readings.csv",
      );
    }
    const row = [...settings];
    row[at("reading")] = `${sign}${digits}`;
    row[at("unit")] = word;
    if (stamp !== "") row[at("taken_at")] = stamp;
    const reading = reader.read(row, line, order, cell);
    if (reading === undefined) {
      count.reported++;
      return;
    }
    count.used++;
    order++;
    visit(reading);
  });
  reader.faults.finish();
  return { file, ...count, layout: "cable log" };
}
