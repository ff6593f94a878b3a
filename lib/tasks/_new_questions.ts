/**
 * What a new folder needs to know: from flags, or asked at the terminal.
 *
 * @module
 */
import { resolve } from "node:path";
import { withoutPlusMinus } from "../records/without_plus_minus.ts";
import { parseLength } from "../units/parse_length.ts";
import { say } from "./_terminal.ts";

/** An answer that was understood, or why it was not. */
export type Answer<T> =
  | { readonly value: T }
  | { readonly fault: string };

/** Reads an answer as text. */
export function asText(typed: string): Answer<string> {
  const value = typed.trim();
  return value === "" ? { fault: "type something" } : { value };
}

/** Reads an answer as one of some words. */
export function asWord<W extends string>(...words: readonly W[]) {
  return (typed: string): Answer<W> => {
    const plain = typed.trim().toLowerCase();
    const found = words.find((word) => word === plain);
    return found === undefined
      ? { fault: `answer ${words.join(" or ")}` }
      : { value: found };
  };
}

/** Reads an answer as a length; a bare number takes the unit given. */
export function asLength(unit: "mm" | "in", least: "above 0" | "0 or more") {
  return (typed: string): Answer<string> => {
    const read = parseLength(typed, { decimal: ".", defaultUnit: unit });
    if (read.kind === "blank") return { fault: "type a length" };
    if (read.kind === "refused") return { fault: read.reason };
    if (read.kind === "ambiguous") {
      return {
        fault: `it can be read as ${read.amounts.join(" or ")} ${read.unit}`,
      };
    }
    const low = least === "above 0" ? read.value <= 0 : read.value < 0;
    if (low) {
      return {
        fault: read.value < 0
          ? `it must be ${least}; write it without its sign (the form says which way a surface curves)`
          : `it must be ${least}`,
      };
    }
    const text = typed.trim();
    return { value: read.unitAssumed ? `${text} ${unit}` : text };
  };
}

/** Reads how far from a length is still good, with or without a ± before it. */
export function asTolerance(unit: "mm" | "in") {
  const length = asLength(unit, "above 0");
  return (typed: string): Answer<string> => length(withoutPlusMinus(typed));
}

/** A plain number; a comma between figures is a decimal one. */
const plainNumber = (text: string): number =>
  Number(text.trim().replace(/^(\d*),(\d+)$/, "$1.$2"));

/** Reads an answer as the radius of a ring that the work is to carry. */
export function asRingRadius(unit: "mm" | "in", diameter: string) {
  const asRadius = asLength(unit, "above 0");
  const size = (text: string): number => {
    const read = parseLength(text, { decimal: ".", defaultUnit: unit });
    return read.kind === "length" ? read.value : Infinity;
  };
  return (typed: string): Answer<string> => {
    const found = asRadius(typed);
    return "value" in found && 2 * size(found.value) >= size(diameter)
      ? {
        fault:
          `a circle of that radius is wider than the work (${diameter}); half its diameter is asked for`,
      }
      : found;
  };
}

/** Reads an answer as a bench file, as it is seen from a folder. */
export function asBench(folder: string) {
  return (typed: string): Answer<string> => {
    const found = asText(typed);
    if (!("value" in found)) return found;
    try {
      if (Deno.statSync(resolve(folder, found.value)).isFile) return found;
    } catch {
      // It is not there, or may not be looked at: the same for who answers.
    }
    return {
      fault:
        `no such file is seen from the new folder; name one such as ../bench.json`,
    };
  };
}

/** Reads an answer as a number above 0. */
export function asRatio(typed: string): Answer<number> {
  const value = plainNumber(typed.trim().replace(/^f\s*\/\s*/i, ""));
  return Number.isFinite(value) && value > 0 && typed.trim() !== ""
    ? { value }
    : { fault: "type a number such as 5" };
}

/** Reads how far from a focal ratio is still good: a plain number. */
export function asRatioTolerance(typed: string): Answer<number> {
  const value = plainNumber(typed.trim().replace(/^±\s*/, ""));
  return Number.isFinite(value) && value > 0 && typed.trim() !== ""
    ? { value }
    : {
      fault:
        "beside a focal ratio it is a plain number such as 0.05; to give a length, state the target as radius or focal length",
    };
}

/** Thrown when a value is missing or cannot be read; the words are for the user. */
export class QuestionError extends Error {}

/** Where answers come from. */
export interface AnswerSource {
  /** The flags of the command line. */
  readonly flags: Readonly<Record<string, string | true>>;
  /** Asks at the terminal; `undefined` where there is none. */
  readonly ask?: (question: string) => string | null;
  /** Takes the names of the flags that were looked at. */
  readonly used?: Set<string>;
}

const TRIES = 5;

/**
 * Finds one answer: the flag's, else the terminal's.
 *
 * @returns The value, or `undefined` for an optional one left blank.
 * @throws {QuestionError} If a flag cannot be read, or a required value is
 * given neither by a flag nor at a terminal.
 */
export function answer<T>(
  source: AnswerSource,
  flag: string,
  question: string,
  read: (typed: string) => Answer<T>,
  required: boolean,
): T | undefined {
  const given = source.flags[flag];
  source.used?.add(flag);
  if (typeof given === "string") {
    const found = read(given);
    if ("value" in found) return found.value;
    throw new QuestionError(
      `--${flag} “${given.slice(0, 60)}” cannot be used: ${found.fault}.`,
    );
  }
  if (source.ask === undefined) {
    if (!required) return undefined;
    throw new QuestionError(
      `--${flag} is missing (${question}), and there is no terminal to ask at.`,
    );
  }
  for (let i = 0; i < TRIES; i++) {
    const typed = source.ask(
      `${question}${required ? "" : " (leave blank to skip)"}:`,
    );
    if (typed === null || typed.trim() === "") {
      if (!required) return undefined;
      if (typed === null) break;
      continue;
    }
    const found = read(typed);
    if ("value" in found) return found.value;
    say(`  ${found.fault}`);
  }
  throw new QuestionError(`No answer to “${question}”: nothing was written.`);
}
