/**
 * An order of elimination that keeps a sparse factor sparse.
 *
 * @module
 */

/** Order of elimination, and how many nodes come before the dense remainder. */
export interface EliminationOrder {
  /** Node at each place. */
  readonly order: Int32Array;
  /** Places before the remainder, which is best treated as dense. */
  readonly sparse: number;
}

/** Which nodes meet. */
export interface Graph {
  /** For each node, where its neighbours start; one more at the end. */
  readonly start: Int32Array;
  /** Neighbours, each pair listed from both sides. */
  readonly neighbour: Int32Array;
}

/** Share of possible neighbours above which the remainder counts as dense. */
const DENSE_SHARE = 0.6;

/** At most this many nodes are treated as dense whatever their neighbours. */
const SMALL = 24;

/** Nodes with more neighbours than this times the root of all come last. */
const MANY_NEIGHBOURS = 8;

/**
 * Orders nodes by approximate minimum degree on the quotient graph: eliminated
 * nodes become elements, whose members are neighbours of one another, and an
 * element that lies within a newer one is absorbed by it. A node that meets very
 * many others would be looked at over and over again; it comes last.
 *
 * @see P. R. Amestoy, T. A. Davis, I. S. Duff (1996), SIAM Journal on Matrix
 * Analysis and Applications 17, 886-905.
 */
export function minimumDegreeOrder(
  { start, neighbour }: Graph,
): EliminationOrder {
  const n = start.length - 1;
  const gone = new Uint8Array(n);
  const many = Math.max(SMALL, MANY_NEIGHBOURS * Math.sqrt(n));
  const last: number[] = [];
  for (let node = 0; node < n; node++) {
    if (start[node + 1] - start[node] <= many) continue;
    gone[node] = 1;
    last.push(node);
  }
  /** Neighbours still met directly; undefined while they are as given. */
  const nodes: (number[] | undefined)[] = new Array(n);
  const elements: (number[] | undefined)[] = new Array(n);
  const degree = new Int32Array(n);
  for (let node = 0; node < n; node++) {
    if (gone[node]) continue;
    for (let e = start[node]; e < start[node + 1]; e++) {
      if (!gone[neighbour[e]]) degree[node]++;
    }
  }
  const members: (number[] | undefined)[] = new Array(n);
  const mark = new Int32Array(n).fill(-1);
  const outside = new Int32Array(n);
  const outsideAt = new Int32Array(n).fill(-1);
  const buckets = new Buckets(degree);
  for (const node of last) buckets.remove(node);
  const order = new Int32Array(n);
  let place = 0;
  while (place + last.length < n) {
    const remaining = n - last.length - place;
    const pivot = buckets.least();
    const full = degree[pivot] + last.length;
    const possible = remaining + last.length - 1;
    if (
      possible < SMALL || (degree[pivot] > 0 && full >= DENSE_SHARE * possible)
    ) break;
    buckets.remove(pivot);
    gone[pivot] = 1;
    mark[pivot] = pivot;
    const joined: number[] = [];
    const take = (list: ArrayLike<number>, from: number, to: number) => {
      for (let at = from; at < to; at++) {
        const node = list[at];
        if (!gone[node] && mark[node] !== pivot) {
          mark[node] = pivot;
          joined.push(node);
        }
      }
    };
    const direct = nodes[pivot];
    if (direct) take(direct, 0, direct.length);
    else take(neighbour, start[pivot], start[pivot + 1]);
    for (const element of elements[pivot] ?? []) {
      const list = members[element];
      if (list) take(list, 0, list.length);
      members[element] = undefined;
    }
    members[pivot] = joined;
    for (const node of joined) {
      for (const element of elements[node] ?? []) {
        const list = members[element];
        if (!list) continue;
        if (outsideAt[element] !== pivot) {
          outsideAt[element] = pivot;
          let living = 0;
          for (const member of list) if (!gone[member]) living++;
          outside[element] = living;
        }
        outside[element]--;
      }
    }
    for (const node of joined) {
      const kept: number[] = [];
      let bound = joined.length - 1;
      for (const element of elements[node] ?? []) {
        if (!members[element]) continue;
        if (outside[element] === 0) continue;
        kept.push(element);
        bound += outside[element];
      }
      kept.push(pivot);
      elements[node] = kept;
      const apart: number[] = [];
      const held = nodes[node];
      const list = held ?? neighbour;
      const [from, to] = held
        ? [0, held.length]
        : [start[node], start[node + 1]];
      for (let at = from; at < to; at++) {
        const other = list[at];
        if (!gone[other] && mark[other] !== pivot) apart.push(other);
      }
      nodes[node] = apart;
      bound += apart.length;
      degree[node] = Math.min(bound, remaining - 2);
      buckets.move(node);
    }
    for (const node of joined) {
      for (const element of elements[node] ?? []) {
        if (
          element !== pivot && outside[element] === 0 &&
          outsideAt[element] === pivot
        ) {
          members[element] = undefined;
        }
      }
    }
    order[place++] = pivot;
  }
  const sparse = place;
  for (let node = 0; node < n; node++) if (!gone[node]) order[place++] = node;
  for (const node of last) order[place++] = node;
  return { order, sparse };
}

/** Nodes in doubly linked lists by degree. */
class Buckets {
  readonly #degree: Int32Array;
  readonly #head: Int32Array;
  readonly #next: Int32Array;
  readonly #previous: Int32Array;
  readonly #at: Int32Array;
  #lowest = 0;

  constructor(degree: Int32Array) {
    const n = degree.length;
    this.#degree = degree;
    this.#head = new Int32Array(n + 1).fill(-1);
    this.#next = new Int32Array(n).fill(-1);
    this.#previous = new Int32Array(n).fill(-1);
    this.#at = new Int32Array(n);
    for (let node = n - 1; node >= 0; node--) this.#insert(node);
  }

  #insert(node: number): void {
    const at = this.#degree[node];
    this.#at[node] = at;
    const head = this.#head[at];
    this.#next[node] = head;
    this.#previous[node] = -1;
    if (head >= 0) this.#previous[head] = node;
    this.#head[at] = node;
    if (at < this.#lowest) this.#lowest = at;
  }

  /** A node of lowest degree. */
  least(): number {
    while (this.#head[this.#lowest] < 0) this.#lowest++;
    return this.#head[this.#lowest];
  }

  /** Takes a node out. */
  remove(node: number): void {
    const [before, after] = [this.#previous[node], this.#next[node]];
    if (before >= 0) this.#next[before] = after;
    else this.#head[this.#at[node]] = after;
    if (after >= 0) this.#previous[after] = before;
  }

  /** Puts a node where its degree has moved to. */
  move(node: number): void {
    this.remove(node);
    this.#insert(node);
  }
}
