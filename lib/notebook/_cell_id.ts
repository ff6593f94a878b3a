/**
 * Ids for cells that have none, or share one: the same for the same notebook.
 *
 * @module
 */
import { createHash } from "node:crypto";

const VALID = /^[a-zA-Z0-9_-]{1,64}$/;

/** True if the format allows `id` as a cell's id. */
export function isCellId(id: unknown): id is string {
  return typeof id === "string" && VALID.test(id);
}

/**
 * Makes an id from what a cell holds, so that reading a file twice gives the
 * same ids, and a cell keeps its id when another is put before it.
 *
 * @param content What tells this cell from others.
 * @param taken Ids already given; the new one is added.
 */
export function makeCellId(content: string, taken: Set<string>): string {
  const stem = createHash("sha256").update(content).digest("hex").slice(0, 8);
  let id = stem;
  for (let copy = 2; taken.has(id); copy++) id = `${stem}-${copy}`;
  taken.add(id);
  return id;
}
