/**
 * The socket that answers many peers, each under its identity.
 *
 * @module
 */
import { Bound } from "./_bound.ts";
import type { Peer } from "./_peer.ts";
import type { Endpoint } from "./endpoint.ts";
import { Inbox } from "./inbox.ts";

/** One message and the peer it came from. */
export interface RoutedMessage {
  /** Name of the peer, to send the answer to. */
  readonly identity: Uint8Array;
  /** The frames as sent. */
  readonly frames: Uint8Array[];
}

/**
 * Receives from many peers and answers each by its identity (ZMTP ROUTER).
 *
 * A peer that names itself keeps its name over several sockets, which is how
 * a kernel finds the one to ask for input. Where two peers take one name the
 * later keeps it, as after a reconnection. A message to a peer that has left
 * is dropped, as the pattern demands.
 *
 * @see ZeroMQ RFC 23/ZMTP 3.0 and RFC 28/REQREP.
 *
 * @example One answer through a real port
 * ```ts
 * import { Dealer } from "sagbook/protocol/dealer.ts";
 * import { Router } from "sagbook/protocol/router.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const router = new Router({ hostname: "127.0.0.1", port: 0 });
 * const dealer = await Dealer.connect({ hostname: "127.0.0.1", port: router.port });
 * await dealer.send([Uint8Array.of(1, 2, 3)]);
 * const asked = (await router.inbox.take()).value;
 * await router.send(asked.identity, asked.frames);
 * deepEqual((await dealer.inbox.take()).value, [Uint8Array.of(1, 2, 3)]);
 * dealer.close();
 * await router.close();
 * ```
 */
export class Router {
  /** Messages in the order of arrival. */
  readonly inbox: Inbox<RoutedMessage> = new Inbox();
  #bound: Bound;
  #byName = new Map<string, Peer>();
  #names = new Map<Peer, Uint8Array>();
  #counter = 0;

  /**
   * Listens on a port.
   *
   * @param at Loopback address; port 0 takes a free one.
   * @throws {Deno.errors.AddrInUse} If another process has the port.
   */
  constructor(at: Endpoint) {
    this.#bound = new Bound(at, "ROUTER", {
      joined: (peer) => this.#join(peer),
      message: (peer, frames) =>
        this.inbox.push({ identity: this.#names.get(peer)!, frames }),
      left: (peer) => this.#leave(peer),
    });
  }

  /** The port in use. */
  get port(): number {
    return this.#bound.port;
  }

  /**
   * Sends to one peer.
   *
   * @param identity Name of the peer.
   * @param frames The frames of one message.
   * @returns False if no such peer is connected.
   */
  async send(
    identity: Uint8Array,
    frames: readonly Uint8Array[],
  ): Promise<boolean> {
    const peer = this.#byName.get(key(identity));
    if (!peer) return false;
    await peer.send(frames);
    return true;
  }

  /** Writes what is queued, then closes the port and all connections. */
  async close(): Promise<void> {
    await this.#bound.close();
    this.inbox.close();
  }

  #join(peer: Peer): void {
    let name = peer.identity;
    if (name.length === 0) {
      name = new Uint8Array(5);
      new DataView(name.buffer).setUint32(1, ++this.#counter);
    }
    this.#names.set(peer, name);
    this.#byName.set(key(name), peer);
  }

  #leave(peer: Peer): void {
    const name = key(this.#names.get(peer)!);
    if (this.#byName.get(name) === peer) this.#byName.delete(name);
    this.#names.delete(peer);
  }
}

function key(identity: Uint8Array): string {
  return String.fromCharCode(...identity);
}
