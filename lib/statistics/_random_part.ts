/**
 * The random part of a mixed model: level codes and how often levels meet.
 *
 * @module
 */
import type { RandomFactor } from "./mixed_model.ts";

/** One factor with its levels numbered in order of first appearance. */
export interface CodedFactor {
  /** Name of the factor. */
  readonly name: string;
  /** Labels by code. */
  readonly labels: readonly string[];
  /** Code of each reading. */
  readonly codes: Int32Array;
}

/** Numbers the levels of a factor. */
export function codeLevels(factor: RandomFactor): CodedFactor {
  const codeOf = new Map<string | number, number>();
  const { length } = factor.labels;
  const codes = new Int32Array(length);
  for (let i = 0; i < length; i++) {
    const label = factor.labels[i];
    let code = codeOf.get(label);
    if (code === undefined) codeOf.set(label, code = codeOf.size);
    codes[i] = code;
  }
  const labels = Array.from(codeOf.keys(), String);
  return { name: factor.name, labels, codes };
}

/** How often levels of different factors meet, each pair once. */
export interface Meetings {
  /** For each node, where its list of later nodes starts; one more at the end. */
  readonly start: Int32Array;
  /** Later nodes met. */
  readonly node: Int32Array;
  /** Number of readings in which the two meet. */
  readonly count: Float64Array;
}

/**
 * Counts in how many readings each two levels of different factors meet. Nodes
 * are the levels of all factors, numbered one factor after another.
 */
export function countMeetings(
  factors: readonly CodedFactor[],
  offsets: readonly number[],
  nodes: number,
): Meetings {
  const start = new Int32Array(nodes + 1);
  const found: number[] = [];
  const counts: number[] = [];
  const place = new Int32Array(nodes).fill(-1);
  factors.forEach((factor, k) => {
    const { codes } = factor;
    const levels = factor.labels.length;
    const first = new Int32Array(levels + 1);
    for (let i = 0; i < codes.length; i++) first[codes[i] + 1]++;
    for (let level = 0; level < levels; level++) {
      first[level + 1] += first[level];
    }
    const rows = new Int32Array(codes.length);
    const next = first.slice(0, levels);
    for (let i = 0; i < codes.length; i++) rows[next[codes[i]]++] = i;
    for (let level = 0; level < levels; level++) {
      start[offsets[k] + level] = found.length;
      for (let other = k + 1; other < factors.length; other++) {
        const begin = found.length;
        const { codes: otherCodes } = factors[other];
        const offset = offsets[other];
        for (let at = first[level]; at < first[level + 1]; at++) {
          const node = offset + otherCodes[rows[at]];
          if (place[node] < begin) {
            place[node] = found.length;
            found.push(node);
            counts.push(1);
          } else counts[place[node]]++;
        }
      }
    }
  });
  start[nodes] = found.length;
  return {
    start,
    node: Int32Array.from(found),
    count: Float64Array.from(counts),
  };
}
