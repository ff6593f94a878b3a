/**
 * Text for a plain terminal: slow ones, screen readers, no colour unless asked.
 *
 * @module
 */
import { printable } from "../records/printable.ts";

/**
 * Ordinary spaces and minus signs in place of the typeset ones, and no control
 * codes.
 */
export function plainText(text: string): string {
  return printable(
    text.replaceAll("\u202f", "").replaceAll("\u00a0", " ")
      .replaceAll("\u2212", "-"),
  );
}

/** True where standard output may be coloured. */
export function mayColour(): boolean {
  return Deno.stdout.isTerminal() && !Deno.noColor &&
    Deno.env.get("TERM") !== "dumb";
}

/** A line that says something is wrong; the words say so without the colour. */
export function warningLine(text: string, coloured: boolean): string {
  const end = /[.?]$/.test(text) ? "" : ".";
  const line = `warning: ${plainText(text)}${end}`;
  return coloured ? `\u001b[33m${line}\u001b[0m` : line;
}

/** The local time, as a file of readings keeps it. */
export function stampOf(date: Date): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const day = [date.getFullYear(), date.getMonth() + 1, date.getDate()];
  const time = [date.getHours(), date.getMinutes(), date.getSeconds()];
  return `${String(day[0]).padStart(4, "0")}-${two(day[1])}-${two(day[2])}T${
    time.map(two).join(":")
  }`;
}
