/**
 * What every task says and how it ends.
 *
 * @module
 */
import { relative } from "node:path";
import { closestName } from "../records/closest_name.ts";
import { describeProblems } from "../records/describe_problem.ts";
import { RecordError } from "../records/record_error.ts";

/** Exit codes of the tasks. */
export const EXIT = { ok: 0, failed: 1, usage: 2, stopped: 130 } as const;

/**
 * Turns anything thrown into plain words; a stack is shown to nobody.
 *
 * @param error What was thrown.
 * @returns Text for the terminal.
 */
export function plainWords(error: unknown): string {
  if (error instanceof RecordError) return describeProblems(error.problems);
  return error instanceof Error ? error.message : String(error);
}

/** A path as one would type it: from here if it lies below, else whole. */
export function displayPath(path: string): string {
  const from = relative(Deno.cwd(), path);
  if (from === "") return ".";
  return from.startsWith("..") && from.length > path.length ? path : from;
}

/**
 * A path as a shell takes it in one piece, for a command that is to be copied.
 *
 * @param path As the user named it.
 * @returns It, in quotes where a shell would read it as more than a name.
 */
export function shellWord(path: string): string {
  if (/^[\p{L}\p{N}\p{M}_./\\:@%+,~-]+$/u.test(path) && !/^~/.test(path)) {
    return path;
  }
  return Deno.build.os === "windows"
    ? `"${path}"`
    : `'${path.replaceAll("'", "'\\''")}'`;
}

/** What to say of a word that is none of those known. */
export function unknownWord(
  what: string,
  typed: string,
  known: readonly string[],
): string {
  const meant = closestName(typed, known);
  const guess = meant === undefined ? "." : `: did you mean ${meant}?`;
  return `There is no ${what} ${typed}${guess} Known: ${known.join(", ")}.`;
}

/**
 * Splits arguments into flags and the rest; unknown flags are returned. A
 * `list` has its value after an equals sign or none at all.
 */
export function readFlags(
  args: readonly string[],
  known: Readonly<Record<string, "value" | "switch" | "list">>,
): {
  readonly flags: Readonly<Record<string, string | true>>;
  readonly rest: readonly string[];
  readonly problem?: string;
} {
  const flags: Record<string, string | true> = {};
  const rest: string[] = [];
  for (let k = 0; k < args.length; k++) {
    const arg = args[k];
    if (arg === "--") continue;
    if (!arg.startsWith("-") || arg === "-") {
      rest.push(arg);
      continue;
    }
    const [typed, inline] = arg.replace(/^--?/, "").split(/=(.*)/s);
    const name = arg === "-h" && known.help !== undefined ? "help" : typed;
    const kind = known[name];
    if (kind === undefined) {
      const list = Object.keys(known).filter((one) => one.length > 1)
        .map((one) => `--${one}`);
      const flag = arg.replace(/=.*/s, "");
      return { flags, rest, problem: unknownWord("flag", flag, list) };
    }
    if (kind === "switch") flags[name] = true;
    else if (kind === "list") flags[name] = inline ?? true;
    else {
      const value = inline ?? args[++k];
      if (value === undefined) {
        return { flags, rest, problem: `${arg} needs a value.` };
      }
      flags[name] = value;
    }
  }
  return { flags, rest };
}
