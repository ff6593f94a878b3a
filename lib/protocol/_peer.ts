import { ByteReader } from "./_byte_reader.ts";
import {
  commandBody,
  encodeFrame,
  encodeFrames,
  FRAME_LIMIT,
  MESSAGE_LIMIT,
  readCommand,
  readFrame,
  TransportError,
} from "./_frames.ts";
import {
  checkGreeting,
  greeting,
  readReady,
  readyFrame,
  type SocketType,
} from "./_handshake.ts";

/** What a peer needs of a TCP connection. */
export interface Connection {
  read(into: Uint8Array): Promise<number | null>;
  write(bytes: Uint8Array): Promise<number>;
  close(): void;
}

const HANDSHAKE_LIMIT = 10_000;
const JOIN_BELOW = 64 * 1024;

/** Handlers for what a peer sends. */
export interface PeerEvents {
  /** One whole message. */
  message(frames: Uint8Array[]): void;
  /** A subscription given as a command (ZMTP 3.1). */
  subscription?(prefix: Uint8Array, wanted: boolean): void;
}

/**
 * One connection after its handshake, with one queue of bytes to write, so
 * that two senders never mix their frames.
 */
export class Peer {
  #connection: Connection;
  #reader: ByteReader;
  #queue: Uint8Array[] = [];
  #writing: Promise<void> | null = null;
  #closed = false;

  private constructor(
    connection: Connection,
    reader: ByteReader,
    readonly identity: Uint8Array,
  ) {
    this.#connection = connection;
    this.#reader = reader;
  }

  /** Greets the other side; closes the connection if it is no fit partner. */
  static async meet(
    connection: Connection,
    type: SocketType,
    identity: Uint8Array,
  ): Promise<Peer> {
    const timer = setTimeout(() => shut(connection), HANDSHAKE_LIMIT);
    try {
      const reader = new ByteReader(connection);
      await writeAll(connection, greeting());
      const theirs = await reader.exactly(64);
      if (theirs === null) throw new TransportError("the peer hung up");
      checkGreeting(theirs);
      await writeAll(connection, join(readyFrame(type, identity)));
      return new Peer(connection, reader, await readReady(reader, type));
    } catch (error) {
      shut(connection);
      throw error;
    } finally {
      clearTimeout(timer);
    }
  }

  /** True once the connection is closed from either side. */
  get closed(): boolean {
    return this.#closed;
  }

  /** Reads until the connection ends; settles without throwing. */
  async listen(events: PeerEvents): Promise<void> {
    let parts: Uint8Array[] = [];
    let size = 0;
    try {
      for (;;) {
        const frame = await readFrame(this.#reader, MESSAGE_LIMIT - size);
        if (frame === null) break;
        if (frame.command) {
          this.#command(frame.body, events);
          continue;
        }
        parts.push(frame.body);
        size += frame.body.length;
        if (parts.length > FRAME_LIMIT) {
          throw new TransportError(`a message has over ${FRAME_LIMIT} frames`);
        }
        if (frame.more) continue;
        events.message(parts);
        parts = [];
        size = 0;
      }
    } catch {
      // A peer that breaks the rules or vanishes is dropped; others go on.
    }
    this.close();
  }

  /** Queues one message; the promise is kept when it is written or lost. */
  send(frames: readonly Uint8Array[]): Promise<void> {
    return this.#enqueue(encodeFrames(frames));
  }

  /** Resolves when all that was queued is written, or the peer is gone. */
  drained(): Promise<void> {
    return this.#writing ?? Promise.resolve();
  }

  /** Closes the connection at once. */
  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    this.#queue = [];
    shut(this.#connection);
  }

  #command(body: Uint8Array, events: PeerEvents): void {
    const { name, data } = readCommand(body);
    if (name === "PING") {
      const pong = commandBody("PONG", data.slice(2, 18));
      this.#enqueue(encodeFrame(pong, { command: true }));
    } else if (name === "SUBSCRIBE" || name === "CANCEL") {
      events.subscription?.(data.slice(), name === "SUBSCRIBE");
    } else if (name === "ERROR") {
      throw new TransportError("the peer reported an error");
    }
  }

  #enqueue(bytes: Uint8Array[]): Promise<void> {
    if (this.#closed) return Promise.resolve();
    for (const piece of bytes) if (piece.length > 0) this.#queue.push(piece);
    return this.#writing ??= this.#write();
  }

  async #write(): Promise<void> {
    await Promise.resolve(); // lets the caller queue a burst as one write
    try {
      while (this.#queue.length > 0 && !this.#closed) {
        await writeAll(this.#connection, nextWrite(this.#queue));
      }
    } catch {
      this.close();
    } finally {
      this.#writing = null;
    }
  }
}

/** Takes the next bytes off the queue, joining small pieces into one write. */
function nextWrite(queue: Uint8Array[]): Uint8Array {
  let size = 0;
  let count = 0;
  while (count < queue.length && size + queue[count].length <= JOIN_BELOW) {
    size += queue[count++].length;
  }
  return count === 0 ? queue.shift()! : join(queue.splice(0, count));
}

function join(pieces: readonly Uint8Array[]): Uint8Array {
  if (pieces.length === 1) return pieces[0];
  const whole = new Uint8Array(pieces.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

async function writeAll(to: Connection, bytes: Uint8Array): Promise<void> {
  let at = 0;
  while (at < bytes.length) at += await to.write(bytes.subarray(at));
}

function shut(connection: Connection): void {
  try {
    connection.close();
  } catch {
    // Already closed.
  }
}
