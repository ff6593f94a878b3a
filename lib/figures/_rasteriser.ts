/**
 * Pictures from the program that draws them.
 *
 * @module
 */
import type { PixelOrder } from "./_draw_pixels.ts";

/** Draws SVG texts as PNG, in one process for all of them. */
export async function rasterise(
  orders: readonly PixelOrder[],
): Promise<Uint8Array[]> {
  if (orders.length === 0) return [];
  const child = new Deno.Command(Deno.execPath(), {
    args: [
      "run",
      ...["--quiet", "--no-prompt", "--no-lock", "--no-config"],
      ...["--node-modules-dir=none", "--allow-read"],
      import.meta.resolve("./_draw_pixels.ts"),
    ],
    env: { NO_COLOR: "1" },
    stdin: "piped",
    stdout: "piped",
    stderr: "piped",
  }).spawn();
  const said = child.output();
  const writer = child.stdin.getWriter();
  try {
    await writer.write(new TextEncoder().encode(JSON.stringify(orders)));
    await writer.close();
  } catch {
    // It ended early; why is in what it said.
  }
  const { success, stdout, stderr } = await said;
  const pictures = success ? picturesIn(stdout) : [];
  if (pictures.length !== orders.length) {
    const why = new TextDecoder().decode(stderr).trim().split("\n")[0];
    throw new Error(
      `Cannot make PNG pictures as the program that draws them failed: ${
        why.replace(/^error: (?:Uncaught \(in promise\) )?/, "")
      }. Its packages (15 MB) are fetched once, so connect to a network and try again; SVG needs neither.`,
    );
  }
  return pictures;
}

function picturesIn(bytes: Uint8Array): Uint8Array[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const found: Uint8Array[] = [];
  for (let at = 0; at + 4 <= bytes.length;) {
    const length = view.getUint32(at);
    found.push(bytes.slice(at + 4, at + 4 + length));
    at += 4 + length;
  }
  return found;
}
