/**
 * Random numbers that a seed fixes.
 *
 * @module
 */
import { branchKey, splitMix64 } from "./_split_mix.ts";
import { LAYER_EDGE, LAYER_INSIDE, settleDraw } from "./_ziggurat.ts";

const PER_2_52 = 2 ** -52;

/**
 * A stream of random numbers, fixed by its seed on every machine.
 *
 * The bits come from xoshiro128++ (period 2¹²⁸ − 1), started from the seed by
 * SplitMix64. Streams of different seeds and of different forks start at
 * unrelated places; that any two of 10⁶ forks coincide has a chance of 3 × 10⁻⁸
 * (their keys have 64 bits).
 *
 * Not for secrets.
 *
 * @see Blackman and Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Transactions on Mathematical Software 47(4), 2021.
 *
 * @example The same seed gives the same numbers; a fork gives others
 * ```ts
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal, notEqual } from "node:assert/strict";
 *
 * const random = new Random(7);
 * equal(random.uniform(), new Random(7).uniform());
 * notEqual(random.fork("zeroing").normal(), random.fork("repeat").normal());
 * ```
 */
export class Random {
  readonly #key: bigint;
  readonly #state = new Int32Array(4);
  readonly #nextUniform = (): number => this.uniform();

  /**
   * Starts a stream.
   *
   * @param seed A whole number from 0 to 2⁵³ − 1, or the bits of a fork.
   * @throws {RangeError} If the seed is not such a number.
   */
  constructor(seed: number | bigint) {
    if (
      typeof seed === "number" && !(Number.isSafeInteger(seed) && seed >= 0)
    ) {
      throw new RangeError(
        `Cannot start random numbers as the seed must be a whole number from 0 to 2^53 - 1: current value is ${seed}`,
      );
    }
    this.#key = BigInt.asUintN(64, BigInt(seed));
    const words = splitMix64(this.#key);
    for (let half = 0; half < 4; half += 2) {
      const word = words.next().value;
      this.#state[half] = Number(word & 0xffffffffn);
      this.#state[half + 1] = Number(word >> 32n);
    }
  }

  /**
   * Starts a stream that depends on this one's seed and the label alone, not
   * on how many numbers were drawn before.
   *
   * @param label Names the branch; the number 1 and the text "1" differ.
   * @returns A stream of its own.
   */
  fork(label: string | number): Random {
    return new Random(branchKey(this.#key, label));
  }

  /**
   * Draws 32 random bits.
   *
   * @returns A whole number from 0 to 2³² − 1.
   */
  bits(): number {
    return this.#next() >>> 0;
  }

  #next(): number {
    const state = this.#state;
    const s0 = state[0], s1 = state[1], s3 = state[3];
    const sum = (s0 + s3) | 0;
    const s2 = state[2] ^ s0;
    const last = s3 ^ s1;
    state[1] = s1 ^ s2;
    state[0] = s0 ^ last;
    state[2] = s2 ^ (s1 << 9);
    state[3] = (last << 11) | (last >>> 21);
    return (((sum << 7) | (sum >>> 25)) + s0) | 0;
  }

  /**
   * Draws a uniform number.
   *
   * @returns An odd multiple of 2⁻⁵³ between 0 and 1, neither end included.
   */
  uniform(): number {
    const high = this.#next() >>> 6;
    const low = this.#next() >>> 6;
    return (high * 67_108_864 + low + 0.5) * PER_2_52;
  }

  /**
   * Draws a normal number of mean 0 and standard deviation 1, the tails
   * without a cut.
   *
   * @returns A finite number; beyond 6 in one of 5 × 10⁸ draws.
   */
  normal(): number {
    for (;;) {
      const first = this.#next();
      const layer = first & 255;
      const share = ((first >> 8) * 536_870_912 + (this.#next() >>> 3) + 0.5) *
        PER_2_52;
      if (Math.abs(share) < LAYER_INSIDE[layer]) {
        return share * LAYER_EDGE[layer];
      }
      const settled = settleDraw(layer, share, this.#nextUniform);
      if (settled !== undefined) return settled;
    }
  }

  /**
   * Draws a whole number, each of n with the same chance.
   *
   * @param n How many there are, from 1 to 2³².
   * @returns A whole number from 0 to n − 1.
   * @throws {RangeError} If n is not a whole number in that range.
   */
  integer(n: number): number {
    if (!(Number.isInteger(n) && n >= 1 && n <= 2 ** 32)) {
      throw new RangeError(
        `Cannot draw a whole number as their count must be a whole number from 1 to 2^32: current value is ${n}`,
      );
    }
    const usable = 2 ** 32 - (2 ** 32 % n);
    let bits = this.bits();
    while (bits >= usable) bits = this.bits();
    return bits % n;
  }

  /**
   * Copies a list into random order, every order with the same chance.
   *
   * @param items The list; it stays as it is.
   * @returns The same items, shuffled (Fisher and Yates).
   */
  shuffled<Item>(items: readonly Item[]): Item[] {
    const result = [...items];
    for (let last = result.length - 1; last > 0; last--) {
      const other = this.integer(last + 1);
      [result[last], result[other]] = [result[other], result[last]];
    }
    return result;
  }

  /**
   * Fills an array with uniform numbers, the same as {@link Random.uniform}
   * gives one by one.
   *
   * @param target The array to fill.
   */
  fillUniform(target: Float64Array): void {
    const state = this.#state;
    let s0 = state[0], s1 = state[1], s2 = state[2], s3 = state[3];
    for (let i = 0; i < target.length; i++) {
      let sum = (s0 + s3) | 0;
      const high = (((sum << 7) | (sum >>> 25)) + s0) >>> 6;
      let shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
      sum = (s0 + s3) | 0;
      const low = (((sum << 7) | (sum >>> 25)) + s0) >>> 6;
      shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
      target[i] = (high * 67_108_864 + low + 0.5) * PER_2_52;
    }
    state[0] = s0, state[1] = s1, state[2] = s2, state[3] = s3;
  }

  /**
   * Fills an array with normal numbers, the same as {@link Random.normal}
   * gives one by one.
   *
   * @param target The array to fill.
   */
  fillNormal(target: Float64Array): void {
    const state = this.#state;
    const [edges, inside, length] = [LAYER_EDGE, LAYER_INSIDE, target.length];
    let s0 = state[0], s1 = state[1], s2 = state[2], s3 = state[3];
    for (let i = 0; i < length;) {
      let sum = (s0 + s3) | 0;
      const first = (((sum << 7) | (sum >>> 25)) + s0) | 0;
      let shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
      sum = (s0 + s3) | 0;
      const second = (((sum << 7) | (sum >>> 25)) + s0) | 0;
      shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
      const layer = first & 255;
      const share = ((first >> 8) * 536_870_912 + (second >>> 3) + 0.5) *
        PER_2_52;
      if (Math.abs(share) < inside[layer]) {
        target[i++] = share * edges[layer];
        continue;
      }
      state[0] = s0, state[1] = s1, state[2] = s2, state[3] = s3;
      const settled = settleDraw(layer, share, this.#nextUniform);
      s0 = state[0], s1 = state[1], s2 = state[2], s3 = state[3];
      if (settled !== undefined) target[i++] = settled;
    }
    state[0] = s0, state[1] = s1, state[2] = s2, state[3] = s3;
  }
}
