import type { ByteReader } from "./_byte_reader.ts";
import {
  commandBody,
  encodeFrame,
  readCommand,
  readFrame,
  TransportError,
} from "./_frames.ts";

/** The socket types this transport offers. */
export type SocketType = "ROUTER" | "DEALER" | "PUB" | "SUB";

/** Which peers each socket type may meet. */
const PARTNERS: Record<SocketType, readonly string[]> = {
  ROUTER: ["REQ", "DEALER", "ROUTER"],
  DEALER: ["REP", "DEALER", "ROUTER"],
  PUB: ["SUB", "XSUB"],
  SUB: ["PUB", "XPUB"],
};

const utf8 = new TextEncoder();
const text = new TextDecoder();

/** The 64 bytes that open a connection: ZMTP 3.0, NULL mechanism. */
export function greeting(): Uint8Array {
  const bytes = new Uint8Array(64);
  bytes[0] = 0xff;
  bytes[9] = 0x7f;
  bytes[10] = 3;
  bytes.set(utf8.encode("NULL"), 12);
  return bytes;
}

/** Refuses a peer whose first 64 bytes are not ZMTP 3 with the NULL mechanism. */
export function checkGreeting(bytes: Uint8Array): void {
  if (bytes[0] !== 0xff || bytes[9] !== 0x7f || bytes[10] < 3) {
    throw new TransportError("the peer does not speak ZMTP 3");
  }
  const mechanism = text.decode(bytes.subarray(12, 32)).replace(/\0+$/, "");
  if (mechanism !== "NULL") {
    throw new TransportError(
      `the peer asks for the mechanism ${JSON.stringify(mechanism)}, not NULL`,
    );
  }
}

/** The READY command of a socket. */
export function readyFrame(
  type: SocketType,
  identity: Uint8Array,
): Uint8Array[] {
  const properties = [
    property("Socket-Type", utf8.encode(type)),
    property("Identity", identity),
  ];
  const data = new Uint8Array(properties.reduce((n, p) => n + p.length, 0));
  let at = 0;
  for (const one of properties) {
    data.set(one, at);
    at += one.length;
  }
  return encodeFrame(commandBody("READY", data), { command: true });
}

/** Reads the peer's READY and gives its identity, empty if it sent none. */
export async function readReady(
  reader: ByteReader,
  own: SocketType,
): Promise<Uint8Array> {
  const frame = await readFrame(reader, 64 * 1024);
  if (!frame?.command) throw new TransportError("the peer sent no READY");
  const { name, data } = readCommand(frame.body);
  if (name !== "READY") {
    throw new TransportError(
      `the peer sent ${JSON.stringify(name)}, not READY`,
    );
  }
  const properties = readProperties(data);
  const type = text.decode(properties.get("socket-type"));
  if (!PARTNERS[own].includes(type)) {
    throw new TransportError(
      `a ${own} socket cannot talk to a peer of type ${JSON.stringify(type)}`,
    );
  }
  const identity = properties.get("identity") ?? new Uint8Array(0);
  if (identity.length > 255) {
    throw new TransportError("the peer's identity is longer than 255 bytes");
  }
  return identity;
}

function property(name: string, value: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(1 + name.length + 4 + value.length);
  bytes[0] = name.length;
  bytes.set(utf8.encode(name), 1);
  new DataView(bytes.buffer).setUint32(1 + name.length, value.length);
  bytes.set(value, 5 + name.length);
  return bytes;
}

function readProperties(data: Uint8Array): Map<string, Uint8Array> {
  const found = new Map<string, Uint8Array>();
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  let at = 0;
  while (at < data.length) {
    const nameEnd = at + 1 + data[at];
    if (nameEnd + 4 > data.length) break;
    const valueEnd = nameEnd + 4 + view.getUint32(nameEnd);
    if (valueEnd > data.length) break;
    found.set(
      text.decode(data.subarray(at + 1, nameEnd)).toLowerCase(),
      data.slice(nameEnd + 4, valueEnd),
    );
    at = valueEnd;
  }
  if (at !== data.length) {
    throw new TransportError("the properties in READY are cut off");
  }
  return found;
}
