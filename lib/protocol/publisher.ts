/**
 * The socket that sends each message to all who want it.
 *
 * @module
 */
import { Bound } from "./_bound.ts";
import type { Peer } from "./_peer.ts";
import type { Endpoint } from "./endpoint.ts";

/**
 * Sends each message to every subscriber whose prefix matches (ZMTP PUB).
 *
 * Who connects later misses what was sent before. Nothing is dropped for a
 * slow reader: what it has not read waits in memory, since a notebook's output
 * must be complete.
 *
 * @see ZeroMQ RFC 23/ZMTP 3.0 and RFC 29/PUBSUB.
 *
 * @example A subscriber gets the topics it asked for
 * ```ts
 * import { Publisher } from "sagbook/protocol/publisher.ts";
 * import { Subscriber } from "sagbook/protocol/subscriber.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
 * const subscriber = await Subscriber.connect(
 *   { hostname: "127.0.0.1", port: publisher.port },
 *   { prefix: Uint8Array.of(7) },
 * );
 * await publisher.subscribed();
 * publisher.send([Uint8Array.of(8)]);
 * publisher.send([Uint8Array.of(7, 1)]);
 * deepEqual((await subscriber.inbox.take()).value, [Uint8Array.of(7, 1)]);
 * subscriber.close();
 * await publisher.close();
 * ```
 */
export class Publisher {
  #bound: Bound;
  #prefixes = new Map<Peer, Uint8Array[]>();
  #waiting: (() => void)[] = [];

  /**
   * Listens on a port.
   *
   * @param at Loopback address; port 0 takes a free one.
   * @throws {Deno.errors.AddrInUse} If another process has the port.
   */
  constructor(at: Endpoint) {
    this.#bound = new Bound(at, "PUB", {
      joined: (peer) => this.#prefixes.set(peer, []),
      message: (peer, frames) => {
        const [kind, ...prefix] = frames.length === 1 ? frames[0] : [];
        if (kind === 0 || kind === 1) {
          this.#subscribe(peer, Uint8Array.from(prefix), kind === 1);
        }
      },
      subscription: (peer, prefix, wanted) =>
        this.#subscribe(peer, prefix, wanted),
      left: (peer) => this.#prefixes.delete(peer),
    });
  }

  /** The port in use. */
  get port(): number {
    return this.#bound.port;
  }

  /** Kept once somebody has subscribed. */
  subscribed(): Promise<void> {
    if ([...this.#prefixes.values()].some((all) => all.length > 0)) {
      return Promise.resolve();
    }
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  /**
   * Sends one message to all who subscribed to a prefix of its first frame.
   *
   * @param frames Its frames.
   */
  send(frames: readonly Uint8Array[]): void {
    for (const [peer, prefixes] of this.#prefixes) {
      if (prefixes.some((prefix) => startsWith(frames[0], prefix))) {
        peer.send(frames);
      }
    }
  }

  /** Writes what is queued, then closes the port and all connections. */
  close(): Promise<void> {
    return this.#bound.close();
  }

  #subscribe(peer: Peer, prefix: Uint8Array, wanted: boolean): void {
    const prefixes = this.#prefixes.get(peer);
    if (!prefixes) return;
    if (wanted) {
      prefixes.push(prefix);
      for (const resolve of this.#waiting.splice(0)) resolve();
      return;
    }
    const at = prefixes.findIndex((one) =>
      one.length === prefix.length && startsWith(one, prefix)
    );
    if (at >= 0) prefixes.splice(at, 1);
  }
}

function startsWith(bytes: Uint8Array, prefix: Uint8Array): boolean {
  return prefix.length <= bytes.length &&
    prefix.every((byte, at) => byte === bytes[at]);
}
