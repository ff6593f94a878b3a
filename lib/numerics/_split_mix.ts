/**
 * Turning seeds and labels into well-mixed 64-bit words.
 *
 * @module
 */

const WORD = (1n << 64n) - 1n;
const GOLDEN = 0x9e3779b97f4a7c15n;

/**
 * The SplitMix64 sequence from a 64-bit state.
 *
 * @see Steele, Lea and Flood, "Fast splittable pseudorandom number
 * generators", OOPSLA 2014; the constants are those of the public-domain
 * reference program by Vigna.
 */
export function* splitMix64(state: bigint): Generator<bigint, never> {
  let word = state & WORD;
  while (true) {
    word = (word + GOLDEN) & WORD;
    let mixed = word;
    mixed = ((mixed ^ (mixed >> 30n)) * 0xbf58476d1ce4e5b9n) & WORD;
    mixed = ((mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn) & WORD;
    yield mixed ^ (mixed >> 31n);
  }
}

/**
 * The 64-bit FNV-1a hash of a text's UTF-8 bytes.
 *
 * @see Fowler, Noll and Vo, "The FNV non-cryptographic hash algorithm"
 * (offset basis and prime).
 */
export function hash64(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) {
    hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & WORD;
  }
  return hash;
}

/** The key of a branch: the trunk's key and the label, mixed together. */
export function branchKey(key: bigint, label: string | number): bigint {
  const name = `${typeof label} ${label}`;
  return splitMix64(key ^ hash64(name)).next().value;
}
