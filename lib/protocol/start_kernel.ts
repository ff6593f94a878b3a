/**
 * Starting any kernel by its command.
 *
 * @module
 */
import { join } from "node:path";
import { makePrivateFolder } from "../files/private_folder.ts";
import { KernelProcess, type ProcessSettings } from "./_kernel_process.ts";
import { settled } from "./settled.ts";
import {
  type Connection,
  createConnection,
  writeConnectionFile,
} from "./connection.ts";
import { KernelClient } from "./kernel_client.ts";
import { KernelDiedError } from "./kernel_error.ts";
import type { KernelOutput } from "./kernel_output.ts";
import type { JsonObject } from "./message.ts";
import { RunningKernel } from "./running_kernel.ts";

/** Settings of a kernel's start. */
export interface StartOptions {
  /** Working folder of the kernel. */
  readonly cwd?: string;
  /** Variables added to the environment. */
  readonly env?: Readonly<Record<string, string>>;
  /** Time in ms until it must answer; 60 000 unless told. */
  readonly timeLimit?: number;
  /** How it is interrupted: `"message"` unless told. */
  readonly interruptBy?: "message" | "signal";
  /** Takes outputs that name no request of this client. */
  readonly onStrayOutput?: (
    output: KernelOutput,
    parentId: string | undefined,
  ) => void;
  /**
   * Puts the kernel out of reach of a terminal's interrupt key, which goes to
   * every process of a group; false unless told.
   */
  readonly ownGroup?: boolean;
  /** Takes what the process writes on its own streams, as text. */
  readonly onLog?: (text: string, stream: "stdout" | "stderr") => void;
}

const PLACEHOLDER = "{connection_file}";
const ATTEMPTS = 4;

/**
 * Starts a kernel and waits until it answers.
 *
 * Five free ports and a fresh key are written to a file that only the owner
 * can read; its path takes the place of `{connection_file}` in the command.
 * If another process takes one of the ports meanwhile, others are tried. The
 * file is removed once the kernel has answered, or failed.
 *
 * @param command Program and arguments, as `argv` in a kernelspec.
 * @param options Folder, environment, time limit, listeners.
 * @returns The running kernel.
 * @throws {RangeError} If the command has no `{connection_file}`.
 * @throws {KernelDiedError} If the process ends before it answers.
 * @throws {Deno.errors.TimedOut} If it does not answer in time.
 * @throws {Deno.errors.NotFound} If there is no such program.
 *
 * @see Jupyter documentation, "Making kernels for Jupyter" (argv, connection
 * files).
 *
 * @example One cell on Deno's own kernel
 * ```ts
 * import { startKernel } from "sagbook/protocol/start_kernel.ts";
 * import { equal } from "node:assert/strict";
 *
 * await using kernel = await startKernel(
 *   [Deno.execPath(), "jupyter", "--kernel", "--conn", "{connection_file}"],
 * );
 * let printed = "";
 * const { status } = await kernel.execute("console.log(6 * 7)", {
 *   onOutput: (output) => {
 *     if (output.output_type === "stream") printed += output.text;
 *   },
 * });
 * equal(status, "ok");
 * // Deno's own kernel may send what was printed after its reply.
 * while (printed === "") await new Promise((done) => setTimeout(done, 10));
 * equal(printed, "42\n");
 * ```
 */
export async function startKernel(
  command: readonly string[],
  options: StartOptions = {},
): Promise<RunningKernel> {
  if (!command.some((word) => word.includes(PLACEHOLDER))) {
    throw new RangeError(
      `Cannot start a kernel as its command must contain ${PLACEHOLDER}: current value is ${
        JSON.stringify(command.join(" "))
      }`,
    );
  }
  for (let attempt = 1;; attempt++) {
    try {
      return await startOnce(command, options);
    } catch (error) {
      const portTaken = error instanceof KernelDiedError &&
        /address (already )?in use|addrinuse|EADDRINUSE/i.test(error.exit.log);
      if (!portTaken || attempt === ATTEMPTS) throw error;
    }
  }
}

async function startOnce(
  command: readonly string[],
  options: StartOptions,
): Promise<RunningKernel> {
  const { timeLimit = 60_000 } = options;
  const connection = createConnection();
  const folder = await makePrivateFolder("kernel");
  const file = join(folder, "connection.json");
  const stopWaiting = new AbortController();
  let process: KernelProcess | undefined;
  try {
    await writeConnectionFile(file, connection);
    process = new KernelProcess(
      command.map((word) => word.replaceAll(PLACEHOLDER, file)),
      options as ProcessSettings,
    );
    const died = process.exited.then((exit) => {
      throw new KernelDiedError(exit);
    });
    const timer = setTimeout(() =>
      stopWaiting.abort(
        new Deno.errors.TimedOut(
          `Cannot start the kernel as it must answer within ${
            timeLimit / 1000
          } s: it has not`,
        ),
      ), timeLimit);
    const hungUp = Promise.withResolvers<void>();
    const answered = greet(connection, stopWaiting.signal, hungUp.resolve);
    const started = process;
    hungUp.promise.then(async () => {
      // A kernel without sockets is of no use to anybody.
      if (!await settled(started.exited, 5_000)) started.kill();
    });
    try {
      const { client, info } = await Promise.race([answered, died]);
      return new RunningKernel(process, client, info, connection, options);
    } catch (error) {
      stopWaiting.abort(error);
      answered.then(({ client }) => client.close(), () => {});
      throw error;
    } finally {
      clearTimeout(timer);
      died.catch(() => {});
    }
  } catch (error) {
    process?.kill();
    await process?.exited;
    throw error;
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Connects, and asks until both reply and output channel are heard. */
async function greet(
  connection: Connection,
  signal: AbortSignal,
  onDisconnect: () => void,
): Promise<{ client: KernelClient; info: JsonObject }> {
  const client = await KernelClient.connect(connection, {
    timeLimit: 3_600_000,
    signal,
    onDisconnect,
  });
  const heard = Promise.withResolvers<void>();
  const listener = () => heard.resolve();
  const aborted = Promise.withResolvers<never>();
  aborted.promise.catch(() => {});
  const abort = () => aborted.reject(signal.reason);
  signal.addEventListener("abort", abort);
  client.outputListeners.add(listener);
  try {
    for (;;) {
      signal.throwIfAborted();
      const { content } = await Promise.race([
        client.request("shell", "kernel_info_request", {}),
        aborted.promise,
      ]);
      if (await settled(heard.promise, 100)) return { client, info: content };
    }
  } catch (error) {
    client.close();
    throw error;
  } finally {
    signal.removeEventListener("abort", abort);
    client.outputListeners.delete(listener);
  }
}
