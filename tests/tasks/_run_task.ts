/** Runs a task's file as its own process, as `deno task` does. */
import { equal } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** What a task said and how it ended. */
export interface TaskRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/**
 * Runs `lib/tasks/NAME.ts` with arguments, colours off; no process that it
 * started may live on.
 */
export async function runTask(
  name: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<TaskRun> {
  const mark = crypto.randomUUID();
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-prompt", `lib/tasks/${name}.ts`, ...args],
    cwd: ROOT,
    env: { NO_COLOR: "1", [MARK]: mark, ...env },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  if (Deno.build.os === "linux") {
    equal((await processesMarked(mark)).length, 0, `${name}: processes left`);
  }
  const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
}

/** Runs a task's function in this process, its words caught. */
export async function overhear(run: () => Promise<number>): Promise<TaskRun> {
  const { log, error } = console;
  const out: string[] = [];
  const err: string[] = [];
  console.log = (text: string) => out.push(text);
  console.error = (text: string) => err.push(text);
  try {
    return { code: await run(), out: out.join("\n"), err: err.join("\n") };
  } finally {
    Object.assign(console, { log, error });
  }
}

/** Copies a folder of data to a new temporary one, reports left out. */
export async function copyPiece(name: string): Promise<string> {
  const to = await Deno.makeTempDir({ prefix: "piece-" });
  const copy = async (from: string, into: string): Promise<void> => {
    for await (const entry of Deno.readDir(from)) {
      if (entry.name === "report") continue;
      if (entry.isDirectory) {
        await Deno.mkdir(`${into}/${entry.name}`);
        await copy(`${from}/${entry.name}`, `${into}/${entry.name}`);
      } else {
        await Deno.copyFile(`${from}/${entry.name}`, `${into}/${entry.name}`);
      }
    }
  };
  await copy(`${ROOT}data/${name}`, to);
  return to;
}
