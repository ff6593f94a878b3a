import { deepEqual, equal, match, rejects, throws } from "node:assert/strict";
import { join } from "node:path";
import {
  createConnection,
  parseConnection,
  readConnectionFile,
  writeConnectionFile,
} from "sagbook/protocol/connection.ts";

Deno.test("createConnection() gives five different ports on 127.0.0.1 and a key of 256 bits", () => {
  const { endpoints, key } = createConnection();
  const all = Object.values(endpoints);
  equal(new Set(all.map(({ port }) => port)).size, 5);
  deepEqual(
    new Set(all.map(({ hostname }) => hostname)),
    new Set(["127.0.0.1"]),
  );
  match(key, /^[0-9a-f]{64}$/);
});

Deno.test("writeConnectionFile() writes what readConnectionFile() reads, for the owner alone", async () => {
  const folder = await Deno.makeTempDir();
  const path = join(folder, "c.json");
  const connection = createConnection();
  await writeConnectionFile(path, connection, "deno");
  deepEqual(await readConnectionFile(path), connection);
  if (Deno.build.os !== "windows") {
    equal((await Deno.stat(path)).mode! & 0o777, 0o600);
  }
  await rejects(
    writeConnectionFile(path, connection),
    Deno.errors.AlreadyExists,
  );
  await Deno.remove(folder, { recursive: true });
});

Deno.test("parseConnection() refuses what it cannot serve safely, each in words", () => {
  const good = {
    transport: "tcp",
    ip: "127.0.0.1",
    key: "k",
    signature_scheme: "hmac-sha256",
    shell_port: 1,
    iopub_port: 2,
    stdin_port: 3,
    control_port: 4,
    hb_port: 5,
  };
  equal(parseConnection(JSON.stringify(good)).endpoints.hb.port, 5);
  const wrong: [Record<string, unknown>, string, RegExp][] = [
    [{ transport: "ipc" }, "RangeError", /ipc:\/\/ is not supported/],
    [{ ip: "0.0.0.0" }, "RangeError", /must be on this machine/],
    [{ key: "" }, "RangeError", /key must not be empty/],
    [{ key: undefined }, "TypeError", /key must be text/],
    [{ signature_scheme: "hmac-md5" }, "RangeError", /must be hmac-sha256/],
    [{ hb_port: "5" }, "TypeError", /hb_port must be a number/],
  ];
  for (const [change, name, message] of wrong) {
    const text = JSON.stringify({ ...good, ...change });
    throws(() => parseConnection(text), { name, message });
  }
  throws(() => parseConnection("{"), { name: "SyntaxError" });
});
