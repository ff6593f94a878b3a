import type { Endpoint } from "./endpoint.ts";
import type { SocketType } from "./_handshake.ts";
import { Peer } from "./_peer.ts";

/** What a bound socket does with its peers. */
export interface BoundEvents {
  joined(peer: Peer): void;
  message(peer: Peer, frames: Uint8Array[]): void;
  subscription?(peer: Peer, prefix: Uint8Array, wanted: boolean): void;
  left(peer: Peer): void;
}

/** A listening socket that greets each peer and reads from all of them. */
export class Bound {
  readonly port: number;
  #listener: Deno.TcpListener;
  #peers = new Set<Peer>();
  /** Connections that have not finished their greeting. */
  #strangers = new Set<Deno.TcpConn>();
  #closed = false;
  #accepting: Promise<void>;
  #talks = new Set<Promise<void>>();

  constructor(at: Endpoint, type: SocketType, events: BoundEvents) {
    this.#listener = Deno.listen({ hostname: at.hostname, port: at.port });
    this.port = this.#listener.addr.port;
    this.#accepting = this.#accept(type, events);
  }

  /** Closes the port and every connection, after what was queued is written. */
  async close(drainLimit = 2_000): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    this.#listener.close();
    await this.#accepting;
    for (const connection of this.#strangers) {
      try {
        connection.close();
      } catch {
        // The other side was faster.
      }
    }
    let timer: ReturnType<typeof setTimeout> | undefined;
    await Promise.race([
      Promise.all([...this.#peers].map((peer) => peer.drained())),
      new Promise<void>((done) => timer = setTimeout(done, drainLimit)),
    ]);
    clearTimeout(timer);
    for (const peer of this.#peers) peer.close();
    await Promise.all(this.#talks);
  }

  async #accept(type: SocketType, events: BoundEvents): Promise<void> {
    while (!this.#closed) {
      let connection: Deno.TcpConn;
      try {
        connection = await this.#listener.accept();
      } catch (error) {
        if (this.#closed || error instanceof Deno.errors.BadResource) return;
        await new Promise((done) => setTimeout(done, 50));
        continue;
      }
      const talk = this.#talk(connection, type, events);
      this.#talks.add(talk);
      talk.finally(() => this.#talks.delete(talk));
    }
  }

  async #talk(
    connection: Deno.TcpConn,
    type: SocketType,
    events: BoundEvents,
  ): Promise<void> {
    let peer: Peer;
    this.#strangers.add(connection);
    try {
      connection.setNoDelay(true);
      peer = await Peer.meet(connection, type, new Uint8Array(0));
    } catch {
      return; // no fit partner; already closed
    } finally {
      this.#strangers.delete(connection);
    }
    if (this.#closed) return peer.close();
    this.#peers.add(peer);
    events.joined(peer);
    await peer.listen({
      message: (frames) => events.message(peer, frames),
      subscription: (prefix, wanted) =>
        events.subscription?.(peer, prefix, wanted),
    });
    this.#peers.delete(peer);
    events.left(peer);
  }
}
