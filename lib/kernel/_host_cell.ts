import { AsyncLocalStorage } from "node:async_hooks";

/** Thrown into a cell that was stopped. */
export class Interrupted extends Error {
  override name = "Interrupted";
  constructor() {
    super("the cell was stopped");
  }
}

/** One run of a cell, as the host sees it. */
export interface HostCell {
  readonly id: number;
  /** Names that have a value. */
  readonly assigned: Set<string>;
  /** What a pager is to show. */
  readonly pages: Record<string, unknown>[];
  /** Rejects each await that has not come back. */
  readonly waiting: Set<(error: Interrupted) => void>;
  interrupted: boolean;
  /** How many awaits were ended because the cell is stopped. */
  refused: number;
  finished: boolean;
}

/** Knows in every callback which cell it comes from. */
export const runningCell: AsyncLocalStorage<HostCell> = new AsyncLocalStorage();

/** Begins a run. */
export function beginCell(id: number): HostCell {
  return {
    id,
    assigned: new Set(),
    pages: [],
    waiting: new Set(),
    interrupted: false,
    refused: 0,
    finished: false,
  };
}

/** Stops a cell at every await it stands at, and at each one to come. */
export function interruptCell(cell: HostCell): void {
  cell.interrupted = true;
  for (const reject of [...cell.waiting]) reject(new Interrupted());
  cell.waiting.clear();
}

/**
 * So many awaits of a stopped cell are ended, for its own tidying up; one that
 * goes on all the same, as a loop does that catches everything, waits for ever
 * from then on, and the event loop can turn.
 */
const PATIENCE = 100;

/** Waits for a value, unless the cell is stopped first. */
export function wait(value: unknown): unknown {
  const cell = runningCell.getStore();
  if (!cell) return value;
  if (cell.interrupted) {
    cell.refused++;
    return cell.refused > PATIENCE
      ? new Promise(() => {})
      : Promise.reject(new Interrupted());
  }
  if (
    value === null || (typeof value !== "object" && typeof value !== "function")
  ) return value;
  return new Promise((resolve, reject) => {
    cell.waiting.add(reject);
    Promise.resolve(value).then(
      (result) => {
        cell.waiting.delete(reject);
        resolve(result);
      },
      (error) => {
        cell.waiting.delete(reject);
        reject(error);
      },
    );
  });
}

/** Loops as `for await` does, each step ended when the cell is stopped. */
export function each(values: unknown): AsyncIterable<unknown> {
  const source = values as AsyncIterable<unknown> & Iterable<unknown>;
  return {
    [Symbol.asyncIterator]() {
      const asynchronous = source[Symbol.asyncIterator];
      const plain = asynchronous === undefined;
      const inner = plain
        ? source[Symbol.iterator]()
        : asynchronous.call(source);
      const step = async (result: unknown) => {
        const { done, value } = await wait(result) as IteratorResult<unknown>;
        return { done, value: plain ? await wait(value) : value };
      };
      return {
        next: () => step(inner.next()) as Promise<IteratorResult<unknown>>,
        return: async (value?: unknown) => {
          await inner.return?.(value);
          return { done: true, value };
        },
      };
    },
  };
}

/** Gives a name its value in the scope that all cells share. */
export function define(name: string, value: unknown): void {
  try {
    Object.defineProperty(globalThis, name, {
      value,
      writable: true,
      enumerable: true,
      configurable: true,
    });
  } catch {
    // A few globals of the language cannot be redefined, only assigned.
    (globalThis as Record<string, unknown>)[name] = value;
  }
}
