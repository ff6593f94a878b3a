/**
 * A new folder, whole or not at all.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { explainFault } from "./_explain_fault.ts";
import { isAbandoned, processMark } from "./process_mark.ts";

/**
 * Makes a folder and all that is in it, so that it is there whole or not at
 * all, and never over anything that is there.
 *
 * It is filled under a temporary name beside its place, and then takes its own
 * name in one step. What fails, or is stopped, leaves nothing behind; what a
 * killed process had to leave (a name that begins with a point and ends in
 * `.making`) is taken away by the next folder made at that place.
 *
 * @param path The new folder; folders above it are made as well.
 * @param fill Fills the folder whose path it is given.
 * @param signal Ends it when aborted; looked at last before the name is taken.
 * @returns What `fill` returned.
 * @throws {Deno.errors.AlreadyExists} If there is anything of that name.
 * @throws {Error} As the system says, of Deno's own class, with a message that
 * says what to do; as `fill` or the signal says.
 *
 * @example
 * ```ts
 * import { makeFolder } from "sagbook/files/make_folder.ts";
 * import { equal, rejects } from "node:assert/strict";
 *
 * const above = await Deno.makeTempDir();
 * const fill = (at: string) => Deno.writeTextFile(`${at}/radius.txt`, "3000");
 * await makeFolder(`${above}/disc`, fill);
 * equal(await Deno.readTextFile(`${above}/disc/radius.txt`), "3000");
 * await rejects(makeFolder(`${above}/disc`, fill), Deno.errors.AlreadyExists);
 * await Deno.remove(above, { recursive: true });
 * ```
 */
export async function makeFolder<T>(
  path: string,
  fill: (folder: string) => Promise<T>,
  signal?: AbortSignal,
): Promise<T> {
  const target = resolve(path);
  const above = dirname(target);
  const unique = crypto.randomUUID().slice(0, 8);
  const making = join(above, `.${processMark()}.${unique}.making`);
  const made = await missingAbove(target);
  let began = false;
  try {
    await refuseAnything(target, path);
    await Deno.mkdir(making, { recursive: true });
    began = true;
    const result = await fill(making);
    signal?.throwIfAborted();
    await refuseAnything(target, path);
    await Deno.rename(making, target);
    await sweepMaking(above);
    return result;
  } catch (error) {
    const vanished = began && !await exists(making);
    await Deno.remove(making, { recursive: true }).catch(() => {});
    for (const folder of made) await Deno.remove(folder).catch(() => {});
    if (signal?.aborted) throw error;
    throw inPlace(
      vanished ? new Deno.errors.NotFound("it has vanished") : error,
      making,
      path,
    );
  }
}

async function exists(path: string): Promise<boolean> {
  try {
    await Deno.lstat(path);
    return true;
  } catch {
    return false;
  }
}

/** Words for the folder that was asked for, not for its temporary name. */
function inPlace(error: unknown, making: string, path: string): unknown {
  if (error instanceof Error) {
    error.message = error.message.replaceAll(making, path);
  }
  return error instanceof Error && isOfSystem(error)
    ? explainFault(error, path, "Nothing was made.")
    : error;
}

function isOfSystem(error: Error): boolean {
  return Object.values(Deno.errors).some((one) => error instanceof one) ||
    /os error \d/.test(error.message);
}

async function refuseAnything(target: string, path: string): Promise<void> {
  try {
    await Deno.lstat(target);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return;
    throw error;
  }
  throw new Deno.errors.AlreadyExists(
    `Cannot make ${path} as there must be nothing of that name: there is something. Nothing was written over; name another folder.`,
  );
}

/** Folders above that are not there yet, the deepest first. */
async function missingAbove(target: string): Promise<string[]> {
  const missing: string[] = [];
  for (let at = dirname(target); dirname(at) !== at; at = dirname(at)) {
    try {
      await Deno.lstat(at);
      break;
    } catch {
      missing.push(at);
    }
  }
  return missing;
}

/** Takes away what killed processes left half made at the same place. */
async function sweepMaking(above: string): Promise<void> {
  try {
    for await (const { name } of Deno.readDir(above)) {
      const mark = /^\.([0-9a-f]{4}-\d+)\.[0-9a-f]{8}\.making$/.exec(name)?.[1];
      if (mark !== undefined && isAbandoned(mark)) {
        await Deno.remove(join(above, basename(name)), { recursive: true })
          .catch(() => {});
      }
    }
  } catch {
    // The folder cannot be listed; what was to be made is.
  }
}
