/**
 * The socket that listens to a publisher.
 *
 * @module
 */
import { connect } from "./_connect.ts";
import type { Peer } from "./_peer.ts";
import type { Endpoint } from "./endpoint.ts";
import { Inbox } from "./inbox.ts";

/** Settings of a subscription. */
export interface SubscribeSettings {
  /** First bytes of the wanted messages; empty means all. */
  readonly prefix?: Uint8Array;
  /** Time in ms to wait for the port to open; 30 000 unless told. */
  readonly timeLimit?: number;
  /** Stops the attempts. */
  readonly signal?: AbortSignal;
}

/**
 * Receives what a publisher sends from now on (ZMTP SUB).
 *
 * The publisher learns of the subscription a moment after the connection, and
 * the pattern has no receipt: ask for something and wait until it is heard
 * before relying on it.
 *
 * @see ZeroMQ RFC 23/ZMTP 3.0 and RFC 29/PUBSUB.
 *
 * @example See {@linkcode Publisher} for both ends
 * ```ts
 * import { Publisher } from "sagbook/protocol/publisher.ts";
 * import { Subscriber } from "sagbook/protocol/subscriber.ts";
 *
 * const publisher = new Publisher({ hostname: "127.0.0.1", port: 0 });
 * const all = await Subscriber.connect({ hostname: "127.0.0.1", port: publisher.port });
 * all.close();
 * await publisher.close();
 * ```
 */
export class Subscriber {
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
   * Connects, subscribes, and tries again while the port is not open.
   *
   * @param to Loopback address of the publisher.
   * @param settings Prefix, time limit and abort signal.
   * @returns The connected socket.
   * @throws {Deno.errors.TimedOut} If nobody answers in time.
   */
  static async connect(
    to: Endpoint,
    settings: SubscribeSettings = {},
  ): Promise<Subscriber> {
    const peer = await connect(to, "SUB", new Uint8Array(0), settings);
    await peer.send([Uint8Array.of(1, ...settings.prefix ?? [])]);
    return new Subscriber(peer);
  }

  /** Closes the connection at once. */
  close(): void {
    this.#peer.close();
  }
}
