import { equal, rejects } from "node:assert/strict";
import { serveKernel } from "sagbook/kernel/serve_kernel.ts";
import { Kernel } from "sagbook/kernel/kernel.ts";
import {
  createConnection,
  writeConnectionFile,
} from "sagbook/protocol/connection.ts";
import { KernelClient } from "sagbook/protocol/kernel_client.ts";

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
