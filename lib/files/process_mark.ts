/**
 * Telling what a process that is no more has left behind.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { hostname } from "node:os";
import process from "node:process";

/**
 * A word for the names of temporary files and folders, which says whose they
 * are: this machine and this process.
 *
 * The machine counts since a folder may be shared with another one, or with a
 * container, whose processes cannot be seen from here.
 *
 * @returns Four hexadecimal digits, a hyphen and the process id.
 *
 * @example
 * ```ts
 * import { isAbandoned, processMark } from "sagbook/files/process_mark.ts";
 * import { equal, match } from "node:assert/strict";
 *
 * match(processMark(), /^[0-9a-f]{4}-\d+$/);
 * equal(isAbandoned(processMark()), false);
 * ```
 */
export function processMark(): string {
  return `${machine()}-${Deno.pid}`;
}

/**
 * Tells whether the process that made a mark is certainly gone.
 *
 * @param mark What {@linkcode processMark} gave there.
 * @returns False for another machine's mark, for no mark at all, and while any
 * process has that id.
 */
export function isAbandoned(mark: string): boolean {
  const [, of, pid] = /^([0-9a-f]{4})-(\d+)$/.exec(mark) ?? [];
  if (pid === undefined || of !== machine()) return false;
  try {
    process.kill(Number(pid), 0);
    return isZombie(pid);
  } catch (error) {
    return (error as { code?: string }).code === "ESRCH";
  }
}

/** Whether a process has ended and only waits to be taken note of (Linux). */
function isZombie(pid: string): boolean {
  try {
    const stat = Deno.readTextFileSync(`/proc/${pid}/stat`);
    return /^[ZX]/.test(stat.slice(stat.lastIndexOf(")") + 2));
  } catch {
    return false; // another system, or it has ended in this moment
  }
}

let known: string | undefined;

function machine(): string {
  return known ??= createHash("sha256").update(hostname()).digest("hex")
    .slice(0, 4);
}
