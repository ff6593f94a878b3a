import type { ByteReader } from "./_byte_reader.ts";

const MORE = 1;
const LONG = 2;
const COMMAND = 4;

/** The longest message taken from a peer, in bytes. */
export const MESSAGE_LIMIT = 1024 * 1024 * 1024;

/** The most frames one message may have. */
export const FRAME_LIMIT = 4096;

/** A peer that does not keep to ZMTP; its connection is closed. */
export class TransportError extends Error {
  override name = "TransportError";
}

/** One frame as read. */
export interface Frame {
  readonly more: boolean;
  readonly command: boolean;
  readonly body: Uint8Array;
}

/** The header and body of one frame, ready to be written. */
export function encodeFrame(
  body: Uint8Array,
  flags: { readonly more?: boolean; readonly command?: boolean } = {},
): Uint8Array[] {
  const long = body.length > 255;
  const bits = (flags.more ? MORE : 0) | (long ? LONG : 0) |
    (flags.command ? COMMAND : 0);
  if (!long) return [Uint8Array.of(bits, body.length), body];
  const header = new Uint8Array(9);
  header[0] = bits;
  new DataView(header.buffer).setBigUint64(1, BigInt(body.length));
  return [header, body];
}

/** The bytes of one message of one or more frames. */
export function encodeFrames(frames: readonly Uint8Array[]): Uint8Array[] {
  return frames.flatMap((body, at) =>
    encodeFrame(body, { more: at < frames.length - 1 })
  );
}

/** Reads one frame, or null where the connection ended between two frames. */
export async function readFrame(
  reader: ByteReader,
  room: number,
): Promise<Frame | null> {
  const first = await reader.exactly(1);
  if (first === null) return null;
  const flags = first[0];
  if (flags & ~(MORE | LONG | COMMAND) || (flags & COMMAND && flags & MORE)) {
    throw new TransportError(`a frame has flags ${flags}, which have no sense`);
  }
  const size = await reader.exactly(flags & LONG ? 8 : 1);
  if (size === null) throw new TransportError("a frame has no length");
  const length = flags & LONG
    ? Number(new DataView(size.buffer, size.byteOffset).getBigUint64(0))
    : size[0];
  if (length > room) {
    throw new TransportError(
      `a frame of ${length} bytes is longer than the ${room} bytes allowed`,
    );
  }
  const body = length === 0 ? new Uint8Array(0) : await reader.exactly(length);
  if (body === null) throw new TransportError("a frame has no body");
  return { more: !!(flags & MORE), command: !!(flags & COMMAND), body };
}

const utf8 = new TextEncoder();

/** The body of a command: its name, then its data. */
export function commandBody(name: string, data: Uint8Array): Uint8Array {
  const label = utf8.encode(name);
  const body = new Uint8Array(1 + label.length + data.length);
  body[0] = label.length;
  body.set(label, 1);
  body.set(data, 1 + label.length);
  return body;
}

/** Splits the body of a command into its name and its data. */
export function readCommand(
  body: Uint8Array,
): { readonly name: string; readonly data: Uint8Array } {
  const length = body[0] ?? 0;
  if (length === 0 || length + 1 > body.length) {
    throw new TransportError("a command has no name");
  }
  return {
    name: new TextDecoder().decode(body.subarray(1, 1 + length)),
    data: body.subarray(1 + length),
  };
}
