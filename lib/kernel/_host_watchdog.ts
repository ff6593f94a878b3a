/**
 * A second thread of the evaluator that ends the process with its kernel, even
 * while a cell keeps the first thread busy.
 */
import type { FromHost } from "./_host_protocol.ts";

const { port, token } = await new Promise<{ port: number; token: string }>(
  (resolve) =>
    globalThis.addEventListener(
      "message",
      (event) => resolve((event as MessageEvent).data),
      { once: true },
    ),
);
try {
  const connection = await Deno.connect({ hostname: "127.0.0.1", port });
  const hello: FromHost = { op: "hello", token, role: "watchdog" };
  await connection.write(
    new TextEncoder().encode(`${JSON.stringify(hello)}\n`),
  );
  while (await connection.read(new Uint8Array(64)) !== null);
} catch {
  // The kernel is gone.
}
Deno.kill(Deno.pid, "SIGKILL");
