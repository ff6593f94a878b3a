import type { JsonObject } from "../protocol/message.ts";
import type { KernelSockets, Request } from "./_kernel_sockets.ts";
import type { Run, Runs } from "./_runs.ts";
import type { CellResult } from "./cell_result.ts";
import type { CellRunner } from "./cell_runner.ts";
import type { ThrownError } from "./evaluator.ts";
import type { History } from "./history.ts";

/** What the queue works with. */
export interface CellQueueParts {
  readonly sockets: KernelSockets;
  readonly runs: Runs;
  readonly history: History;
  /** Gives the runner once it is loaded. */
  readonly runner: () => Promise<CellRunner>;
}

/** Runs the cells one after the other, and answers each. */
export class CellQueue {
  /** Said at the start of the next cell. */
  notice = "";
  #parts: CellQueueParts;
  #waiting: Request[] = [];
  #current: Run | undefined;
  #stop: (() => void) | undefined;
  #count = 0;
  #closed = false;

  constructor(parts: CellQueueParts) {
    this.#parts = parts;
  }

  /** Takes a request to run a cell. */
  push(request: Request): void {
    this.#waiting.push(request);
    if (!this.#current) this.#work();
  }

  /** Answers the cells that wait with "aborted". */
  abandon(): void {
    for (const request of this.#waiting.splice(0)) {
      this.#status("busy", request);
      this.#parts.sockets.reply(request, "execute_reply", {
        status: "aborted",
        execution_count: this.#count,
      });
      this.#status("idle", request);
    }
  }

  /** Abandons what waits, and stops a cell that has not come to run yet. */
  interrupt(): void {
    this.abandon();
    this.#stop?.();
  }

  /** Runs and answers nothing any more. */
  close(): void {
    this.#closed = true;
    this.#waiting = [];
  }

  /** Takes an error that nothing awaited; false if its cell has ended. */
  takeUncaught(error: ThrownError, run: Run | undefined): boolean {
    if (!run || run !== this.#current) return false;
    run.uncaught ??= error;
    return true;
  }

  async #work(): Promise<void> {
    for (let next; (next = this.#waiting.shift()) !== undefined;) {
      const { content } = next.message;
      const source = typeof content.code === "string" ? content.code : "";
      const silent = content.silent === true;
      const counted = !silent && content.store_history !== false &&
        source.trim() !== "";
      if (counted) this.#count++;
      const name = silent ? "the code" : `cell ${this.#count}`;
      this.#current = this.#parts.runs.begin(next, name);
      this.#status("busy", next);
      if (!silent) {
        this.#publish("execute_input", {
          code: source,
          execution_count: this.#count,
        }, next);
      }
      const result = await this.#run(this.#current, source);
      this.#current = undefined;
      if (this.#closed) return;
      if (counted) this.#remember(source, result);
      this.#answer(next, result, silent);
      this.#status("idle", next);
      if (result.status === "error" && content.stop_on_error !== false) {
        this.abandon();
      }
    }
  }

  async #run(run: Run, source: string): Promise<CellResult> {
    const say = (text: string) =>
      this.#publish("stream", { name: "stderr", text }, run.request);
    if (this.notice) say(this.notice);
    this.notice = "";
    if (source.trim() === "") return { status: "ok", expressions: {} };
    const stopped = Promise.withResolvers<void>();
    this.#stop = stopped.resolve;
    try {
      const runner = await this.#parts.runner();
      const { user_expressions } = run.request.message.content;
      const result = await runner.run({
        id: run.id,
        source,
        name: run.name,
        expressions: user_expressions as Record<string, unknown> ?? {},
        say,
      }, stopped.promise);
      if (result.status === "error" || !run.uncaught) return result;
      const error = runner.traceUncaught(run.uncaught, run.id);
      return { ...result, status: "error", error, uncaught: true };
    } catch (error) {
      const ename = error instanceof Error ? error.name : "Error";
      const evalue = error instanceof Error ? error.message : String(error);
      const traceback = [`${ename}: ${evalue}`];
      const shown = { ename, evalue, traceback };
      return { status: "error", error: shown, expressions: {} };
    } finally {
      this.#stop = undefined;
    }
  }

  #remember(input: string, result: CellResult): void {
    const output = result.status === "ok" && result.data?.["text/plain"];
    this.#parts.history.add({
      line: this.#count,
      input,
      ...(typeof output === "string" && { output }),
    });
  }

  #answer(request: Request, result: CellResult, silent: boolean): void {
    const execution_count = this.#count;
    if (result.status === "error") {
      const { error } = result;
      this.#publish("error", { ...error }, request);
      this.#reply(request, {
        status: "error",
        execution_count,
        ...error,
        // Beyond the protocol: the cell itself came to its end.
        ...(result.uncaught && { uncaught: true }),
      });
      return;
    }
    if (result.data && !silent) {
      const { data } = result;
      this.#publish(
        "execute_result",
        { execution_count, data, metadata: {} },
        request,
      );
    }
    this.#reply(request, {
      status: "ok",
      execution_count,
      payload: (result.pages ?? []).map((data) => ({
        source: "page",
        data,
        start: 0,
      })),
      user_expressions: result.expressions,
    });
  }

  #reply(request: Request, content: JsonObject): void {
    this.#parts.sockets.reply(request, "execute_reply", content);
  }

  #status(execution_state: "busy" | "idle", request: Request): void {
    this.#publish("status", { execution_state }, request);
  }

  #publish(type: string, content: JsonObject, { message }: Request): void {
    this.#parts.sockets.publish(type, content, message.header);
  }
}
