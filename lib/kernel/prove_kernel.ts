/**
 * Trying a kernel before it is offered to anybody.
 *
 * @module
 */
import { startKernel } from "../protocol/start_kernel.ts";
import { makePrivateFolder } from "../files/private_folder.ts";

/** What was seen of a kernel that works. */
export interface KernelProof {
  /** Time in ms from the start to the first value. */
  readonly firstValue: number;
  /** Time in ms from the interrupt to the end of a busy loop. */
  readonly interrupt: number;
}

/** Longest time in ms for any step; the first may have to fetch packages. */
const LIMIT = 120_000;

/**
 * Runs one real cell and one real interrupt on a kernel, in an empty folder.
 *
 * An older or newer runtime may lack what the kernel is built on: the ending
 * of running code without the loss of variables. Trying is the only sure test.
 *
 * @param command The kernel's command, with `{connection_file}`.
 * @param library Name under which the cell imports the library, such as
 * "sagbook"; nothing is imported unless given.
 * @returns How long both took.
 * @throws {Error} In words, if the value is wrong, the loop does not end, or
 * the variable is lost.
 */
export async function proveKernel(
  command: readonly string[],
  library?: string,
): Promise<KernelProof> {
  const cwd = await makePrivateFolder("proof");
  const begun = performance.now();
  try {
    await using kernel = await startKernel(command, { cwd, timeLimit: LIMIT });
    const value = async (code: string) => {
      let text: unknown;
      const { status, error } = await kernel.execute(code, {
        timeLimit: LIMIT,
        onOutput: (output) => {
          if (output.output_type === "execute_result") {
            text = output.data["text/plain"];
          }
        },
      });
      if (status !== "ok") {
        throw new Error(
          `Cannot use the kernel: a cell failed: ${error?.evalue}`,
        );
      }
      return text;
    };
    const imported = library ? `import * as library from "${library}";\n` : "";
    expect(
      await value(`${imported}const sag: number = 0.75;\nsag * 2`),
      "1.5",
    );
    const firstValue = performance.now() - begun;
    const loop = kernel.execute("while (true) {}", { timeLimit: LIMIT });
    await new Promise((done) => setTimeout(done, 300));
    const stopped = performance.now();
    await kernel.interrupt();
    const { status, error } = await loop;
    const interrupt = performance.now() - stopped;
    if (status !== "error" || error?.ename !== "Interrupted") {
      throw new Error(
        `Cannot use the kernel: an interrupt did not stop a loop: ${
          error?.evalue ?? status
        }`,
      );
    }
    expect(await value("sag"), "0.75");
    return { firstValue, interrupt };
  } finally {
    await Deno.remove(cwd, { recursive: true });
  }
}

function expect(value: unknown, expected: string): void {
  if (value === expected) return;
  throw new Error(
    `Cannot use the kernel: a cell should give ${expected}: current value is ${value}`,
  );
}
