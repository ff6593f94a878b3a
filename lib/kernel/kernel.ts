/**
 * The kernel that a front end talks to.
 *
 * @module
 */
import { pathToFileURL } from "node:url";
import type { JsonObject } from "../protocol/message.ts";
import { CellQueue } from "./_cell_queue.ts";
import { Comms } from "./_comms.ts";
import { kernelInfo } from "./_kernel_info.ts";
import { KernelSockets, type Request } from "./_kernel_sockets.ts";
import { Runs } from "./_runs.ts";
import { createWorkspace, type Workspace } from "./_workspace.ts";
import type { CellRunner } from "./cell_runner.ts";
import { ChildEvaluator } from "./child_evaluator.ts";
import type { Evaluator, EvaluatorEvents } from "./evaluator.ts";
import { History } from "./history.ts";
import type { KernelSettings } from "./kernel_settings.ts";
import { mayFetch } from "./permission_limits.ts";

/** Time in ms after which the checker is loaded, asked for or not. */
const LOAD_AFTER = 150;

/**
 * Serves the Jupyter protocol without ever running user code itself, so that
 * it can always answer, interrupt and shut down.
 *
 * Cells wait in one queue; each is checked, then run by the evaluator. All its
 * outputs are published under the request that caused them, also those that
 * come late; those made before its end, before its reply. A cell that fails,
 * or an interrupt, abandons the cells that wait behind it.
 *
 * @see Jupyter messaging protocol 5.3.
 */
export class Kernel {
  /** Kept when the kernel has shut down and no process of its is left. */
  readonly finished: Promise<void>;
  #finish = Promise.withResolvers<void>();
  #settings: KernelSettings;
  #sockets: KernelSockets;
  #workspace: Promise<Workspace>;
  #evaluator: Promise<Evaluator>;
  #runner: Promise<CellRunner> | undefined;
  #loading: ReturnType<typeof setTimeout>;
  #tracing: CellRunner | undefined;
  #history = new History();
  #runs = new Runs();
  #comms = new Comms();
  #queue: CellQueue;
  #ending = false;

  /**
   * Opens the sockets and starts the evaluator.
   *
   * @param settings Connection, folder, checks and limits.
   * @throws {Deno.errors.AddrInUse} If another process has one of the ports.
   */
  constructor(settings: KernelSettings) {
    this.#settings = settings;
    this.finished = this.#finish.promise;
    this.#sockets = new KernelSockets(settings.connection);
    this.#queue = new CellQueue({
      sockets: this.#sockets,
      runs: this.#runs,
      history: this.#history,
      runner: () => this.#cells(),
    });
    const { folder, limits } = settings;
    this.#workspace = createWorkspace(
      folder,
      settings.packageConfig,
      settings.limits !== undefined,
    );
    this.#evaluator = this.#workspace.then((workspace) =>
      new ChildEvaluator(
        { folder, workspace: workspace.folder, limits },
        this.#events(),
      )
    );
    this.#evaluator.catch(() => {}); // who asks for it hears of it
    this.#sockets.publish("status", { execution_state: "starting" }, undefined);
    this.#serve();
    // The first question is answered before the checker takes the processor.
    this.#loading = setTimeout(() => this.#cells().catch(() => {}), LOAD_AFTER);
  }

  /** Stops the running cell and abandons those that wait. */
  async interrupt(): Promise<void> {
    this.#queue.interrupt();
    await (await this.#evaluator).interrupt();
  }

  /**
   * Ends evaluator, checker and sockets.
   *
   * @param last Called when only the sockets are left, to say goodbye.
   */
  async shutdown(last?: () => void): Promise<void> {
    if (this.#ending) return;
    this.#ending = true;
    clearTimeout(this.#loading);
    this.#queue.close();
    await Promise.allSettled([
      this.#evaluator.then((evaluator) => evaluator.stop()),
      this.#runner?.then((runner) => runner.stop()),
      this.#workspace.then((workspace) => workspace.remove()),
    ]);
    last?.();
    await this.#sockets.close();
    this.#finish.resolve();
  }

  /** Loads what reads and checks cells, once. */
  #cells(): Promise<CellRunner> {
    if (this.#ending) return Promise.reject(new Error("the kernel has ended"));
    return this.#runner ??= (async () => {
      const [{ CellRunner }, { config }, evaluator] = await Promise.all([
        import("./cell_runner.ts"),
        this.#workspace,
        this.#evaluator,
      ]);
      const { folder, check = true, explainers = [], limits } = this.#settings;
      const url = pathToFileURL(folder).href.replace(/\/?$/, "/");
      return this.#tracing = new CellRunner({
        folder: url,
        config,
        check,
        isOffline: limits !== undefined && !mayFetch(limits),
        explainers,
        evaluator,
      });
    })();
  }

  async #serve(): Promise<void> {
    for await (const request of this.#sockets.requests) {
      if (this.#ending) continue;
      const { msg_type } = request.message.header;
      if (msg_type === "execute_request") this.#queue.push(request);
      else if (msg_type === "shutdown_request") this.#sayGoodbye(request);
      else this.#respond(request);
    }
  }

  /** Answers everything but a cell and the shutdown. */
  async #respond(request: Request): Promise<void> {
    const { header: { msg_type }, content } = request.message;
    this.#status("busy", request);
    let answer: JsonObject | undefined;
    try {
      answer = await this.#answer(msg_type, content, request);
    } catch (error) {
      answer = {
        status: "error",
        ename: error instanceof Error ? error.name : "Error",
        evalue: error instanceof Error ? error.message : String(error),
        traceback: [],
      };
    }
    if (this.#ending) return;
    if (answer && msg_type.endsWith("_request")) {
      const type = msg_type.replace(/_request$/, "_reply");
      this.#sockets.reply(request, type, answer);
    }
    this.#status("idle", request);
  }

  async #answer(
    type: string,
    content: JsonObject,
    { message }: Request,
  ): Promise<JsonObject | undefined> {
    switch (type) {
      case "kernel_info_request":
        return kernelInfo(this.#settings.version ?? "0");
      case "interrupt_request":
        this.interrupt().catch(() => {});
        return { status: "ok" };
      case "is_complete_request": {
        const { isComplete } = await import("../cells/is_complete.ts");
        return { ...isComplete(String(content.code ?? "")) };
      }
      case "complete_request": {
        const { complete } = await import("./_answer_about_text.ts");
        return await complete((await this.#cells()).checker, content);
      }
      case "inspect_request": {
        const { inspect } = await import("./_answer_about_text.ts");
        return await inspect((await this.#cells()).checker, content);
      }
      case "history_request":
        return { status: "ok", history: this.#history.find(content) };
      case "comm_info_request":
        return { status: "ok", comms: this.#comms.list(content.target_name) };
      case "comm_open":
      case "comm_msg":
      case "comm_close":
        this.#comms.note(type, content);
        await (await this.#evaluator).forward(message);
        return undefined;
      default:
        throw new RangeError(
          `Cannot answer the message as its type must be known here: current value is ${
            JSON.stringify(type)
          }`,
        );
    }
  }

  async #sayGoodbye(request: Request): Promise<void> {
    const { header, content } = request.message;
    this.#status("busy", request);
    await this.shutdown(() => {
      const answer = { status: "ok", restart: content.restart === true };
      this.#sockets.publish("shutdown_reply", answer, header);
      this.#sockets.reply(request, "shutdown_reply", answer);
      this.#status("idle", request);
    });
  }

  #events(): EvaluatorEvents {
    return {
      output: (type, content, cell, buffers) => {
        if (this.#ending) return;
        this.#comms.note(type, content);
        const parent = this.#runs.find(cell)?.request.message.header;
        const shown = this.#tracing?.traceOutput(content) ?? content;
        this.#sockets.publish(type, shown, parent, { buffers });
      },
      uncaught: async (error, cell) => {
        const run = this.#runs.find(cell);
        if (this.#queue.takeUncaught(error, run)) return;
        const shown = (await this.#cells()).traceUncaught(error, cell);
        const parent = run?.request.message.header;
        this.#sockets.publish("error", { ...shown }, parent);
      },
      question: async (prompt, password) => {
        const request = this.#runs.latest?.request;
        if (request?.message.content.allow_stdin !== true) return undefined;
        return await this.#sockets.ask(request, prompt, password);
      },
      lost: (reason) => {
        this.#queue.notice =
          `The evaluator ended (${reason}) and was started anew: all variables were lost, so run the cells above again.\n`;
        this.#runner?.then((runner) => runner.reset());
      },
    };
  }

  #status(execution_state: "busy" | "idle", { message }: Request): void {
    this.#sockets.publish("status", { execution_state }, message.header);
  }
}
