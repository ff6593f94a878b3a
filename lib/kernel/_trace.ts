import { type CellPlace, placeAt } from "../cells/cell_diagnostic.ts";
import { excerpt } from "../cells/describe_diagnostic.ts";
import type { RunnableCell } from "../cells/rewrite_cell.ts";
import type { JsonObject } from "../protocol/message.ts";
import type { ThrownError } from "./evaluator.ts";
import { isObject } from "./_forged.ts";

/** A cell that was run: its number in the margin, its text and its code. */
export interface TracedRun {
  readonly name: string;
  readonly source: string;
  readonly code: RunnableCell;
}

/** An error as a notebook shows it. */
export interface ShownError {
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: string[];
}

const PLACE = /(cell|expression)-([\w$]+)(?:, <anonymous>)?:(\d+):(\d+)/;

/**
 * Leads the places of a stack back to the cells they come from, shows the line
 * that failed, and leaves out the kernel's own frames.
 */
export function trace(
  error: ThrownError,
  find: (id: number) => TracedRun | undefined,
): ShownError {
  const head = error.message ? `${error.name}: ${error.message}` : error.name;
  let shown: string[] = [];
  const frames: string[] = [];
  const lines = error.stack.split("\n");
  const first = lines.findIndex((line) => /^\s+at /.test(line));
  for (const line of first < 0 ? [] : lines.slice(first)) {
    if (/^\s+at /.test(line) && isOurs(line)) continue;
    const place = PLACE.exec(line);
    if (!place) {
      if (!/^\s+at .*<anonymous>(:\d+:\d+)?\)?$/.test(line)) frames.push(line);
      continue;
    }
    const run = place[1] === "cell" ? find(Number(place[2])) : undefined;
    if (!run) {
      frames.push(line);
      continue;
    }
    const at = placeAt(
      run.source,
      run.code.original(Number(place[3]), Number(place[4])),
    );
    if (shown.length === 0) {
      shown = [describe(run.name, at), ...excerpt(run.source, at, 1)];
    }
    frames.push(
      line.replace(PLACE, describe(run.name, at))
        .replace(/at (?:async )?eval \((.*)\)$/, "at $1"),
    );
  }
  return {
    ename: error.name,
    evalue: error.message,
    traceback: [head, ...shown, ...frames],
  };
}

const FRAME = /^\s+at /;

/**
 * A printed or shown text in which the places of stacks are led back likewise.
 *
 * A cell that catches an error and prints it shows the stack of what was run,
 * whose lines are not those of the cell.
 */
function tracedText(
  text: string,
  find: (id: number) => TracedRun | undefined,
): string {
  if (!PLACE.test(text)) return text;
  const lines: string[] = [];
  for (const line of text.split("\n")) {
    const [, kind, id, row, column] = (FRAME.test(line) && PLACE.exec(line)) ||
      [];
    const run = kind === "cell" ? find(Number(id)) : undefined;
    if (run !== undefined) {
      const original = run.code.original(Number(row), Number(column));
      const place = describe(run.name, placeAt(run.source, original));
      const led = line.replace(PLACE, place);
      lines.push(led.replace(/at (?:async )?eval \(([^()]*)\)/, "at $1"));
    } else if (FRAME.test(line) && isOurs(line) && lines.length > 0) {
      // What stands behind a frame belongs to the text: a bracket, a comma.
      lines.push(lines.pop() + line.replace(/^.*:\d+:\d+\)?/, ""));
    } else lines.push(line);
  }
  return lines.join("\n");
}

/** A bundle whose plain form is a traced text. */
export function tracedBundle<Bundle extends object>(
  data: Bundle,
  find: (id: number) => TracedRun | undefined,
): Bundle {
  const plain = (data as Record<string, unknown>)["text/plain"];
  return typeof plain === "string"
    ? { ...data, "text/plain": tracedText(plain, find) }
    : data;
}

/** The content of an output, its text traced. */
export function tracedOutput(
  content: JsonObject,
  find: (id: number) => TracedRun | undefined,
): JsonObject {
  const { text, data } = content;
  if (typeof text === "string") {
    return { ...content, text: tracedText(text, find) };
  }
  return isObject(data)
    ? { ...content, data: tracedBundle(data, find) }
    : content;
}

function describe(name: string, { line, column }: CellPlace): string {
  return `${name}, line ${line}, column ${column}`;
}

/** Frames of the host, the runtime's own modules and its read-eval loop. */
function isOurs(line: string): boolean {
  return /\/_host_\w+\.ts/.test(line) || /\(?(ext|node):/.test(line) ||
    /at (async )?new Promise|at (async )?Promise\.|<anonymous>:1:/.test(line);
}
