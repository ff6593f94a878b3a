/**
 * Where each value of a JSON text stands, and where the text goes wrong.
 *
 * @module
 */
import { Fault, scalarLength } from "./_json_scalar.ts";

/** A place in a text, both from 1. */
export interface JsonPlace {
  readonly line: number;
  readonly column: number;
}

/** What is wrong with a JSON text, and the likely mend. */
export interface JsonFault extends JsonPlace {
  readonly message: string;
  readonly mend: string;
  /** The text found there. */
  readonly found: string;
}

/** A map of a JSON text. */
export interface JsonMap {
  /** Place of each value by its path, such as `rings.0.radius`. */
  readonly places: ReadonlyMap<string, JsonPlace>;
  /** Paths of keys that stand twice, with the place of the second. */
  readonly repeated: readonly (readonly [string, JsonPlace])[];
  /** The first fault, if the text is no JSON. */
  readonly fault?: JsonFault;
}

const DEEPEST = 60;

/** Reads a JSON text for places and faults; the value itself is not built. */
export function mapJson(text: string): JsonMap {
  const places = new Map<string, JsonPlace>();
  const repeated: [string, JsonPlace][] = [];
  const starts = [0];
  for (let i = text.indexOf("\n"); i >= 0; i = text.indexOf("\n", i + 1)) {
    starts.push(i + 1);
  }
  const placeOf = (at: number): JsonPlace => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle] <= at) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: at - starts[low] + 1 };
  };
  let at = 0;
  const space = () => {
    while (/[ \t\n\r]/.test(text[at] ?? "x")) at++;
    if (text[at] === "/" && (text[at + 1] === "/" || text[at + 1] === "*")) {
      throw new Fault(
        at,
        "JSON knows no comments",
        'take the comment out, or put it into a "note"',
      );
    }
    if (/[\u00a0\u2000-\u200b\u202f\ufeff]/.test(text[at] ?? "x")) {
      throw new Fault(
        at,
        "an invisible character stands here",
        "delete it and type a plain space",
      );
    }
  };
  const string = (): string => {
    const start = at++;
    for (; at < text.length; at++) {
      if (text[at] === "\\") at++;
      else if (text[at] === '"') {
        at++;
        try {
          return JSON.parse(text.slice(start, at));
        } catch {
          throw new Fault(
            start,
            "this text holds a character that JSON wants escaped",
            String.raw`write \\ for a backslash and \" for an inch mark`,
          );
        }
      } else if (text[at] === "\n") break;
    }
    throw new Fault(
      start,
      "this text has no closing quote",
      String.raw`close it with ", and write an inch mark inside it as \"`,
    );
  };
  const value = (path: string, depth: number): void => {
    space();
    places.set(path, placeOf(at));
    if (depth > DEEPEST) {
      throw new Fault(at, "it is nested too deeply", "take some brackets out");
    }
    const letter = text[at];
    if (letter === "{") return object(path, depth);
    if (letter === "[") return array(path, depth);
    if (letter === '"') return void string();
    at += scalarLength(text, at);
  };
  const object = (path: string, depth: number): void => {
    at++;
    space();
    const keys = new Set<string>();
    if (text[at] === "}") return void at++;
    while (true) {
      space();
      if (text[at] === "}") {
        throw new Fault(
          at,
          "a comma too many stands before this",
          "take the comma before it out",
        );
      }
      if (text[at] !== '"') {
        if (/\d/.test(text[at] ?? "") && /\d,$/.test(text.slice(at - 2, at))) {
          throw new Fault(
            at - 1,
            "a decimal comma stands here",
            "write a point",
          );
        }
        throw new Fault(
          at,
          text[at] === undefined
            ? "the file ends too early"
            : "a name between double quotes is missing here",
          text[at] === undefined
            ? "close every bracket"
            : 'write "name": value',
        );
      }
      const keyAt = at;
      const key = string();
      const inner = path === "" ? key : `${path}.${key}`;
      if (keys.has(key)) repeated.push([inner, placeOf(keyAt)]);
      keys.add(key);
      space();
      if (text[at] !== ":") {
        throw new Fault(
          at,
          `a colon is missing after "${key}"`,
          "write a colon",
        );
      }
      at++;
      value(inner, depth + 1);
      space();
      if (text[at] === ",") {
        at++;
        continue;
      }
      if (text[at] === "}") return void at++;
      throw new Fault(
        at,
        text[at] === undefined
          ? "the file ends too early"
          : "a comma is missing before this",
        text[at] === undefined
          ? "close every bracket"
          : "put a comma at the end of the line before",
      );
    }
  };
  const array = (path: string, depth: number): void => {
    at++;
    space();
    if (text[at] === "]") return void at++;
    for (let i = 0;; i++) {
      value(path === "" ? `${i}` : `${path}.${i}`, depth + 1);
      space();
      if (text[at] === ",") {
        at++;
        continue;
      }
      if (text[at] === "]") return void at++;
      throw new Fault(
        at,
        text[at] === undefined
          ? "the file ends too early"
          : "a comma is missing before this",
        text[at] === undefined ? "close every bracket" : "put a comma between",
      );
    }
  };
  try {
    value("", 0);
    space();
    if (at < text.length) {
      throw new Fault(
        at,
        "something stands after the last bracket",
        "take it out",
      );
    }
    return { places, repeated };
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return {
      places,
      repeated,
      fault: {
        ...placeOf(error.at),
        message: error.message,
        mend: error.mend,
        found: text.slice(error.at, error.at + 30).split("\n")[0],
      },
    };
  }
}
