/**
 * The address of one socket of a kernel.
 *
 * @module
 */

/** A TCP address on this machine. */
export interface Endpoint {
  /** Loopback address, such as 127.0.0.1. */
  readonly hostname: string;
  /** Port, 1 to 65535; 0 asks the system for a free one. */
  readonly port: number;
}

/**
 * Makes an endpoint, and refuses what could be reached from outside.
 *
 * A kernel runs any code that arrives with the right signature. It therefore
 * listens on this machine alone, whatever a connection file says.
 *
 * @param transport `"tcp"`; the other transport of the protocol is refused.
 * @param hostname A loopback address: 127.x.x.x, ::1 or localhost.
 * @param port Port, 0 to 65535.
 * @returns The endpoint, `localhost` spelt as 127.0.0.1.
 * @throws {RangeError} If the transport is not TCP, the address is not a
 * loopback address, or the port is out of range.
 *
 * @example A loopback address is taken, one of the network refused
 * ```ts
 * import { endpoint } from "sagbook/protocol/endpoint.ts";
 * import { deepEqual, throws } from "node:assert/strict";
 *
 * deepEqual(endpoint("tcp", "localhost", 5555), {
 *   hostname: "127.0.0.1",
 *   port: 5555,
 * });
 * throws(() => endpoint("tcp", "0.0.0.0", 5555), RangeError);
 * ```
 */
export function endpoint(
  transport: string,
  hostname: string,
  port: number,
): Endpoint {
  if (transport !== "tcp") {
    throw new RangeError(
      `Cannot open a socket as the transport must be tcp: current value is ${
        JSON.stringify(transport)
      } (ipc:// is not supported; set "transport": "tcp" in the front end)`,
    );
  }
  if (!/^(127(\.\d{1,3}){3}|::1|localhost)$/.test(hostname)) {
    throw new RangeError(
      `Cannot open a socket as the address must be on this machine (127.0.0.1): current value is ${
        JSON.stringify(hostname)
      }`,
    );
  }
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    throw new RangeError(
      `Cannot open a socket as the port must be a whole number from 0 to 65535: current value is ${port}`,
    );
  }
  return { hostname: hostname === "localhost" ? "127.0.0.1" : hostname, port };
}
