/** Runs a task's file as its own process, as `deno task` does. */
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** What a task said and how it ended. */
export interface TaskRun {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs `lib/tasks/NAME.ts` with arguments, colours off. */
export async function runTask(
  name: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<TaskRun> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-prompt", `lib/tasks/${name}.ts`, ...args],
    cwd: ROOT,
    env: { NO_COLOR: "1", ...env },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
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
