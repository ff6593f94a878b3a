/**
 * What a newcomer waits for: a fresh clone with empty caches, and the first
 * command of README.md. Needs the network.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { BenchReport } from "sagbook/tasks/_benchmark.ts";
import { benchProgram, type BenchSize } from "./_program.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

async function git(...args: string[]): Promise<void> {
  const { success, stderr } = await new Deno.Command("git", {
    args,
    stdout: "null",
    stderr: "piped",
  }).output();
  if (!success) throw new Error(new TextDecoder().decode(stderr).trim());
}

/** Bytes of all files in a folder; 0 if there is none. */
async function weight(folder: string): Promise<number> {
  let sum = 0;
  try {
    for await (const entry of Deno.readDir(folder)) {
      const path = `${folder}/${entry.name}`;
      sum += entry.isDirectory
        ? await weight(path)
        : (await Deno.lstat(path)).size;
    }
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  return sum;
}

/** The command, as README.md shows it. */
async function firstCommand(): Promise<string[]> {
  const readme = await Deno.readTextFile(`${ROOT}README.md`);
  const shown = /npx -y deno@[\d.]+ task report/.exec(readme)?.[0];
  if (shown === undefined) throw new Error("README.md shows no first command");
  return shown.split(" ");
}

/** When each thing that the command says came, in ms from its start. */
async function listen(
  command: readonly string[],
  cwd: string,
  env: Record<string, string>,
  marks: readonly RegExp[],
): Promise<{ at: (number | undefined)[]; ms: number }> {
  const [program, ...args] = command;
  const start = performance.now();
  const child = new Deno.Command(program, {
    args,
    cwd,
    env: { NO_COLOR: "1", ...env },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).spawn();
  const at: (number | undefined)[] = marks.map(() => undefined);
  let said = "";
  const hear = async (stream: ReadableStream<Uint8Array<ArrayBuffer>>) => {
    for await (const part of stream.pipeThrough(new TextDecoderStream())) {
      said += part;
      marks.forEach((mark, k) => {
        if (at[k] === undefined && mark.test(said)) {
          at[k] = performance.now() - start;
        }
      });
    }
  };
  await Promise.all([hear(child.stdout), hear(child.stderr)]);
  const { success } = await child.status;
  if (!success) throw new Error(`${command.join(" ")}: ${said.slice(-500)}`);
  return { at, ms: performance.now() - start };
}

async function run(size: BenchSize): Promise<BenchReport> {
  const box = await Deno.makeTempDir({ prefix: "newcomer-" });
  try {
    const clone = `${box}/clone`;
    await git("clone", "-q", ROOT, clone);
    const home = Deno.env.get("HOME") ?? "";
    await Deno.mkdir(`${box}/home`);
    // How this machine reaches the registry is not what is measured.
    await Deno.copyFile(`${home}/.npmrc`, `${box}/home/.npmrc`).catch(() => {});
    const command = size === "tiny"
      ? [Deno.execPath(), "--version"]
      : await firstCommand();
    const { at: [started, first], ms } = await listen(command, clone, {
      HOME: `${box}/home`,
      DENO_DIR: `${box}/deno`,
      npm_config_cache: `${box}/npm`,
      JUPYTER_DATA_DIR: `${box}/jupyter`,
    }, [/^Task report /m, /^Page: /m]);
    const bytes = await weight(`${box}/deno`) + await weight(`${box}/npm`);
    return {
      title: "Cold start",
      about:
        "A fresh clone, empty caches, and `npx -y deno task report` as README.md shows it, once. Where a program named deno is installed, npx takes that one and does not fetch it.",
      rows: [
        { what: "Cold start: packages there", ours: started ?? 0 },
        { what: "Cold start: clone to the first report", ours: first ?? 0 },
        { what: "Cold start: reports on all invented pieces", ours: ms },
        {
          what: "Cold start: caches afterwards",
          ours: bytes / 1e6,
          unit: "MB",
        },
      ],
    };
  } finally {
    await Deno.remove(box, { recursive: true });
  }
}

if (import.meta.main) await benchProgram({ run });
