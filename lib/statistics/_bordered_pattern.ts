/**
 * Where the factor of a mixed model's equations has entries.
 *
 * @module
 */
import type { MixedDesign } from "./_mixed_design.ts";
import { minimumDegreeOrder } from "./_minimum_degree.ts";

/** Up to this many levels every entry is kept and nothing is sparse. */
const ALL_DENSE = 160;

/** Pattern of the factor: sparse columns, then a dense remainder. */
export interface BorderedPattern {
  /** Node at each place of the order of elimination. */
  readonly order: Int32Array;
  /** Number of sparse columns. */
  readonly sparse: number;
  /** Number of levels in the dense remainder. */
  readonly tail: number;
  /** Where the entries of each sparse column start; one more at the end. */
  readonly start: Int32Array;
  /** Where its entries in the dense remainder start. */
  readonly tailStart: Int32Array;
  /** Place of the row of each entry, ascending within a column. */
  readonly row: Int32Array;
  /** Readings in which row and column meet; 0 for fill. */
  readonly count: Float64Array;
  /** Whether an earlier column has an entry in this column's row. */
  readonly referenced: Uint8Array;
  /** Entries of the dense remainder below its diagonal: row, column, count. */
  readonly tailRow: Int32Array;
  /** Columns of those entries. */
  readonly tailColumn: Int32Array;
  /** Readings in which row and column meet. */
  readonly tailCount: Float64Array;
}

/** Orders the levels of a design and finds where its factor has entries. */
export function findPattern(design: MixedDesign): BorderedPattern {
  const { nodes, meetings } = design;
  const neighbours = symmetricNeighbours(design);
  const { order, sparse } = nodes <= ALL_DENSE
    ? { order: Int32Array.from({ length: nodes }, (_, i) => i), sparse: 0 }
    : minimumDegreeOrder(neighbours);
  const place = new Int32Array(nodes);
  for (let at = 0; at < nodes; at++) place[order[at]] = at;

  const patterns: Int32Array[] = new Array(sparse);
  const children: number[][] = Array.from({ length: sparse }, () => []);
  const mark = new Int32Array(nodes).fill(-1);
  let entries = 0;
  for (let column = 0; column < sparse; column++) {
    const rows: number[] = [];
    mark[column] = column;
    const take = (row: number) => {
      if (row > column && mark[row] !== column) {
        mark[row] = column;
        rows.push(row);
      }
    };
    for (const node of neighbours[order[column]]) take(place[node]);
    for (const child of children[column]) patterns[child].forEach(take);
    const pattern = Int32Array.from(rows).sort();
    patterns[column] = pattern;
    entries += pattern.length;
    if (pattern.length > 0 && pattern[0] < sparse) {
      children[pattern[0]].push(column);
    }
  }

  const start = new Int32Array(sparse + 1);
  const tailStart = new Int32Array(sparse);
  const row = new Int32Array(entries);
  const count = new Float64Array(entries);
  const referenced = new Uint8Array(nodes);
  let at = 0;
  for (let column = 0; column < sparse; column++) {
    start[column] = at;
    tailStart[column] = at;
    for (const value of patterns[column]) {
      row[at++] = value;
      if (value < sparse) {
        tailStart[column] = at;
        referenced[value] = 1;
      }
    }
  }
  start[sparse] = at;

  const tailRow: number[] = [];
  const tailColumn: number[] = [];
  const tailCount: number[] = [];
  for (let node = 0; node < nodes; node++) {
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      const [a, b] = [place[node], place[meetings.node[e]]];
      const [low, high] = a < b ? [a, b] : [b, a];
      if (low < sparse) {
        count[find(row, start[low], start[low + 1], high)] = meetings.count[e];
      } else {
        tailRow.push(high - sparse);
        tailColumn.push(low - sparse);
        tailCount.push(meetings.count[e]);
      }
    }
  }
  return {
    order,
    sparse,
    tail: nodes - sparse,
    start,
    tailStart,
    row,
    count,
    referenced,
    tailRow: Int32Array.from(tailRow),
    tailColumn: Int32Array.from(tailColumn),
    tailCount: Float64Array.from(tailCount),
  };
}

/** For each node the nodes it meets. */
function symmetricNeighbours({ nodes, meetings }: MixedDesign): Int32Array[] {
  const degree = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) {
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      degree[node]++;
      degree[meetings.node[e]]++;
    }
  }
  const lists = Array.from(degree, (length) => new Int32Array(length));
  degree.fill(0);
  for (let node = 0; node < nodes; node++) {
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      const other = meetings.node[e];
      lists[node][degree[node]++] = other;
      lists[other][degree[other]++] = node;
    }
  }
  return lists;
}

/** Position of a value that is present in an ascending stretch. */
function find(
  values: Int32Array,
  from: number,
  to: number,
  wanted: number,
): number {
  let [low, high] = [from, to - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle] < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
