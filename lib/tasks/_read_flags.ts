/**
 * The words after a task's name, taken apart.
 *
 * @module
 */
import { unknownWord } from "./_task_words.ts";

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
