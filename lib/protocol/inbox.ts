/**
 * A queue between the code that receives and the code that handles.
 *
 * @module
 */

/**
 * Hands values from a producer to one consumer in the order of arrival.
 *
 * A socket's reader must never wait for the handler of the last message, or a
 * long-running cell would stop the heartbeat; so arrival and handling meet in
 * a queue. Nothing is dropped; the queue holds what has not been taken.
 *
 * @example Values arrive in order, and the loop ends when the inbox is closed
 * ```ts
 * import { Inbox } from "sagbook/protocol/inbox.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const inbox = new Inbox<number>();
 * inbox.push(1);
 * inbox.push(2);
 * inbox.close();
 * deepEqual(await Array.fromAsync(inbox), [1, 2]);
 * ```
 */
export class Inbox<T> implements AsyncIterable<T> {
  #waiting: ((result: IteratorResult<T>) => void)[] = [];
  #values: T[] = [];
  #head = 0;
  #closed = false;

  /** Adds a value; ignored after {@linkcode Inbox.close}. */
  push(value: T): void {
    if (this.#closed) return;
    const taker = this.#waiting.shift();
    if (taker) taker({ done: false, value });
    else this.#values.push(value);
  }

  /** Ends the loop of the consumer once it has taken what is left. */
  close(): void {
    this.#closed = true;
    for (const taker of this.#waiting.splice(0)) {
      taker({ done: true, value: undefined });
    }
  }

  /** Takes the next value, or `done` once closed and empty. */
  take(): Promise<IteratorResult<T>> {
    if (this.#head < this.#values.length) {
      const value = this.#values[this.#head++];
      if (this.#head > 1024 && this.#head * 2 > this.#values.length) {
        this.#values = this.#values.slice(this.#head);
        this.#head = 0;
      }
      if (this.#head === this.#values.length) {
        this.#values = [];
        this.#head = 0;
      }
      return Promise.resolve({ done: false, value });
    }
    if (this.#closed) return Promise.resolve({ done: true, value: undefined });
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  /** Loops over the values until the inbox is closed. */
  [Symbol.asyncIterator](): AsyncIterator<T> {
    return { next: () => this.take() };
  }
}
