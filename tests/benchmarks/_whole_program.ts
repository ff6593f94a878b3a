/**
 * Times a command from its start to its end, with the peak memory of all
 * processes that it starts.
 *
 * @module
 */

const MARK = "SAGBOOK_BENCH";
/** How often memory is looked at, in ms. */
const PACE = 25;

/** How a command ran. */
export interface WholeRun {
  /** Milliseconds from start to end. */
  readonly ms: number;
  /**
   * Largest sum of resident memory, in MB, looked at every 25 ms; memory that
   * processes share counts once for each. 0 where `/proc` is not.
   */
  readonly peak: number;
}

/** Resident memory, in MB, of all processes that bear a mark. */
export async function memoryOf(mark: string): Promise<number> {
  let sum = 0;
  try {
    for await (const { name } of Deno.readDir("/proc")) {
      if (!/^\d+$/.test(name)) continue;
      try {
        const environ = await Deno.readTextFile(`/proc/${name}/environ`);
        if (!environ.includes(`${MARK}=${mark}`)) continue;
        const status = await Deno.readTextFile(`/proc/${name}/status`);
        sum += Number(/VmRSS:\s*(\d+)/.exec(status)?.[1] ?? 0);
      } catch {
        // It has ended, or is not ours to look at.
      }
    }
  } catch {
    return 0;
  }
  return sum / 1024;
}

/** The environment of a process whose memory is to be counted. */
export function marked(mark: string): Record<string, string> {
  return { [MARK]: mark };
}

/**
 * Runs a command to its end.
 *
 * @param command The program and its arguments.
 * @param env Variables of the environment.
 * @returns Time and memory.
 * @throws {Deno.errors.NotFound} If there is no such program.
 * @throws {Error} If it fails; the end of what it complained about is quoted.
 */
export async function wholeProgram(
  command: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<WholeRun> {
  const [program, ...args] = command;
  const mark = crypto.randomUUID();
  const start = performance.now();
  const child = new Deno.Command(program, {
    args,
    env: { NO_COLOR: "1", ...env, ...marked(mark) },
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  let [peak, running] = [0, true];
  const watching = (async () => {
    while (running) {
      peak = Math.max(peak, await memoryOf(mark));
      await new Promise((done) => setTimeout(done, PACE));
    }
  })();
  const { success, stderr } = await child.output();
  const ms = performance.now() - start;
  running = false;
  await watching;
  if (!success) {
    const said = new TextDecoder().decode(stderr).trim().slice(-500);
    throw new Error(`${command.join(" ")} failed: ${said}`);
  }
  return { ms, peak };
}
