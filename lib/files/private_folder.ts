/**
 * Temporary folders that do not pile up.
 *
 * @module
 */
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isAbandoned, processMark } from "./process_mark.ts";

const START = "sagbook-";

let isSwept = false;

/**
 * Makes a temporary folder that only its owner can enter.
 *
 * Its name bears this machine and this process, so that what a killed process
 * left behind is known for what it is: the first folder that a process makes
 * takes away those of processes that are gone.
 *
 * @param purpose A word of small letters for its name.
 * @returns Its path; the caller removes it.
 *
 * @example
 * ```ts
 * import { makePrivateFolder } from "sagbook/files/private_folder.ts";
 * import { match } from "node:assert/strict";
 *
 * const folder = await makePrivateFolder("example");
 * match(folder, /sagbook-example-/);
 * await Deno.remove(folder, { recursive: true });
 * ```
 */
export async function makePrivateFolder(purpose: string): Promise<string> {
  if (!isSwept) {
    isSwept = true;
    await sweepPrivateFolders();
  }
  const prefix = `${START}${purpose}-${processMark()}-`;
  return await Deno.makeTempDir({ prefix });
}

/**
 * Takes away the temporary folders that processes of this machine have left
 * behind and that are no more: killed ones, since all others clean up.
 *
 * @returns How many were removed.
 */
export async function sweepPrivateFolders(): Promise<number> {
  const name = new RegExp(`^${START}[a-z]+-([0-9a-f]{4}-\\d+)-`);
  const left: string[] = [];
  try {
    for await (const entry of Deno.readDir(tmpdir())) {
      const mark = name.exec(entry.name)?.[1];
      if (entry.isDirectory && mark !== undefined && isAbandoned(mark)) {
        left.push(entry.name);
      }
    }
  } catch {
    return 0; // no such folder, or not ours to list
  }
  const removed = await Promise.allSettled(
    left.map((one) => Deno.remove(join(tmpdir(), one), { recursive: true })),
  );
  return removed.filter(({ status }) => status === "fulfilled").length;
}
