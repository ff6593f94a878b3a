/**
 * A column of values that repeat, each kept once.
 *
 * @module
 */
import { GrowingNumbers } from "../numerics/growing_numbers.ts";

/** So many values are known at once; a column of distinct ones fills nothing. */
const MOST_KNOWN = 50_000;

/** A text cut out of a file keeps the whole block alive: copy it. */
function ownText<T>(value: T): T {
  return typeof value === "string" ? ` ${value}`.slice(1) as T : value;
}

/**
 * A column of values of any kind: nothing a reading while all are equal, four
 * bytes a reading once they are not, and each value once.
 */
export class CodedColumn<T> {
  readonly #values: T[] = [];
  readonly #known = new Map<unknown, number>();
  readonly #keyOf: (value: T) => unknown;
  #codes: GrowingNumbers | undefined;
  #length = 0;
  #last: T | undefined;
  #lastCode = -1;

  /** Sets what makes two values one; themselves unless told. */
  constructor(keyOf: (value: T) => unknown = (value) => value) {
    this.#keyOf = keyOf;
  }

  /** Adds a value. */
  push(value: T): void {
    const code = this.#lastCode >= 0 && value === this.#last
      ? this.#lastCode
      : this.#codeOf(value);
    if (code > 0 && this.#codes === undefined) {
      this.#codes = new GrowingNumbers(Uint32Array);
      for (let i = 0; i < this.#length; i++) this.#codes.push(0);
    }
    this.#codes?.push(code);
    this.#length++;
    this.#last = value;
    this.#lastCode = code;
  }

  #codeOf(value: T): number {
    const key = this.#keyOf(value);
    let code = this.#known.get(key);
    if (code === undefined) {
      if (this.#known.size >= MOST_KNOWN) this.#known.clear();
      code = this.#values.push(ownText(value)) - 1;
      this.#known.set(key, code);
    }
    return code;
  }

  /** The value at an index. */
  at(index: number): T {
    return this.#values[this.#codes === undefined ? 0 : this.#codes.at(index)];
  }
}
