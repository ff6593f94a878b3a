/**
 * A column of a table as it shows, taken apart into numbers and their unit.
 *
 * @module
 */

/** A column for a file: its name, with the unit, and a text for each row. */
export interface FileColumn {
  readonly name: string;
  readonly cells: readonly string[];
}

const NUMBER = "([+\u2212-]?\\d+(?:\\.\\d+)?(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?)";
const UNIT =
  "(?: (1/mm|1/in|mm|µm|nm|m|in|thou|µin|ppm|%|‰|°|°C|K|dpt|D|s|min|h|d|minutes|wets|sets)|(°))?";

/** How a cell may be written, with what its numbers are called. */
const FORMS: readonly {
  readonly pattern: RegExp;
  readonly names: readonly string[];
}[] = [
  { pattern: new RegExp(`^${NUMBER}${UNIT}$`), names: [""] },
  { pattern: new RegExp(`^${NUMBER} ± ${NUMBER}${UNIT}$`), names: ["", " ±"] },
  {
    pattern: new RegExp(`^${NUMBER}${UNIT} to ${NUMBER}${UNIT}$`),
    names: [" low", " high"],
  },
  {
    pattern: new RegExp(
      `^${NUMBER}${UNIT} \\(${NUMBER}${UNIT} to ${NUMBER}${UNIT}\\)$`,
    ),
    names: ["", " low", " high"],
  },
];
const ORDER = ["", " ±", " low", " high"];
const LENGTH = /^(mm|µm|nm|m|in|thou|µin)$/;
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A number as it shows, as a program reads it, digit for digit. */
function plainNumber(shown: string): string {
  return shown.replace("\u2212", "-").replace(
    / × 10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)/,
    (_, power: string) =>
      `e${
        [...power].map((one) => one === "⁻" ? "-" : RAISED.indexOf(one))
          .join("")
      }`,
  );
}

interface Read {
  readonly form: number;
  readonly unit: string;
  readonly numbers: readonly string[];
}

function read(cell: string): Read | undefined {
  for (const [form, { pattern }] of FORMS.entries()) {
    const found = pattern.exec(cell);
    if (found === null) continue;
    const parts = found.slice(1).filter((part) => part !== undefined);
    const isNumber = (part: string) =>
      /^[+\u2212-]?\d/.test(part) && !part.startsWith("1/");
    const units = new Set(parts.filter((part) => !isNumber(part)));
    if (units.size > 1) return undefined;
    return {
      form,
      unit: [...units][0] ?? "",
      numbers: parts.filter(isNumber).map(plainNumber),
    };
  }
  return undefined;
}

const isBlank = (cell: string): boolean => cell === "" || /^[—–-]$/.test(cell);

/** The name with its unit in brackets. */
function withUnit(name: string, unit: string): string {
  return unit === "" ? name : name === "" ? unit : `${name} (${unit})`;
}

/**
 * Takes a column apart: where its cells are numbers in one unit, perhaps with
 * an interval, each number gets a column of its own and the unit stands in the
 * name. Words between them ("needs two sets") stay, in the first of these.
 * Single numbers in several units get a column for the unit.
 *
 * A column with words beside per cents (a zone called "50 %") stays as it
 * shows, but for bare numbers, whose minus becomes one that a program reads.
 */
export function fileColumns(
  name: string,
  cells: readonly string[],
): readonly FileColumn[] {
  const found = cells.map(read);
  const numbers = found.filter((one) => one !== undefined);
  const said = cells.filter((cell, i) => !isBlank(cell) && !found[i]);
  const units = new Set(numbers.map(({ unit }) => unit));
  const [unit = ""] = units;
  const isSingle = numbers.every(({ form }) => form === 0);
  if (units.size > 1 && said.length === 0 && isSingle) {
    return [
      { name, cells: found.map((one) => one?.numbers[0] ?? "") },
      { name: `unit of ${name}`, cells: found.map((one) => one?.unit ?? "") },
    ];
  }
  const isTold = LENGTH.test(unit) ||
    said.every((cell) => unit !== "" && cell.endsWith(` ${unit}`));
  if (units.size !== 1 || !isTold) {
    return [{
      name,
      cells: cells.map((cell, i) =>
        found[i]?.form === 0 && found[i].unit === ""
          ? found[i].numbers[0]
          : cell
      ),
    }];
  }
  const parts = [...new Set(numbers.flatMap(({ form }) => FORMS[form].names))]
    .sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b));
  return parts.map((part, place) => ({
    name: withUnit(`${name}${part}`, unit),
    cells: cells.map((cell, i) => {
      const one = found[i];
      if (one === undefined) return place === 0 && !isBlank(cell) ? cell : "";
      const number = one.numbers[FORMS[one.form].names.indexOf(part)] ?? "";
      return unit === "" ? number : number.replace(/^\+/, "");
    }),
  }));
}
