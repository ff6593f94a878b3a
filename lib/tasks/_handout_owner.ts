/**
 * Which files of a folder are not this task's to write over.
 *
 * @module
 */
import { join } from "node:path";

/** What every page of the task carries in its head. */
export const OWN_MARK = "data-made-by-deno-task-handout";

/** Names of files that are there already and do not carry the mark. */
export async function strangersAmong(
  folder: string,
  names: Iterable<string>,
): Promise<string[]> {
  const found: string[] = [];
  for (const name of names) {
    try {
      const text = await Deno.readTextFile(join(folder, name));
      if (!text.includes(OWN_MARK)) found.push(name);
    } catch (error) {
      if (!(error instanceof Deno.errors.NotFound)) found.push(name);
    }
  }
  return found;
}
