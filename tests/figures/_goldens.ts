/**
 * Pictures kept from a run that was looked at, and how to make them again.
 *
 * @module
 */
import { samples } from "./_samples.ts";

const FOLDER = new URL("../goldens/figures/", import.meta.url);

/**
 * Makes two runs comparable: numbers to a tenth of a pixel, ids renumbered,
 * one element a line.
 */
export function normalised(svg: string): string {
  const ids = new Map<string, string>();
  return svg
    .replace(/figure-[0-9a-z]+/g, (id) => {
      if (!ids.has(id)) ids.set(id, `id${ids.size + 1}`);
      return ids.get(id)!;
    })
    .replace(/-?\d+\.\d+/g, (number) => `${+Number(number).toFixed(1) + 0}`)
    .replaceAll("><", ">\n<") + "\n";
}

/** Where the kept picture of a sample lies; `new` for a changed one. */
export function goldenFile(name: string, changed = false): URL {
  return new URL(`${name}${changed ? ".new" : ""}.svg`, FOLDER);
}

/** Draws every sample and keeps it, after somebody has looked at it. */
export async function writeFigureGoldens(): Promise<void> {
  await Deno.mkdir(FOLDER, { recursive: true });
  for await (const entry of Deno.readDir(FOLDER)) {
    if (entry.name.endsWith(".svg")) {
      await Deno.remove(new URL(entry.name, FOLDER));
    }
  }
  for (const { name, draw } of samples) {
    await Deno.writeTextFile(
      goldenFile(name),
      normalised((await draw()).svg),
    );
  }
}

if (import.meta.main) await writeFigureGoldens();
