const CHUNK = 16 * 1024;

/**
 * The lines that arrive on a connection, as many at once as one read completes.
 *
 * It ends with the connection, also with one that fails.
 *
 * @throws {Error} If a line grows beyond `longest` characters.
 */
export async function* linesOf(
  connection: Pick<Deno.Conn, "read">,
  longest = Infinity,
): AsyncGenerator<string[]> {
  const decoder = new TextDecoder();
  const chunk = new Uint8Array(CHUNK);
  let text = "";
  for (;;) {
    const count = await connection.read(chunk).catch(() => null);
    if (count === null) return;
    text += decoder.decode(chunk.subarray(0, count), { stream: true });
    const lines = text.split("\n");
    text = lines.pop()!;
    if (text.length > longest) throw new Error("no end of a line");
    yield lines;
  }
}

/** Closes what the other side may have closed already. */
export function closeQuietly(open: { close(): void }): void {
  try {
    open.close();
  } catch {
    // The other side was faster.
  }
}
