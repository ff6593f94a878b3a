import { CELL_KEY } from "./_host_protocol.ts";
import { runningCell } from "./_host_cell.ts";

// Taken now: a cell may declare these names for itself.
const { setTimeout, clearTimeout } = globalThis;
const now = performance.now.bind(performance);

const LONGEST = 32 * 1024;
const SOONEST_MS = 20;

type Broadcast = (
  type: string,
  content: Record<string, unknown>,
  extra?: { metadata?: Record<string, unknown>; buffers?: Uint8Array[] },
) => void | Promise<void>;

/** Waits until more may be sent. */
type Pace = { wait(): void };

interface Internals {
  readonly Console: new (
    print: (text: string, level: number) => void,
  ) => Record<string, unknown>;
}

/**
 * Joins printed lines into few messages, each under the cell that printed it.
 *
 * The first line of a burst is sent at once, the others at most 20 ms later;
 * where the cell keeps the thread busy, with the next line or at its end.
 */
export class HostConsole {
  #broadcast: Broadcast;
  #pace: Pace;
  #pieces: string[] = [];
  #length = 0;
  #sent = -Infinity;
  #name: "stdout" | "stderr" = "stdout";
  #cell: number | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(broadcast: Broadcast, pace: Pace) {
    this.#broadcast = broadcast;
    this.#pace = pace;
  }

  /** Puts this console's methods in the place of the runtime's. */
  install(): void {
    const { internal } = Deno as unknown as { internal: symbol };
    const { Console } =
      (Deno as unknown as Record<symbol, Internals>)[internal];
    const own = new Console((text, level) =>
      this.write(level > 1 ? "stderr" : "stdout", text)
    );
    for (const name of Object.keys(own)) {
      if (typeof own[name] === "function") {
        (console as unknown as Record<string, unknown>)[name] = own[name];
      }
    }
  }

  /** Takes the place of the process's own streams as well. */
  installStreams(): void {
    for (const name of ["stdout", "stderr"] as const) {
      const decoder = new TextDecoder();
      const writeSync = (bytes: Uint8Array) => {
        this.write(name, decoder.decode(bytes, { stream: true }));
        return bytes.length;
      };
      const write = (bytes: Uint8Array) => Promise.resolve(writeSync(bytes));
      const writable = () =>
        new WritableStream<Uint8Array>({ write: (bytes) => void write(bytes) });
      Object.assign(Deno[name], { writeSync, write });
      Object.defineProperty(Deno[name], "writable", {
        get: writable,
        configurable: true,
      });
    }
  }

  /** Takes printed text. */
  write(name: "stdout" | "stderr", text: string): void {
    const cell = runningCell.getStore()?.id;
    if (this.#length > 0 && (name !== this.#name || cell !== this.#cell)) {
      this.flush();
    }
    if (this.#length === 0) {
      this.#name = name;
      this.#cell = cell;
    }
    this.#pieces.push(text);
    this.#length += text.length;
    if (this.#length >= LONGEST || now() - this.#sent >= SOONEST_MS) {
      this.flush();
    } else {
      this.#timer ??= setTimeout(() => this.flush(), SOONEST_MS);
    }
  }

  /** Sends what was printed; waits for its turn unless told not to. */
  flush(atOnce = false): void {
    if (this.#length === 0) return;
    // A cell may be ended in here: nothing was taken from the pieces yet.
    if (!atOnce) this.#pace.wait();
    const text = this.#pieces.join("");
    this.#pieces = [];
    this.#length = 0;
    this.#sent = now();
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#broadcast("stream", { name: this.#name, text }, {
      metadata: this.#cell === undefined ? {} : { [CELL_KEY]: this.#cell },
    });
  }
}
