/**
 * Lengths, dates and fractions of a JSON file to numbers, problems gathered.
 *
 * @module
 */
import { familyOf } from "../units/unit_family.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import type { JsonMap } from "./_json_map.ts";
import type { LengthText } from "./piece_file.ts";
import type { Problem } from "./problem.ts";
import { readLength, splitUnit, UNIT_LIST, unitOfWord } from "./_read_cell.ts";

/** What a length has to be. */
export type Bound = "above 0" | "0 or more" | "any";

/** Of a radius written by a drawing's rule of signs. */
const UNSIGNED =
  "write it without its sign: which way a surface curves is said by its form";

/** Reads the values of one JSON file. */
export class FileLengths {
  /** Everything wrong so far. */
  readonly problems: Problem[];
  readonly #file: string;
  readonly #map: JsonMap;

  /** Sets the file and where its values stand. */
  constructor(file: string, map: JsonMap, problems: Problem[]) {
    this.#file = file;
    this.#map = map;
    this.problems = problems;
  }

  /** How many of the problems are refusals. */
  get refusals(): number {
    return this.problems.filter((one) => one.severity === "refused").length;
  }

  /** The unit a length was written in, if it names one that is known. */
  unitOf(value: LengthText): "mm" | "in" | undefined {
    const word = typeof value === "string" ? splitUnit(value).unit : value.unit;
    const unit = word === undefined ? undefined : unitOfWord(word);
    return unit === undefined ? undefined : familyOf(unit);
  }

  /** Says something about the value at a path. */
  say(
    severity: Problem["severity"],
    code: string,
    path: string,
    message: string,
    rest: Partial<Problem> = {},
  ): undefined {
    const place = this.#map.places.get(path);
    this.problems.push({
      severity,
      code,
      file: this.#file,
      ...(place === undefined ? {} : { line: place.line }),
      column: path,
      message,
      ...rest,
    });
    return undefined;
  }

  /** Reads a length, in mm; `undefined` when absent or refused. */
  length(
    value: LengthText | undefined,
    path: string,
    bound: Bound = "above 0",
  ): Millimetres | undefined {
    if (value === undefined) return undefined;
    const found = this.#millimetres(value, path);
    if (found === undefined) return undefined;
    const low = bound === "above 0"
      ? found <= 0
      : bound === "0 or more" && found < 0;
    if (low) {
      const isRadius = found < 0 && path.endsWith("radius");
      return this.say("refused", "wrong-value", path, `this must be ${bound}`, {
        value: typeof value === "string"
          ? value
          : `${value.value} ${value.unit}`,
        ...(isRadius ? { mend: UNSIGNED } : {}),
      });
    }
    return millimetres(found);
  }

  #millimetres(value: LengthText, path: string): number | undefined {
    const refuse = (message: string, mend: string) =>
      this.say("refused", "not-a-length", path, message, {
        value: typeof value === "string" ? value : JSON.stringify(value),
        expected: 'a length with its unit, such as "300 mm" or "11 13/16 in"',
        mend,
      });
    const typed = typeof value === "string"
      ? value
      : `${value.value} ${value.unit}`;
    const read = readLength(
      typed,
      { mark: ".", stated: false },
      undefined,
    );
    if (read.kind === "blank") {
      return refuse("this is blank", "write a number and its unit");
    }
    if (read.kind === "refused") {
      const number = splitUnit(typed).number;
      return read.part === "missing unit"
        ? refuse(
          "this length has no unit",
          `write "${number} mm" or "${number} in"`,
        )
        : read.part === "unit"
        ? refuse("its unit is not known here", `use one of ${UNIT_LIST}`)
        : refuse(
          `this is not a length: ${read.reason}`,
          "write a number and its unit",
        );
    }
    if (read.kind === "ambiguous") {
      const [one, other] = read.amounts;
      return refuse(
        `this can be read two ways: ${one} ${read.unit} or ${other} ${read.unit}`,
        `write "${one.toFixed(4)} ${read.unit}" or "${other} ${read.unit}"`,
      );
    }
    return read.value;
  }
}
