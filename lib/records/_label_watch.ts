/**
 * Names that differ in a letter's case, a blank or a nought only.
 *
 * @module
 */
import { zeroingLabel } from "./zeroing_label.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** So many names of a kind are told apart. */
const MOST = 10_000;
/** So many pairs are named. */
const MOST_SAID = 10;

const KINDS = ["session", "zeroing", "operator", "grade"] as const;
type Kind = typeof KINDS[number];

/** What a second spelling of each does. */
const EFFECT: Readonly<Record<Kind, string>> = {
  session: "two sessions",
  zeroing: "two zeroings",
  operator: "two people",
  grade: "two surfaces",
};

interface Spelling {
  readonly typed: string;
  readonly line: number;
}

/** A name without what a hand varies: case, blanks, noughts in front. */
function plain(typed: string): string {
  const text = typed.normalize("NFKC").toLowerCase().replace(/[\s_]+/g, "");
  return /^\d+[.,]0+$/.test(text)
    ? text.replace(/[.,]0+$/, "").replace(/^0+(?=\d)/, "")
    : text.replace(/(?<!\d)0+(?=\d)/g, "");
}

/** Watches the names of sessions, zeroings, people and grades. */
export class LabelWatch {
  readonly #seen = new Map<Kind, Map<string, Spelling>>(
    KINDS.map((kind) => [kind, new Map()]),
  );
  readonly #known = new Map<Kind, Set<string>>(
    KINDS.map((kind) => [kind, new Set()]),
  );
  #session: string | undefined;
  #zeroing: string | undefined;
  #operator: string | undefined;
  #grade: string | undefined;
  readonly #problems: Problem[] = [];
  readonly #said = new Set<string>();

  /** Looks at one reading. */
  see(reading: Reading): void {
    const { session, zeroing, operator, grade } = reading;
    if (session !== this.#session) {
      this.#session = session;
      this.#meet("session", session, reading);
    }
    if (zeroing !== this.#zeroing) {
      this.#zeroing = zeroing;
      this.#meet("zeroing", zeroing, reading);
    }
    if (operator !== this.#operator && operator !== undefined) {
      this.#operator = operator;
      this.#meet("operator", operator, reading);
    }
    if (grade !== this.#grade && grade !== undefined) {
      this.#grade = grade;
      this.#meet("grade", grade, reading);
    }
  }

  /** Looks at a name unless it was met before. */
  #meet(kind: Kind, typed: string, reading: Reading): void {
    const known = this.#known.get(kind)!;
    if (known.has(typed) || known.size >= MOST) return;
    known.add(typed);
    this.#compare(kind, typed, reading);
  }

  #compare(kind: Kind, typed: string, reading: Reading): void {
    const known = this.#seen.get(kind)!;
    const within = kind === "zeroing" ? reading.session : "";
    const label = kind === "zeroing" ? zeroingLabel(reading) : typed;
    const key = `${within}\u0000${plain(label)}`;
    const { line, file } = reading;
    const first = known.get(key);
    if (first === undefined) {
      if (known.size < MOST) known.set(key, { typed: label, line });
      return;
    }
    const pair = `${kind} ${within} ${first.typed} ${label}`;
    if (
      first.typed === label || this.#said.has(pair) ||
      this.#said.size >= MOST_SAID
    ) return;
    this.#said.add(pair);
    this.#problems.push({
      severity: "warning",
      code: "two-spellings",
      file,
      line,
      column: kind,
      value: label,
      message:
        `“${label}” here and “${first.typed}” in line ${first.line} were taken for ${
          EFFECT[kind]
        }`,
      mend: "if they are one, write one way in every line",
    });
  }

  /** Every pair of spellings met. */
  problems(): readonly Problem[] {
    return this.#problems;
  }
}
