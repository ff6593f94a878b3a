import type { Endpoint } from "./endpoint.ts";
import type { SocketType } from "./_handshake.ts";
import { Peer } from "./_peer.ts";

/** How long and until when a socket tries to connect. */
export interface ConnectOptions {
  /** Time in ms during which a port that is not open yet is tried again. */
  readonly timeLimit?: number;
  /** Stops the attempts. */
  readonly signal?: AbortSignal;
}

/**
 * Connects to a port that may not be open yet.
 *
 * On one machine a connection to a closed port of the system's own range can
 * meet itself (simultaneous open) and would then block that port, so such a
 * connection is dropped and the port tried again.
 */
export async function connect(
  to: Endpoint,
  type: SocketType,
  identity: Uint8Array,
  { timeLimit = 30_000, signal }: ConnectOptions,
): Promise<Peer> {
  const end = Date.now() + timeLimit;
  let pause = 4;
  for (;;) {
    signal?.throwIfAborted();
    let failure: unknown;
    try {
      const connection = await Deno.connect({
        hostname: to.hostname,
        port: to.port,
      });
      if (connection.localAddr.port === to.port) connection.close();
      else {
        connection.setNoDelay(true);
        return await Peer.meet(connection, type, identity);
      }
    } catch (error) {
      failure = error;
    }
    if (Date.now() + pause > end) {
      throw new Deno.errors.TimedOut(
        `Cannot connect to port ${to.port} within ${timeLimit} ms: ${
          failure instanceof Error ? failure.message : "no answer"
        }`,
      );
    }
    await new Promise((done) => setTimeout(done, pause));
    pause = Math.min(pause * 2, 50);
  }
}
