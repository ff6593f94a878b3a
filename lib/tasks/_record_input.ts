/**
 * Lines of standard input, as they arrive.
 *
 * @module
 */

/** Longest line that is kept whole; a cable never writes one. */
const LONGEST = 10_000;

/**
 * Yields lines as they arrive, ended by LF, CR or both; a last line without an
 * end is yielded when the input ends.
 *
 * Bytes that are no UTF-8 become replacement marks, and a line longer than
 * 10 000 characters is cut there: nothing on a cable may stop the recorder.
 */
export async function* inputLines(
  input: ReadableStream<Uint8Array>,
): AsyncGenerator<string, void, void> {
  const decoder = new TextDecoder();
  let held = "";
  let wasReturn = false;
  for await (const chunk of input) {
    held += decoder.decode(chunk, { stream: true });
    for (;;) {
      if (wasReturn && held.startsWith("\n")) held = held.slice(1);
      if (held !== "") wasReturn = false;
      const end = held.search(/[\r\n]/);
      if (end < 0) break;
      wasReturn = held[end] === "\r";
      const line = held.slice(0, end);
      held = held.slice(end + 1);
      yield line.slice(0, LONGEST);
    }
    if (held.length > 10 * LONGEST) held = held.slice(0, LONGEST);
  }
  held += decoder.decode();
  if (held !== "") yield held.slice(0, LONGEST);
}
