/** Commands as documents show them, taken apart and run. */
import { ROOT } from "../tasks/_run_task.ts";

/** A command `deno task NAME ARGS`. */
export interface Command {
  readonly task: string;
  readonly args: readonly string[];
}

type TaskLine = string | { readonly command: string };

/** The tasks of the project, by name. */
export const TASKS: ReadonlyMap<string, string> = new Map(
  Object.entries(
    JSON.parse(Deno.readTextFileSync(`${ROOT}deno.json`)).tasks as Record<
      string,
      TaskLine
    >,
  ).map(([name, line]) => [
    name,
    typeof line === "string" ? line : line.command,
  ]),
);

/** The file of `lib/tasks/` that a task runs; none for the tests. */
export function fileOfTask(task: string): string | undefined {
  return /^deno run -A (lib\/tasks\/\w+\.ts)$/.exec(TASKS.get(task) ?? "")?.[1];
}

/**
 * Takes a line of a shell apart: words, quoted words, a comment at its end.
 * Anything else a shell knows is refused.
 */
export function wordsOf(line: string): string[] {
  const words: string[] = [];
  const rest = line.trim().replace(
    /"([^"\\$`]*)"|'([^']*)'|(#.*$)|([^\s"'#|&;<>$`\\()]+)|\s+/gm,
    (whole, double, single, comment, bare) => {
      const word = double ?? single ?? bare;
      if (word !== undefined) words.push(word);
      else if (comment === undefined && whole.trim() !== "") return whole;
      return "";
    },
  );
  if (rest !== "") throw new SyntaxError(`Too much of a shell: ${rest}`);
  return words;
}

/** The task and arguments of a line, or none where it is no `deno task`. */
export function commandOf(line: string): Command | undefined {
  const words = wordsOf(line);
  const start = words[0] === "npx" && /^deno@[\d.]+$/.test(words[2] ?? "")
    ? words.slice(3)
    : words[0] === "deno"
    ? words.slice(1)
    : [];
  if (start[0] !== "task") return undefined;
  return { task: start[1] ?? "", args: start.slice(2) };
}

/** What a command said, and its exit code. */
export interface Said {
  readonly code: number;
  readonly text: string;
}

/** Runs a program in a folder, without colours and without a terminal. */
export async function run(
  args: readonly string[],
  folder: string,
): Promise<Said> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd: folder,
    env: { NO_COLOR: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const decoder = new TextDecoder();
  return { code, text: decoder.decode(stdout) + decoder.decode(stderr) };
}

/** Runs a task's own file in a folder, as `deno task` does in the project's. */
export function runCommand(command: Command, folder: string): Promise<Said> {
  const file = fileOfTask(command.task);
  if (file === undefined) {
    throw new RangeError(`No file is known of the task ${command.task}`);
  }
  return run(
    ["run", "-A", "--no-prompt", `${ROOT}${file}`, ...command.args],
    folder,
  );
}
