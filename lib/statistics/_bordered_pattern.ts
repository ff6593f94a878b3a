/**
 * Where the factor of a mixed model's equations has entries.
 *
 * @module
 */
import type { MixedDesign } from "./_mixed_design.ts";
import { type Graph, minimumDegreeOrder } from "./_minimum_degree.ts";

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
  const graph = symmetricNeighbours(design);
  const { order, sparse } = nodes <= ALL_DENSE
    ? { order: Int32Array.from({ length: nodes }, (_, i) => i), sparse: 0 }
    : minimumDegreeOrder(graph);
  const place = new Int32Array(nodes);
  for (let at = 0; at < nodes; at++) place[order[at]] = at;
  const { start, tailStart, row, referenced } = eliminate(
    graph,
    order,
    place,
    sparse,
  );
  const count = new Float64Array(row.length);

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

/** Rows of each column of the factor, children merged into parents. */
function eliminate(
  graph: Graph,
  order: Int32Array,
  place: Int32Array,
  sparse: number,
): Pick<BorderedPattern, "start" | "tailStart" | "row" | "referenced"> {
  const nodes = order.length;
  const start = new Int32Array(sparse + 1);
  const tailStart = new Int32Array(sparse);
  const referenced = new Uint8Array(nodes);
  const firstChild = new Int32Array(sparse).fill(-1);
  const nextChild = new Int32Array(sparse).fill(-1);
  const mark = new Int32Array(nodes).fill(-1);
  let row = new Int32Array(2 * graph.neighbour.length + 16);
  let end = 0;
  for (let column = 0; column < sparse; column++) {
    const begin = end;
    start[column] = begin;
    mark[column] = column;
    if (end + nodes > row.length) row = grown(row, end + nodes);
    const node = order[column];
    for (let e = graph.start[node]; e < graph.start[node + 1]; e++) {
      const other = place[graph.neighbour[e]];
      if (other > column && mark[other] !== column) {
        mark[other] = column;
        row[end++] = other;
      }
    }
    for (let c = firstChild[column]; c >= 0; c = nextChild[c]) {
      for (let e = start[c]; e < start[c + 1]; e++) {
        const other = row[e];
        if (mark[other] !== column) {
          mark[other] = column;
          row[end++] = other;
        }
      }
    }
    sortStretch(row, begin, end);
    let tail = begin;
    while (tail < end && row[tail] < sparse) referenced[row[tail++]] = 1;
    tailStart[column] = tail;
    if (tail > begin) {
      nextChild[column] = firstChild[row[begin]];
      firstChild[row[begin]] = column;
    }
    start[column + 1] = end;
  }
  return { start, tailStart, row: row.slice(0, end), referenced };
}

/** A longer copy. */
function grown(values: Int32Array, least: number): Int32Array<ArrayBuffer> {
  const longer = new Int32Array(Math.max(least, 2 * values.length));
  longer.set(values);
  return longer;
}

/** Sorts a stretch in place; short ones by insertion. */
function sortStretch(values: Int32Array, from: number, to: number): void {
  if (to - from > 40) {
    values.subarray(from, to).sort();
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const value = values[i];
    let j = i - 1;
    for (; j >= from && values[j] > value; j--) values[j + 1] = values[j];
    values[j + 1] = value;
  }
}

/** For each node the nodes it meets. */
function symmetricNeighbours({ nodes, meetings }: MixedDesign): Graph {
  const start = new Int32Array(nodes + 1);
  for (let node = 0; node < nodes; node++) {
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      start[node + 1]++;
      start[meetings.node[e] + 1]++;
    }
  }
  for (let node = 0; node < nodes; node++) start[node + 1] += start[node];
  const neighbour = new Int32Array(start[nodes]);
  const next = start.slice(0, nodes);
  for (let node = 0; node < nodes; node++) {
    for (let e = meetings.start[node]; e < meetings.start[node + 1]; e++) {
      const other = meetings.node[e];
      neighbour[next[node]++] = other;
      neighbour[next[other]++] = node;
    }
  }
  return { start, neighbour };
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
