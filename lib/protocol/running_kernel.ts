/**
 * A kernel that has been started and answers.
 *
 * @module
 */
import { Execution } from "./_execution.ts";
import type { KernelProcess } from "./_kernel_process.ts";
import { settled } from "./settled.ts";
import type { Connection } from "./connection.ts";
import type { ExecuteOptions, ExecuteResult } from "./execute.ts";
import type { KernelClient } from "./kernel_client.ts";
import {
  KernelDiedError,
  type KernelExit,
  TimeLimitError,
} from "./kernel_error.ts";
import { readOutput } from "./kernel_output.ts";
import type { JsonObject, Message } from "./message.ts";
import type { StartOptions } from "./start_kernel.ts";

const REMEMBERED = 10_000;

/**
 * Runs code on one kernel and sees to its end.
 *
 * Every promise it gives is settled: with the kernel's answer, or with the
 * reason why there is none. {@linkcode startKernel} makes it.
 */
export class RunningKernel implements AsyncDisposable {
  /** The kernel's ports and key. */
  readonly connection: Connection;
  /** The kernel's answer to who it is. */
  readonly info: JsonObject;
  /** The sockets, for requests of other kinds. */
  readonly client: KernelClient;
  /** Kept when the process has ended, wanted or not; never rejected. */
  readonly exited: Promise<KernelExit>;
  #process: KernelProcess;
  #options: StartOptions;
  #executions = new Map<string, Execution>();

  /**
   * For {@linkcode startKernel} alone.
   *
   * @param process The process.
   * @param client Its connected client.
   * @param info The kernel's answer to who it is.
   * @param connection Ports and key.
   * @param options Settings of the start.
   * @ignore
   */
  constructor(
    process: KernelProcess,
    client: KernelClient,
    info: JsonObject,
    connection: Connection,
    options: StartOptions,
  ) {
    this.#process = process;
    this.#options = options;
    this.client = client;
    this.info = info;
    this.connection = connection;
    client.outputListeners.add((message) => this.#hear(message));
    client.inputListeners.add((message) => {
      this.#executions.get(message.parent.msg_id)?.ask(message);
    });
    this.exited = process.exited.then(async (exit) => {
      await settled(client.outputEnded, 1_000); // what it still said is read
      client.fail(new KernelDiedError(exit));
      client.close();
      return exit;
    });
  }

  /** Process id of the kernel. */
  get pid(): number {
    return this.#process.pid;
  }

  /**
   * Runs code and waits for the reply and all outputs before it.
   *
   * Outputs that come later still go to this call's `onOutput`, marked late.
   *
   * @param code Source text of a cell.
   * @param options Listeners and limits.
   * @returns What became of it; a failing cell is a result, not an exception.
   * @throws {KernelDiedError} If the kernel ends meanwhile.
   * @throws {TimeLimitError} If the code runs longer than `timeLimit`.
   */
  async execute(
    code: string,
    options: ExecuteOptions = {},
  ): Promise<ExecuteResult> {
    const execution = new Execution(this.client, options);
    const running = execution.run(code);
    if (execution.id) this.#remember(execution);
    const { timeLimit } = options;
    if (timeLimit === undefined || await settled(running, timeLimit)) {
      return await running;
    }
    running.catch(() => {});
    this.interrupt().catch(() => {});
    const lives = await settled(running, options.graceLimit ?? 10_000);
    if (!lives) await this.kill();
    throw new TimeLimitError(timeLimit, lives);
  }

  /**
   * Asks the kernel to stop what it runs.
   *
   * @returns A promise kept when the kernel has heard it, which may be before
   * the code has stopped.
   */
  async interrupt(): Promise<void> {
    if (this.#options.interruptBy === "signal") this.#process.interrupt();
    else await this.client.request("control", "interrupt_request", {});
  }

  /**
   * Ends the kernel: by request, then by signal, then by force.
   *
   * @param patience Time in ms for each of the first two; 5 000 unless told.
   * @returns How the process ended.
   */
  async shutdown(patience = 5_000): Promise<KernelExit> {
    this.#process.expected = true;
    this.client.request("control", "shutdown_request", { restart: false })
      .catch(() => {});
    if (!await settled(this.exited, patience)) this.#process.stop();
    if (!await settled(this.exited, patience)) this.#process.kill();
    return await this.exited;
  }

  /** Ends the process by force. */
  async kill(): Promise<KernelExit> {
    this.#process.expected = true;
    this.#process.kill();
    return await this.exited;
  }

  /** Shuts the kernel down at the end of an `await using` block. */
  async [Symbol.asyncDispose](): Promise<void> {
    await this.shutdown();
  }

  #remember(execution: Execution): void {
    this.#executions.set(execution.id, execution);
    if (this.#executions.size > REMEMBERED) {
      this.#executions.delete(this.#executions.keys().next().value!);
    }
  }

  #hear(message: Message): void {
    const execution = this.#executions.get(message.parent.msg_id);
    if (execution) return execution.hear(message);
    const output = readOutput(message);
    if (output) this.#options.onStrayOutput?.(output, message.parent.msg_id);
  }
}
