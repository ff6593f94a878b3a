/**
 * Temporary folders that do not pile up.
 *
 * @module
 */
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { describeFault } from "./describe_fault.ts";
import { isAbandoned, processMark } from "./process_mark.ts";

const START = "sagbook-";

/** Places for a socket where that of the user has too long a name. */
const SHORT_PLACES: readonly string[] = Deno.build.os === "windows"
  ? []
  : ["/tmp", "/var/tmp", "/dev/shm"];

/** Letters that a temporary folder's name gets from the system. */
const DRAWN = 16;

/** There is no place for temporary files; the message says what to set. */
export class TemporaryFolderError extends Error {
  /** Name of the class. */
  override readonly name: string = "TemporaryFolderError";
}

const swept = new Set<string>();

/**
 * Makes a temporary folder that only its owner can enter.
 *
 * Its name bears this machine and this process, so that what a killed process
 * left behind is known for what it is: the first folder that a process makes
 * at a place takes away those of processes that are gone.
 *
 * The place is that of the environment (TMPDIR, on Windows TEMP).
 *
 * @param purpose A word of small letters for its name.
 * @param longest Most bytes that its path may have, for a socket in it; where
 * the place's own name is too long for that, another place is taken.
 * @returns Its path; the caller removes it.
 * @throws {TemporaryFolderError} If it cannot be made, with a message that says what to set.
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
export async function makePrivateFolder(
  purpose: string,
  longest: number = Infinity,
): Promise<string> {
  const prefix = `${START}${purpose}-${processMark()}-`;
  const room = longest - prefix.length - DRAWN - 1;
  const places = [resolve(tmpdir()), ...longest < Infinity ? SHORT_PLACES : []];
  let fault: unknown = new Error("each place has too long a name");
  for (const dir of places) {
    if (new TextEncoder().encode(dir).length > room) continue;
    try {
      const folder = await Deno.makeTempDir({ dir, prefix });
      await sweepOnce(dir);
      return folder;
    } catch (error) {
      fault = error;
    }
  }
  throw new TemporaryFolderError(refusal(places[0], fault));
}

function refusal(place: string, fault: unknown): string {
  const name = Deno.build.os === "windows" ? "TEMP" : "TMPDIR";
  const text = fault instanceof Error ? fault.message : String(fault);
  const { why, remedy } = describeFault(fault);
  const isMissing = fault instanceof Deno.errors.NotFound;
  return `Cannot make a temporary folder as ${name} must name a folder that can be written: current value is ${place}, and ${
    isMissing ? "there is no such folder" : why
  } (${text}). ${
    /space/.test(why)
      ? remedy
      : `Set ${name} to a folder of yours with a short name, and run this again.`
  }`;
}

async function sweepOnce(place: string): Promise<void> {
  if (swept.has(place)) return;
  swept.add(place);
  await sweepPrivateFolders(place);
}

/**
 * Takes away the temporary folders that processes of this machine have left
 * behind and that are no more: killed ones, since all others clean up.
 *
 * @param place Where to look; the environment's place unless told.
 * @returns How many were removed.
 */
export async function sweepPrivateFolders(
  place: string = resolve(tmpdir()),
): Promise<number> {
  const name = new RegExp(`^${START}[a-z]+-([0-9a-f]{4}-\\d+)-`);
  const left: string[] = [];
  try {
    for await (const entry of Deno.readDir(place)) {
      const mark = name.exec(entry.name)?.[1];
      if (entry.isDirectory && mark !== undefined && isAbandoned(mark)) {
        left.push(entry.name);
      }
    }
  } catch {
    return 0; // no such folder, or not ours to list
  }
  const removed = await Promise.allSettled(
    left.map((one) => Deno.remove(join(place, one), { recursive: true })),
  );
  return removed.filter(({ status }) => status === "fulfilled").length;
}
