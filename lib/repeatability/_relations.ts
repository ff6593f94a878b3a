/**
 * How the levels of two factors meet.
 *
 * @module
 */
import type { FactorRelation } from "./surface_design.ts";
import type { FactorCodes } from "./_factor_codes.ts";

/** The number of levels of `second` that each level of `first` meets. */
function meetings(first: FactorCodes, second: FactorCodes): Set<number>[] {
  const met = first.names.map(() => new Set<number>());
  first.codes.forEach((code, index) => {
    const other = second.codes[index];
    if (code !== first.spared && other !== second.spared) met[code].add(other);
  });
  return met.filter((_, level) => level !== first.spared);
}

/** The relation of every two factors; of a nested pair the inner one first. */
export function relationsOf(factors: readonly FactorCodes[]): FactorRelation[] {
  const relations: FactorRelation[] = [];
  for (let i = 0; i < factors.length; i++) {
    for (let j = i + 1; j < factors.length; j++) {
      const [a, b] = [factors[i], factors[j]];
      const [ofA, ofB] = [meetings(a, b), meetings(b, a)];
      const inside = (sets: Set<number>[]): boolean =>
        sets.every(({ size }) => size <= 1);
      const [aInB, bInA] = [inside(ofA), inside(ofB)];
      const full = ofA.every(({ size }) => size === ofB.length);
      relations.push(
        bInA && !aInB
          ? { first: b.source, second: a.source, relation: "nested" }
          : {
            first: a.source,
            second: b.source,
            relation: aInB && bInA
              ? "matched"
              : aInB
              ? "nested"
              : full
              ? "crossed"
              : "partly crossed",
          },
      );
    }
  }
  return relations;
}
