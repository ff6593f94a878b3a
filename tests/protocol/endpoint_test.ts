import { deepEqual, throws } from "node:assert/strict";
import { endpoint } from "sagbook/protocol/endpoint.ts";

Deno.test("endpoint() takes loopback addresses only", () => {
  deepEqual(endpoint("tcp", "127.0.0.1", 1), {
    hostname: "127.0.0.1",
    port: 1,
  });
  deepEqual(endpoint("tcp", "::1", 1), { hostname: "::1", port: 1 });
  for (const open of ["0.0.0.0", "*", "192.168.1.5", "127.0.0.1.example.org"]) {
    throws(() => endpoint("tcp", open, 1), {
      name: "RangeError",
      message:
        `Cannot open a socket as the address must be on this machine (127.0.0.1): current value is "${open}"`,
    });
  }
});

Deno.test("endpoint() refuses ipc in words that say what to set", () => {
  throws(() => endpoint("ipc", "127.0.0.1", 1), {
    name: "RangeError",
    message:
      'Cannot open a socket as the transport must be tcp: current value is "ipc" (ipc:// is not supported; set "transport": "tcp" in the front end)',
  });
});

Deno.test("endpoint() refuses ports that do not exist", () => {
  for (const port of [-1, 65_536, 1.5, NaN]) {
    throws(() => endpoint("tcp", "127.0.0.1", port), {
      name: "RangeError",
      message:
        `Cannot open a socket as the port must be a whole number from 0 to 65535: current value is ${port}`,
    });
  }
});
