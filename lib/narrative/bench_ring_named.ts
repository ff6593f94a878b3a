/**
 * Which ring of the bench was meant.
 *
 * @module
 */
import type { Bench, Ring } from "../records/bench.ts";

/**
 * Finds a ring by its name, in any case, the word “ring” before it or not.
 *
 * @param bench The bench.
 * @param name The name as typed; the only ring of the bench unless given.
 * @returns The ring, or a sentence that says which there are.
 *
 * @example
 * ```ts
 * import { ringNamed } from "sagbook/narrative/bench_ring_named.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { bench } = await readPieceFolder("data/metric-250");
 * equal(ringNamed(bench, "100"), bench.rings[0]);
 * equal(ringNamed(bench, "B"), "There is no ring “B” on this bench; it has “ring 100”.");
 * ```
 */
export function ringNamed(bench: Bench, name?: string): Ring | string {
  const { rings } = bench;
  const known = rings.map(({ id }) => id).join(", ");
  if (name === undefined) {
    return rings.length === 1
      ? rings[0]
      : `This bench has several rings; name one with --ring: ${known}.`;
  }
  return rings.find(({ id }) => id === name) ??
    rings.find(({ id }) => id.toLowerCase() === name.toLowerCase()) ??
    rings.find(({ id }) => id.toLowerCase() === `ring ${name.toLowerCase()}`) ??
    `There is no ring “${name.slice(0, 40)}” on this bench; it has ${
      rings.map(({ id }) => `“${id}”`).join(", ")
    }.`;
}
