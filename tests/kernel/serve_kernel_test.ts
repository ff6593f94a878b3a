import { deepEqual, equal, rejects } from "node:assert/strict";
import { serveKernel } from "sagbook/kernel/serve_kernel.ts";
import { Kernel } from "sagbook/kernel/kernel.ts";
import {
  createConnection,
  writeConnectionFile,
} from "sagbook/protocol/connection.ts";
import { KernelClient } from "sagbook/protocol/kernel_client.ts";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";
import { pause } from "./_session.ts";

Deno.test("serveKernel() serves by the connection file alone until it is shut down", async () => {
  const folder = await Deno.makeTempDir();
  const file = `${folder}/connection.json`;
  const connection = createConnection();
  await writeConnectionFile(file, connection);
  const serving = serveKernel(file, { folder, check: false, version: "1.2.3" });
  const client = await KernelClient.connect(connection);
  const info = await client.request("shell", "kernel_info_request", {});
  equal(info.content.implementation_version, "1.2.3");
  const { content } = await client.request("shell", "execute_request", {
    code: "6 * 7",
  });
  equal(content.status, "ok");
  const goodbye = await client.request("control", "shutdown_request", {
    restart: true,
  });
  equal(goodbye.content.restart, true);
  await serving;
  client.close();
  await Deno.remove(folder, { recursive: true });
});

Deno.test("serveKernel() refuses a connection file that is not there, and a port that is taken", async () => {
  await rejects(
    serveKernel("/no/such/file", { folder: "/" }),
    Deno.errors.NotFound,
  );
  const connection = createConnection();
  const { control } = connection.endpoints;
  const taken = Deno.listen({ ...control });
  try {
    new Kernel({ connection, folder: Deno.cwd() });
    throw new Error("it did not refuse");
  } catch (error) {
    equal((error as Error).name, "AddrInUse");
  }
  taken.close();
});

Deno.test("Kernel() that is shut down before it has come up leaves no process", async () => {
  const mark = crypto.randomUUID();
  Deno.env.set(MARK, mark);
  try {
    const connection = createConnection();
    await new Kernel({ connection, folder: Deno.cwd() }).shutdown();
  } finally {
    Deno.env.delete(MARK);
  }
  // Past the time after which the checker is loaded, asked for or not.
  await pause(500);
  deepEqual(await processesMarked(mark), []);
});
