import { fileURLToPath } from "node:url";
import { kernelCommand } from "sagbook/kernel/kernel_command.ts";
import type { PermissionLimits } from "sagbook/kernel/kernel_settings.ts";
import type {
  ExecuteOptions,
  ExecuteResult,
} from "sagbook/protocol/execute.ts";
import type { KernelOutput } from "sagbook/protocol/kernel_output.ts";
import type { RunningKernel } from "sagbook/protocol/running_kernel.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";

const path = (name: string) =>
  fileURLToPath(new URL(`../../${name}`, import.meta.url));

/** The command of this package's kernel. */
export function command(check = true, limits?: PermissionLimits): string[] {
  const main = path("lib/tasks/kernel.ts");
  return kernelCommand({ main, config: path("deno.json"), check, limits });
}

/** A cell's outcome with its outputs, and those that came late. */
export interface Ran extends ExecuteResult {
  readonly outputs: KernelOutput[];
  readonly late: KernelOutput[];
  /** All text printed on standard output. */
  readonly printed: string;
  /** Text of the value. */
  readonly value: string | undefined;
}

/** A running kernel, short to write for. */
export class Session implements AsyncDisposable {
  private constructor(
    readonly kernel: RunningKernel,
    readonly folder: string,
    readonly mark: string,
  ) {}

  /** Starts the kernel in an empty folder, unchecked unless told. */
  static async start(
    { check = false, quiet = true, limits, folder }: {
      check?: boolean;
      quiet?: boolean;
      limits?: PermissionLimits;
      folder?: string;
    } = {},
  ): Promise<Session> {
    const own = await Deno.makeTempDir({ prefix: "session-" });
    const mark = crypto.randomUUID();
    const kernel = await startKernel(command(check, limits), {
      cwd: folder ?? own,
      env: { SESSION_MARK: mark },
    });
    // Without a check the first cell says so; tests of outputs begin after.
    if (!check && quiet) await kernel.execute("0", { silent: true });
    return new Session(kernel, own, mark);
  }

  /** Runs a cell; a generous time limit keeps a broken test from hanging. */
  async run(code: string, options: ExecuteOptions = {}): Promise<Ran> {
    const outputs: KernelOutput[] = [];
    const late: KernelOutput[] = [];
    const result = await this.kernel.execute(code, {
      timeLimit: 60_000,
      ...options,
      onOutput: (output, origin) => {
        (origin.late ? late : outputs).push(output);
        options.onOutput?.(output, origin);
      },
    });
    const shown = outputs.find((o) => o.output_type === "execute_result");
    return {
      ...result,
      outputs,
      late,
      printed: textOf(outputs, "stdout"),
      value: shown?.data["text/plain"] as string | undefined,
    };
  }

  /** Runs a cell and interrupts it after a while; gives the time it then took. */
  async interrupted(
    code: string,
    interrupt = () => this.kernel.interrupt(),
    after = 200,
  ): Promise<{ result: Ran; took: number }> {
    const running = this.run(code);
    await pause(after);
    const begun = performance.now();
    await interrupt();
    const result = await running;
    return { result, took: performance.now() - begun };
  }

  /** Processes that this session's kernel has started, and itself. */
  async processes(): Promise<number[]> {
    const found: number[] = [];
    for await (const { name } of Deno.readDir("/proc")) {
      if (!/^\d+$/.test(name)) continue;
      try {
        const text = await Deno.readTextFile(`/proc/${name}/environ`);
        if (text.includes(`SESSION_MARK=${this.mark}`)) found.push(+name);
      } catch {
        // Ended meanwhile, or somebody else's.
      }
    }
    return found;
  }

  /** Asks on the shell. */
  async ask(type: string, content: Record<string, unknown>) {
    return (await this.kernel.client.request("shell", type, content)).content;
  }

  async [Symbol.asyncDispose](): Promise<void> {
    await this.kernel.shutdown();
    await Deno.remove(this.folder, { recursive: true });
  }
}

/** All text of one stream. */
export function textOf(
  outputs: readonly KernelOutput[],
  name: "stdout" | "stderr",
): string {
  return outputs.map((output) =>
    output.output_type === "stream" && output.name === name ? output.text : ""
  ).join("");
}

/** Waits. */
export function pause(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}
