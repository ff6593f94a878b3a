import type { FromHost, HostOptions, ToHost } from "./_host_protocol.ts";
import { linesOf } from "./_lines.ts";

const encoder = new TextEncoder();

/** The host's end of the side channel. */
export class HostLink {
  #connection: Deno.TcpConn;
  #options: HostOptions;

  private constructor(connection: Deno.TcpConn, options: HostOptions) {
    this.#connection = connection;
    this.#options = options;
  }

  /** Connects, and hears interrupts from then on. */
  static async connect(
    options: HostOptions,
    interrupt: (cell: number, now: boolean) => void,
  ): Promise<HostLink> {
    const { port, token } = options;
    const connection = await Deno.connect({ hostname: "127.0.0.1", port });
    connection.setNoDelay(true);
    const link = new HostLink(connection, options);
    link.#say({ op: "hello", token, role: "host" });
    link.#listen(interrupt);
    return link;
  }

  /**
   * Starts the thread that ends this process with its kernel, and that keeps
   * there how many of the host's messages the kernel has taken.
   */
  watch(taken: Int32Array): void {
    const { port, token } = this.#options;
    const url = new URL("./_host_watchdog.ts", import.meta.url);
    new Worker(url, { type: "module" }).postMessage({ port, token, taken });
  }

  #say(message: FromHost): void {
    this.#connection.write(encoder.encode(`${JSON.stringify(message)}\n`))
      .catch(() => {});
  }

  async #listen(
    interrupt: (cell: number, now: boolean) => void,
  ): Promise<void> {
    for await (const lines of linesOf(this.#connection)) {
      for (const line of lines) {
        const message = JSON.parse(line) as ToHost;
        if (message.op === "ping") {
          this.#say({ op: "pong", number: message.number });
        } else {
          this.#say({ op: "heard", cell: message.cell });
          interrupt(message.cell, message.now);
        }
      }
    }
    Deno.exit(0);
  }
}
