/**
 * What a task says on the terminal: plain text, whatever a file holds.
 *
 * @module
 */
import { printable } from "../records/printable.ts";

/**
 * Says something on the standard output; control codes are written out.
 *
 * @throws {Error} If it takes no more, such as a file on a full disk. A reader
 * that has gone away (`| head`) is no fault.
 */
export function say(text: string): void {
  try {
    console.log(printable(text));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(
      `Cannot say more as the standard output takes no more: ${why}. What has been written to files is whole.`,
    );
  }
}

/** Says on the standard error what went wrong, or what to know. */
export function complain(text: string): void {
  try {
    console.error(printable(text));
  } catch {
    // Nobody can be told; the exit code still says so.
  }
}

/** Writes text that shows progress, to a terminal that may have gone away. */
export function progress(text: string): void {
  try {
    Deno.stderr.writeSync(new TextEncoder().encode(text));
  } catch {
    // Nobody looks on any more.
  }
}

/** How many letters a line of the terminal takes; 0 where that is not known. */
export function terminalColumns(): number {
  try {
    return Deno.consoleSize().columns;
  } catch {
    return 0;
  }
}
