/**
 * What a task says on the terminal: plain text, whatever a file holds.
 *
 * @module
 */
import { printable } from "../records/printable.ts";

/** Says something on the standard output; control codes are written out. */
export function say(text: string): void {
  console.log(printable(text));
}

/** Says on the standard error what went wrong, or what to know. */
export function complain(text: string): void {
  console.error(printable(text));
}
