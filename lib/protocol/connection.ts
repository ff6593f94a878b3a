/**
 * Where a kernel listens, and the secret it shares with its clients.
 *
 * @module
 */
import { type Endpoint, endpoint } from "./endpoint.ts";
import { readPrivateText, writePrivateText } from "./system.ts";

/** The five sockets of a kernel. */
export type Channel = "shell" | "iopub" | "stdin" | "control" | "hb";

const CHANNELS: readonly Channel[] = [
  "shell",
  "iopub",
  "stdin",
  "control",
  "hb",
];

/** Ports and secret of one kernel. */
export interface Connection {
  /** Where each socket listens. */
  readonly endpoints: Readonly<Record<Channel, Endpoint>>;
  /** Secret under which messages are signed. */
  readonly key: string;
}

/**
 * Picks five free ports of this machine and a fresh key.
 *
 * The ports are free at the moment of asking. Another process can take one
 * before the kernel does; the kernel then fails to start and a new connection
 * is to be tried, which {@linkcode startKernel} does.
 *
 * @returns Ports on 127.0.0.1 and a random key of 256 bits.
 *
 * @example Every connection has its own key
 * ```ts
 * import { createConnection } from "sagbook/protocol/connection.ts";
 * import { notEqual } from "node:assert/strict";
 *
 * notEqual(createConnection().key, createConnection().key);
 * ```
 */
export function createConnection(): Connection {
  const listeners = CHANNELS.map(() =>
    Deno.listen({ hostname: "127.0.0.1", port: 0 })
  );
  const endpoints = {} as Record<Channel, Endpoint>;
  CHANNELS.forEach((channel, at) => {
    endpoints[channel] = endpoint("tcp", "127.0.0.1", listeners[at].addr.port);
    listeners[at].close();
  });
  const key = crypto.getRandomValues(new Uint8Array(32)).toHex();
  return { endpoints, key };
}

/**
 * Writes a connection file that only its owner can read.
 *
 * @param path Where to write; must not exist yet.
 * @param connection Ports and key.
 * @param kernelName Name of the kernelspec, for front ends that ask.
 * @throws {Deno.errors.AlreadyExists} If there is a file already.
 */
export async function writeConnectionFile(
  path: string,
  connection: Connection,
  kernelName = "",
): Promise<void> {
  const file: Record<string, unknown> = {
    transport: "tcp",
    ip: connection.endpoints.shell.hostname,
    key: connection.key,
    signature_scheme: "hmac-sha256",
    kernel_name: kernelName,
  };
  for (const channel of CHANNELS) {
    file[`${channel}_port`] = connection.endpoints[channel].port;
  }
  await writePrivateText(path, JSON.stringify(file, null, 2));
}

/**
 * Reads a connection file.
 *
 * @param path The file a front end has written.
 * @returns Ports and key.
 * @throws {SyntaxError} If the file is not JSON of an object.
 * @throws {TypeError} If a port or the key is missing.
 * @throws {RangeError} If transport, address, signature scheme or key is one
 * that cannot be served safely.
 */
export async function readConnectionFile(path: string): Promise<Connection> {
  return parseConnection(await readPrivateText(path));
}

/**
 * Reads the text of a connection file; see {@linkcode readConnectionFile}.
 *
 * @param text JSON.
 * @returns Ports and key.
 * @throws {SyntaxError} If the text is not JSON of an object.
 * @throws {TypeError} If a port or the key is missing.
 * @throws {RangeError} If transport, address, signature scheme or key is one
 * that cannot be served safely.
 */
export function parseConnection(text: string): Connection {
  let file: Record<string, unknown>;
  try {
    file = JSON.parse(text);
  } catch (cause) {
    throw new SyntaxError(
      "Cannot read the connection file as it must be JSON",
      {
        cause,
      },
    );
  }
  const { transport = "tcp", ip = "127.0.0.1", key, signature_scheme } = file ??
    {};
  if (signature_scheme !== undefined && signature_scheme !== "hmac-sha256") {
    throw new RangeError(
      `Cannot use the connection file as its signature scheme must be hmac-sha256: current value is ${
        JSON.stringify(signature_scheme)
      }`,
    );
  }
  if (typeof key !== "string") {
    throw new TypeError(
      `Cannot use the connection file as its key must be text: current value is ${key}`,
    );
  }
  if (key === "") {
    throw new RangeError(
      "Cannot use the connection file as its key must not be empty: any process on this machine could run code",
    );
  }
  const endpoints = {} as Record<Channel, Endpoint>;
  for (const channel of CHANNELS) {
    const port = file[`${channel}_port`];
    if (typeof port !== "number") {
      throw new TypeError(
        `Cannot use the connection file as ${channel}_port must be a number: current value is ${port}`,
      );
    }
    endpoints[channel] = endpoint(String(transport), String(ip), port);
  }
  return { endpoints, key };
}
