import type { FromHost, ToHost, ToWatchdog } from "./_host_protocol.ts";
import { closeQuietly, linesOf } from "./_lines.ts";

const encoder = new TextEncoder();

/** Longest line that is taken, in characters. */
const LONGEST = 4096;

/** The kernel's end of the side channel to the host. */
export class SideChannel {
  readonly port: number;
  readonly token = crypto.randomUUID();
  /** Kept when the host has shown the token. */
  readonly connected: Promise<void>;
  /** Kept when the host's watchdog has shown it too; nobody else may then. */
  readonly complete: Promise<void>;
  #listener: Deno.TcpListener;
  #connections = new Set<Deno.TcpConn>();
  #host: Deno.TcpConn | undefined;
  #watchdog: Deno.TcpConn | undefined;
  #taken = 0;
  #told = 0;
  #telling = false;
  #heard: ((message: FromHost) => void)[] = [];
  #connect = Promise.withResolvers<void>();
  #watched = Promise.withResolvers<void>();
  #pings = 0;

  constructor() {
    this.#listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
    this.port = this.#listener.addr.port;
    this.connected = this.#connect.promise;
    this.complete = Promise.all([this.connected, this.#watched.promise])
      .then(() => closeQuietly(this.#listener));
    this.#accept();
  }

  /** Tells the host to stop a cell; resolves true if it hears it in time. */
  async interrupt(cell: number, now: boolean, limit: number): Promise<boolean> {
    return await this.#ask(
      { op: "interrupt", cell, now },
      (message) => message.op === "heard" && message.cell === cell,
      limit,
    );
  }

  /** Whether the host's event loop turns. */
  async ping(limit: number): Promise<boolean> {
    const number = ++this.#pings;
    return await this.#ask(
      { op: "ping", number },
      (message) => message.op === "pong" && message.number === number,
      limit,
    );
  }

  /** Tells the host which of its messages was taken last; not each of many. */
  async taken(sent: number): Promise<void> {
    if (sent > this.#taken) this.#taken = sent;
    if (this.#telling || this.#watchdog === undefined) return;
    this.#telling = true;
    try {
      while (this.#told < this.#taken) {
        const message: ToWatchdog = { op: "taken", sent: this.#taken };
        this.#told = this.#taken;
        await this.#watchdog.write(
          encoder.encode(`${JSON.stringify(message)}\n`),
        );
      }
    } catch {
      // It is gone, and the host with it.
    }
    this.#telling = false;
  }

  /** Closes all connections; host and watchdog then end their process. */
  close(): void {
    closeQuietly(this.#listener);
    for (const connection of this.#connections) closeQuietly(connection);
    this.#connections.clear();
  }

  async #ask(
    message: ToHost,
    fits: (message: FromHost) => boolean,
    limit: number,
  ): Promise<boolean> {
    const host = this.#host;
    if (!host) return false;
    const heard = Promise.withResolvers<boolean>();
    const listener = (one: FromHost) => {
      if (fits(one)) heard.resolve(true);
    };
    this.#heard.push(listener);
    const timer = setTimeout(() => heard.resolve(false), limit);
    host.write(encoder.encode(`${JSON.stringify(message)}\n`)).catch(() => {});
    const result = await heard.promise;
    clearTimeout(timer);
    this.#heard = this.#heard.filter((one) => one !== listener);
    return result;
  }

  async #accept(): Promise<void> {
    try {
      for await (const connection of this.#listener) this.#read(connection);
    } catch {
      // Closed.
    }
  }

  async #read(connection: Deno.TcpConn): Promise<void> {
    this.#connections.add(connection);
    let known = false;
    try {
      for await (const lines of linesOf(connection, LONGEST)) {
        for (const line of lines) {
          const message = JSON.parse(line) as FromHost;
          if (message.op === "hello") {
            if (message.token !== this.token) throw new Error("wrong token");
            known = true;
            if (message.role !== "host") {
              this.#watchdog = connection;
              this.#watched.resolve();
              continue;
            }
            this.#host = connection;
            this.#connect.resolve();
          } else if (known) {
            for (const listener of [...this.#heard]) listener(message);
          }
        }
      }
    } catch {
      // Not our host, or gone.
    }
    this.#connections.delete(connection);
    closeQuietly(connection);
  }
}
