/**
 * A second thread of the evaluator that ends the process with its kernel, even
 * while a cell keeps the first thread busy, and says how many of the host's
 * messages the kernel has taken.
 */
import type { FromHost, ToWatchdog } from "./_host_protocol.ts";
import { linesOf } from "./_lines.ts";

const { port, token, taken } = await new Promise<
  { port: number; token: string; taken: Int32Array }
>(
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
  for await (const lines of linesOf(connection)) {
    for (const line of lines) {
      Atomics.store(taken, 0, (JSON.parse(line) as ToWatchdog).sent);
    }
    Atomics.notify(taken, 0);
  }
} catch {
  // The kernel is gone.
}
Deno.kill(Deno.pid, "SIGKILL");
