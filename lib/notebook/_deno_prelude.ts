/**
 * What Deno's own kernel is taught before the first cell, outside the notebook.
 *
 * That kernel sends a message for each printed line and may deliver it after
 * the cell, even under the next one; it counts a cell as good whose promise
 * fails unawaited, and loses what is written to `Deno.stdout`. The prelude
 * marks everything with the cell it comes from (also from timers and promises,
 * by the asynchronous context), gathers printed text into few messages, and
 * tells of failures that nobody awaited.
 *
 * @module
 */
import { isJsonObject, type JsonObject, type JsonValue } from "./document.ts";

/** The MIME type under which the prelude speaks; it never reaches a file. */
export const NOTE_TYPE = "application/vnd.sagbook.run+json";

/** What the prelude tells. */
export type Note =
  | {
    kind: "text";
    cell: number;
    /** Stream and text by turns, in the order written. */
    parts: readonly (readonly [name: string, text: string])[];
  }
  | {
    kind: "failure";
    cell: number;
    name: string;
    message: string;
    stack: string;
  }
  | { kind: "fence"; cell: number };

function isPart(value: JsonValue): boolean {
  return Array.isArray(value) && value.length === 2 &&
    value.every((item) => typeof item === "string");
}

/** Reads a note out of the forms of a display, if it is one. */
export function readNote(data: JsonObject): Note | undefined {
  const note = data[NOTE_TYPE];
  if (!isJsonObject(note) || typeof note.cell !== "number") return undefined;
  const isNote = note.kind === "fence" ||
    (note.kind === "text" && Array.isArray(note.parts) &&
      note.parts.every(isPart)) ||
    (note.kind === "failure" &&
      ["name", "message", "stack"].every((key) =>
        typeof note[key] === "string"
      ));
  return isNote ? note as unknown as Note : undefined;
}

const HANDLE = 'globalThis[Symbol.for("sagbook.run")]';

/** Code that makes `cell` the one that outputs belong to. */
export function enterCell(cell: number): string {
  return `${HANDLE}.enter(${cell})`;
}

/** Code that sends all that is left of `cell`, then says so. */
export function fenceCell(cell: number): string {
  return `await ${HANDLE}.fence(${cell})`;
}

/** Run once, silently. */
export const DENO_PRELUDE = `await (async () => {
  const { AsyncLocalStorage } = await import("node:async_hooks");
  const NOTE = "${NOTE_TYPE}";
  const context = new AsyncLocalStorage();
  const { setTimeout, setInterval, clearTimeout, performance, queueMicrotask } = globalThis;
  const { broadcast, format } = Deno.jupyter;
  let running = 0;
  const cellNow = () => context.getStore() ?? running;
  const send = (note) =>
    broadcast("display_data", { data: { [NOTE]: note }, metadata: {} });

  let held, timer, length = 0, last = 0;
  const flush = () => {
    clearTimeout(timer);
    timer = undefined;
    last = performance.now();
    length = 0;
    const note = held;
    held = undefined;
    return note && send(note);
  };
  const write = (name, text) => {
    const cell = cellNow();
    if (held && held.cell !== cell) flush();
    held ??= { kind: "text", cell, parts: [] };
    const part = held.parts.at(-1);
    if (part?.[0] === name) part[1] += text;
    else held.parts.push([name, text]);
    length += text.length + 8;
    if (length > 32768 || performance.now() - last > 20) flush();
    else timer ??= setTimeout(flush, 20);
  };

  const { Console } = Deno[Deno.internal] ?? {};
  if (Console) {
    Object.assign(
      console,
      new Console((text, level) => write(level > 1 ? "stderr" : "stdout", text)),
    );
  }
  for (const name of ["stdout", "stderr"]) {
    const decoder = new TextDecoder();
    const take = (bytes) => {
      write(name, decoder.decode(bytes, { stream: true }));
      return bytes.byteLength;
    };
    Deno[name].writeSync = take;
    Deno[name].write = (bytes) => Promise.resolve(take(bytes));
    Object.defineProperty(Deno[name], "writable", {
      get: () => new WritableStream({ write: (bytes) => void take(bytes) }),
      configurable: true,
    });
  }

  Deno.jupyter.broadcast = (type, content, extra) => {
    flush();
    if (type === "display_data" || type === "update_display_data") {
      const metadata = { ...content.metadata, [NOTE]: cellNow() };
      content = { ...content, metadata };
    }
    return broadcast(type, content, extra);
  };
  Deno.jupyter.display = async (value, options = {}) => {
    const data = options.raw ? value : await format(value);
    const transient = options.display_id === undefined
      ? {}
      : { display_id: options.display_id };
    await Deno.jupyter.broadcast(
      options.update ? "update_display_data" : "display_data",
      { data, metadata: {}, transient },
    );
  };

  // An error thrown in a timer comes without its context.
  const thrownBy = new WeakMap();
  for (const name of ["setTimeout", "setInterval"]) {
    const original = globalThis[name];
    globalThis[name] = (callback, ...rest) => {
      if (typeof callback !== "function") return original(callback, ...rest);
      const cell = cellNow();
      return original((...values) => {
        try {
          return callback(...values);
        } catch (error) {
          if (error instanceof Error) thrownBy.set(error, cell);
          throw error;
        }
      }, ...rest);
    };
  }

  const tell = (event, reason) => {
    const cell = thrownBy.get(reason) ?? cellNow();
    const prevent = event.preventDefault.bind(event);
    let handled = false;
    event.preventDefault = () => {
      handled = true;
      prevent();
    };
    prevent();
    queueMicrotask(() => {
      if (handled) return;
      flush();
      const isError = reason instanceof Error;
      send({
        kind: "failure",
        cell,
        name: isError ? reason.name : "Error",
        message: isError ? reason.message : Deno.inspect(reason),
        stack: isError ? String(reason.stack) : "",
      });
    });
  };
  addEventListener("unhandledrejection", (event) => tell(event, event.reason));
  addEventListener("error", (event) => tell(event, event.error ?? event.message));
  addEventListener("unload", () => {
    flush();
    // The messages leave from another thread: let it catch up.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 50);
  });

  // Whoever started this kernel may be killed: it must not live on alone.
  const parent = Deno.ppid;
  Deno.unrefTimer(setInterval(() => {
    if (Deno.ppid !== parent) Deno.exit(1);
  }, 1000));

  Object.defineProperty(globalThis, Symbol.for("sagbook.run"), {
    value: {
      enter(cell) {
        running = cell;
        context.enterWith(cell);
      },
      async fence(cell) {
        await new Promise((done) => setTimeout(done, 0));
        await flush();
        await send({ kind: "fence", cell });
      },
    },
  });
})()`;
