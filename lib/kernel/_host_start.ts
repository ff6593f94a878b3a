/**
 * The part of a kernel that lives in the evaluator: runs the cells it is given,
 * and tells the kernel what became of them.
 */
import { pathToFileURL } from "node:url";
import type { ExpressionValue, Outcome } from "./evaluator.ts";
import {
  beginCell,
  define,
  each,
  type HostCell,
  interruptCell,
  Interrupted,
  runningCell,
  wait,
} from "./_host_cell.ts";
import { HostConsole } from "./_host_console.ts";
import { describeThrown } from "./_host_errors.ts";
import { explainMissing, giveUp } from "./_host_limits.ts";
import { guardTimers } from "./_host_timers.ts";
import { HostLink } from "./_host_link.ts";
import { HostPace } from "./_host_pace.ts";
import {
  CELL_KEY,
  HOST_KEY,
  type HostOptions,
  INTERRUPTED_INPUT,
  OUTCOME_MIME,
  REFUSED_INPUT,
  UNCAUGHT_MIME,
} from "./_host_protocol.ts";

type Helpers = Record<string, unknown>;
type CellFunction = (helpers: Helpers) => Promise<unknown>;

/** Time in ms that a stopped cell has for its own `finally` blocks. */
const TIDY_LIMIT = 40;

/** Time in ms for the last output of a process that ends itself. */
const LAST_WORDS = 50;

/** Starts the host; resolves once the kernel hears it. */
export async function startHost(options: HostOptions): Promise<void> {
  const { jupyter } = Deno;
  const { format } = jupyter as unknown as {
    format(value: unknown): Promise<Record<string, unknown>>;
  };
  const pace = new HostPace();
  const send = pace.numbered(jupyter.broadcast.bind(jupyter));
  const screen = new HostConsole(send, pace);
  const evaluate = globalThis.eval;
  const { setTimeout: later, queueMicrotask: soon } = globalThis;
  const folder = pathToFileURL(options.folder).href.replace(/\/?$/, "/");
  let current: { cell: HostCell; stop: () => void } | undefined;

  function tell(mime: string, cell: number | undefined, value: object): void {
    screen.flush(true);
    send("display_data", {
      data: { [mime]: { cell, ...value } },
      metadata: {},
      transient: {},
    });
  }

  function load(specifier: unknown, how?: ImportCallOptions): unknown {
    const name = String(specifier);
    const url = /^\.{0,2}\//.test(name) ? new URL(name, folder).href : name;
    const loading = options.load(url, how);
    return wait(
      options.revoke
        ? loading.catch((error) => {
          throw explainMissing(error, name);
        })
        : loading,
    );
  }

  function helpersOf(cell: HostCell): Helpers {
    return {
      wait,
      each,
      load,
      meta: {
        url: `${folder}cell-${cell.id}.ts`,
        filename: undefined,
        dirname: options.folder,
        main: false,
        resolve: (name: string) => new URL(name, folder).href,
      },
      keep(names: Record<string, unknown>) {
        for (const [name, value] of Object.entries(names)) {
          define(name, value);
          cell.assigned.add(name);
        }
      },
      declare(names: string[]) {
        for (const name of names) {
          if (!(name in globalThis)) define(name, undefined);
        }
      },
      mark(...names: string[]) {
        for (const name of names) cell.assigned.add(name);
      },
    };
  }

  /** Runs code in a task of its own, so that ending it leaves the host whole. */
  function start(cell: HostCell, code: string, name: string): Promise<unknown> {
    return new Promise((resolve, reject) => {
      soon(() => {
        try {
          const source = `(${code})\n//# sourceURL=${name}`;
          resolve((evaluate(source) as CellFunction)(helpersOf(cell)));
        } catch (error) {
          reject(error);
        }
      });
    });
  }

  async function evaluateAll(
    cell: HostCell,
    expressions: Record<string, string>,
  ): Promise<Record<string, ExpressionValue>> {
    const values: Record<string, ExpressionValue> = {};
    for (const [at, [name, code]] of Object.entries(expressions).entries()) {
      try {
        const value = await start(cell, code, `expression-${at}`);
        values[name] = { status: "ok", data: await format(value) as never };
      } catch (error) {
        values[name] = { status: "error", error: describeThrown(error) };
      }
    }
    return values;
  }

  async function run(
    id: number,
    code: string,
    expressions: Record<string, string>,
  ): Promise<void> {
    const cell = beginCell(id);
    const stopped = Promise.withResolvers<never>();
    stopped.promise.catch(() => {});
    current = { cell, stop: () => stopped.reject(new Interrupted()) };
    let outcome: { status: string } & Partial<Outcome>;
    try {
      const work = runningCell.run(cell, async () => {
        const value = await start(cell, code, `cell-${id}`);
        const data = value === undefined ? undefined : await format(value);
        // One turn of the loop: a rejection that nobody awaits shows itself.
        await new Promise((done) => later(done, 0));
        const values = await evaluateAll(cell, expressions);
        return { status: "ok", data, expressions: values } as const;
      });
      work.catch(() => {});
      outcome = await Promise.race([work, stopped.promise]) as Outcome;
    } catch (error) {
      outcome = cell.interrupted
        ? { status: "interrupted" }
        : { status: "error", error: describeThrown(error) };
    }
    cell.finished = true;
    current = undefined;
    tell(OUTCOME_MIME, id, {
      expressions: {},
      ...outcome,
      assigned: [...cell.assigned],
      pages: cell.pages,
    });
  }

  const link = await HostLink.connect(options, (cell, now) => {
    if (current?.cell.id !== cell) return;
    const { stop } = current;
    interruptCell(current.cell);
    if (now) stop();
    else later(stop, TIDY_LIMIT);
  });
  link.watch(pace.taken);
  screen.install();
  screen.installStreams();
  globalThis.addEventListener("unload", () => {
    screen.flush(true);
    // The last words are sent by another thread, which needs a moment.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LAST_WORDS);
  });

  jupyter.broadcast = ((type, content, extra) => {
    screen.flush();
    const cell = runningCell.getStore();
    if (type === "page") {
      cell?.pages.push(content.data as Record<string, unknown>);
      return Promise.resolve();
    }
    pace.wait();
    return send(type, content, {
      ...extra,
      metadata: {
        ...extra?.metadata,
        ...(cell && { [CELL_KEY]: cell.id }),
      },
    });
  }) as typeof jupyter.broadcast;
  jupyter.display = (async (value, how) => {
    const data = how?.raw ? value : await format(value);
    const type = how?.update ? "update_display_data" : "display_data";
    await jupyter.broadcast(type, {
      data,
      metadata: {},
      transient: how?.display_id ? { display_id: how.display_id } : {},
    });
  }) as typeof jupyter.display;

  const ask = globalThis.prompt;
  globalThis.prompt = (message, fallback) => {
    screen.flush();
    const answer = ask(message, fallback);
    if (answer === INTERRUPTED_INPUT) throw new Interrupted();
    if (answer === REFUSED_INPUT) throw new Error(NO_INPUT);
    return answer;
  };
  globalThis.confirm = (message) => {
    const answer = globalThis.prompt(`${message ?? "Confirm"} [y/N]`);
    return /^\s*y(es)?\s*$/i.test(answer ?? "");
  };
  globalThis.alert = (message) => {
    globalThis.prompt(`${message ?? "Alert"} [Enter]`);
  };

  function uncaught(thrown: unknown): void {
    if (thrown instanceof Interrupted) return;
    const cell = runningCell.getStore();
    tell(UNCAUGHT_MIME, cell?.id, { error: describeThrown(thrown) });
  }
  guardTimers(uncaught);
  globalThis.addEventListener("unhandledrejection", (event) => {
    event.preventDefault();
    uncaught(event.reason);
  });
  globalThis.addEventListener("error", (event) => {
    event.preventDefault();
    uncaught(event.error);
  });
  Object.defineProperty(globalThis, Symbol.for(HOST_KEY), { value: run });
  Deno.chdir(options.folder);
  if (options.revoke) await giveUp(options.revoke);
}

const NO_INPUT =
  "Cannot ask for input as the notebook runs without a user: give the value in the cell, or as a parameter";
