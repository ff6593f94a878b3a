/**
 * The socket that asks one peer.
 *
 * @module
 */
import { connect } from "./_connect.ts";
import type { Peer } from "./_peer.ts";
import type { Endpoint } from "./endpoint.ts";
import { Inbox } from "./inbox.ts";

/** Settings of a connecting socket. */
export interface ConnectSettings {
  /** Name given to the peer; empty lets the peer choose one. */
  readonly identity?: Uint8Array;
  /** Time in ms to wait for the port to open; 30 000 unless told. */
  readonly timeLimit?: number;
  /** Stops the attempts. */
  readonly signal?: AbortSignal;
}

/**
 * Sends to one peer and receives from it in any order (ZMTP DEALER).
 *
 * Does not reconnect: on one machine a lost connection means that the other
 * process is gone, and the inbox ends.
 *
 * @see ZeroMQ RFC 23/ZMTP 3.0 and RFC 28/REQREP.
 *
 * @example See {@linkcode Router} for both ends; a closed port is refused in words
 * ```ts
 * import { Dealer } from "sagbook/protocol/dealer.ts";
 * import { rejects } from "node:assert/strict";
 *
 * const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
 * const { port } = listener.addr;
 * listener.close();
 * await rejects(
 *   Dealer.connect({ hostname: "127.0.0.1", port }, { timeLimit: 20 }),
 *   Deno.errors.TimedOut,
 * );
 * ```
 */
export class Dealer {
  /** Messages in the order of arrival; ends with the connection. */
  readonly inbox: Inbox<Uint8Array[]> = new Inbox();
  /** Kept when the connection has ended. */
  readonly ended: Promise<void>;
  #peer: Peer;

  private constructor(peer: Peer) {
    this.#peer = peer;
    this.ended = peer.listen({ message: (frames) => this.inbox.push(frames) })
      .then(() => this.inbox.close());
  }

  /**
   * Connects, and tries again while the port is not open.
   *
   * @param to Loopback address of the other side.
   * @param settings Name, time limit and abort signal.
   * @returns The connected socket.
   * @throws {Deno.errors.TimedOut} If nobody answers in time.
   */
  static async connect(
    to: Endpoint,
    settings: ConnectSettings = {},
  ): Promise<Dealer> {
    const identity = settings.identity ?? new Uint8Array(0);
    return new Dealer(await connect(to, "DEALER", identity, settings));
  }

  /**
   * Sends one message.
   *
   * @param frames Its frames.
   * @returns A promise kept when the bytes are written, or lost with the peer.
   */
  send(frames: readonly Uint8Array[]): Promise<void> {
    return this.#peer.send(frames);
  }

  /** Closes the connection at once. */
  close(): void {
    this.#peer.close();
  }
}
