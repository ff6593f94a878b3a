/**
 * A column of numbers that grows without being copied.
 *
 * @module
 */

/** Numbers in a block, as a power of two. */
const BITS = 15;
const BLOCK = 1 << BITS;

/** A kind of typed array. */
export type NumberArray = Float64Array | Uint32Array;

/**
 * A column of numbers, 8 or 4 bytes each, to which more can be added.
 *
 * It grows by blocks of 32,768, so that a long column is never copied and is
 * never more than a block larger than it must be.
 *
 * @example
 * ```ts
 * import { GrowingNumbers } from "sagbook/numerics/growing_numbers.ts";
 * import { equal } from "node:assert/strict";
 *
 * const sags = new GrowingNumbers(Float64Array);
 * sags.push(0.715);
 * equal(sags.at(0), 0.715);
 * equal(sags.length, 1);
 * ```
 */
export class GrowingNumbers {
  readonly #blocks: NumberArray[] = [];
  readonly #kind: new (length: number) => NumberArray;
  #length = 0;

  /** Sets what a number is kept as. */
  constructor(kind: new (length: number) => NumberArray) {
    this.#kind = kind;
  }

  /** How many numbers it holds. */
  get length(): number {
    return this.#length;
  }

  /** Adds a number. */
  push(value: number): void {
    const within = this.#length & (BLOCK - 1);
    if (within === 0) this.#blocks.push(new this.#kind(BLOCK));
    this.#blocks[this.#length >> BITS][within] = value;
    this.#length++;
  }

  /** The number at an index from 0 to below the length. */
  at(index: number): number {
    return this.#blocks[index >> BITS][index & (BLOCK - 1)];
  }
}
