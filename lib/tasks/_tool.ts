/**
 * What every tool of the project's own does with its command line.
 *
 * @module
 */
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, unknownWord, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

/** A tool: what it says of itself, and what it understands. */
export interface Tool {
  /** Text of `--help`. */
  readonly usage: string;
  /** Its flags beside `--help`. */
  readonly flags?: Readonly<Record<string, "value" | "switch">>;
  /** What its words may name, such as "study"; without it no word is taken. */
  readonly names?: {
    readonly what: string;
    readonly known: () => readonly string[];
    /** True if a part of a name serves. */
    readonly part?: boolean;
  };
  /** Does the work and returns the exit code. */
  readonly run: (call: ToolCall) => number | Promise<number>;
}

/** A right call of a tool. */
export interface ToolCall {
  /** Flags that were given. */
  readonly flags: Readonly<Record<string, string | true>>;
  /** The names that the words chose; all of them without a word. */
  readonly chosen: readonly string[];
  /** True if words chose them. */
  readonly isPart: boolean;
}

function chosenNames(
  { names }: Tool,
  words: readonly string[],
): { chosen: readonly string[]; problem?: string } {
  if (names === undefined) {
    return words.length === 0 ? { chosen: [] } : {
      chosen: [],
      problem: `No word is taken here: current value is ${words[0]}.`,
    };
  }
  const known = names.known();
  if (words.length === 0) return { chosen: known };
  const fits = (name: string, word: string): boolean =>
    name === word ||
    (names.part === true && word !== "" && name.includes(word));
  const wrong = words.find((word) => !known.some((name) => fits(name, word)));
  return wrong === undefined
    ? {
      chosen: known.filter((name) => words.some((word) => fits(name, word))),
    }
    : { chosen: [], problem: unknownWord(names.what, wrong, known) };
}

/**
 * Reads the command line, does the work unless help was asked for or a word is
 * wrong, and returns the exit code: a wrong call changes nothing.
 *
 * @param tool What may be called.
 * @param args Arguments of the command line.
 * @returns 0 for help, 2 for a wrong call, 1 for a failure, else the tool's own.
 */
export async function runTool(
  tool: Tool,
  args: readonly string[],
): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    ...tool.flags,
    help: "switch",
  });
  const { chosen, problem: wrongWord } = chosenNames(tool, rest);
  const wrong = problem ?? (flags.help ? undefined : wrongWord);
  if (wrong !== undefined) {
    complain(wrongCall(wrong, tool.usage));
    return EXIT.usage;
  }
  if (flags.help) {
    say(tool.usage);
    return EXIT.ok;
  }
  try {
    return await tool.run({ flags, chosen, isPart: rest.length > 0 });
  } catch (error) {
    complain(plainWords(error));
    return EXIT.failed;
  }
}
