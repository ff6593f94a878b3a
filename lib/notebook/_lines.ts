/**
 * Text as the notebook format keeps it: one string, or a list of lines.
 *
 * @module
 */

/** A list of lines joined, and what was odd about their ends. */
export interface JoinedLines {
  readonly text: string;
  /** `all`: every inner line lacked its end and got it back; `some`: joined as they stand. */
  readonly lost: "none" | "some" | "all";
}

/** Joins lines as the format says: they carry their own ends. */
export function joinLines(lines: string | readonly string[]): string {
  return typeof lines === "string" ? lines : lines.join("");
}

/** What ends a line for the programs that write notebooks, Python among them. */
// deno-lint-ignore no-control-regex
const LINE_END = /[\n\r\v\f\x1C-\x1E\x85\u2028\u2029]$/;

/**
 * Joins the lines of a source, putting line ends back when a tool has dropped
 * every one of them: joined as they stand, a first-line comment would swallow
 * the program.
 */
export function joinSource(lines: string | readonly string[]): JoinedLines {
  if (typeof lines === "string") return { text: lines, lost: "none" };
  const inner = lines.slice(0, -1);
  const bare = inner.filter((line) => !LINE_END.test(line)).length;
  if (bare === 0) return { text: lines.join(""), lost: "none" };
  return bare === inner.length
    ? { text: lines.join("\n"), lost: "all" }
    : { text: lines.join(""), lost: "some" };
}

/** Cuts text after each line feed, as the format stores it. */
export function splitLines(text: string): string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}
