/**
 * What the system means when it refuses a file.
 *
 * @module
 */

/** A refusal of the system in plain words. */
export interface Fault {
  /** Why, as the second half of "Cannot write FILE as …". */
  readonly why: string;
  /** What the user can do, as a sentence. */
  readonly remedy: string;
}

/** The first fit counts; the number alone differs between systems. */
const FAULTS: readonly (readonly [RegExp, string, string])[] = [
  [
    /ENOSPC|no space left|disk full|os error 112\b/i,
    "there is no space left on its disk",
    "Free some space and run this again.",
  ],
  [
    /EDQUOT|quota/i,
    "your share of its disk is used up",
    "Free some space and run this again.",
  ],
  [
    /EROFS|read-only file system/i,
    "its disk is read-only",
    "Copy the folder to a disk that can be written and run this again.",
  ],
  [
    /EFBIG|file too large/i,
    "it would be larger than a file may be there",
    "Copy the folder to another disk and run this again.",
  ],
  [
    /ENAMETOOLONG|name too long/i,
    "its name, or the path to it, is longer than the system takes",
    "Give a shorter name and run this again.",
  ],
  [
    /ELOOP|levels of symbolic links/i,
    "a link in its path leads back to itself",
    "Take that link away and run this again.",
  ],
  [
    /EISDIR|is a directory/i,
    "there is a folder of that name",
    "Rename that folder or take it away, and run this again.",
  ],
  [
    /ENOTDIR|not a directory/i,
    "a part of its path is a file",
    "Rename that file, or name another folder, and run this again.",
  ],
  [
    /EEXIST|file exists|already exists|ENOTEMPTY|directory not empty/i,
    "there is something of that name already",
    "Rename it or take it away, and run this again.",
  ],
  [
    /EBUSY|ETXTBSY|resource busy|text file busy|os error 3[23]\b/i,
    "another program holds it",
    "Close that program and run this again.",
  ],
  [
    /EMFILE|ENFILE|too many open files/i,
    "too many files are open",
    "Close other programs and run this again.",
  ],
  [
    /\bEIO\b|input\/output error/i,
    "its disk does not take it (an input or output error)",
    "Save what is on that disk, and write to another.",
  ],
];

/**
 * Says in plain words why the system refused a file, and what helps.
 *
 * @param error What was thrown.
 * @returns The words; those for an unknown reason send the user to the
 * system's own, which the caller shows beside them.
 *
 * @example
 * ```ts
 * import { describeFault } from "sagbook/files/describe_fault.ts";
 * import { equal } from "node:assert/strict";
 *
 * const error = new Error("No space left on device (os error 28)");
 * equal(describeFault(error).why, "there is no space left on its disk");
 * ```
 */
export function describeFault(error: unknown): Fault {
  const text = error instanceof Error ? error.message : String(error);
  const found = FAULTS.find(([sign]) => sign.test(text));
  if (found) return { why: found[1], remedy: found[2] };
  if (error instanceof Deno.errors.NotFound) {
    return {
      why: "its folder is not there (any more)",
      remedy:
        "Bring the folder back, or name the one it has become, and run this again.",
    };
  }
  if (
    error instanceof Deno.errors.PermissionDenied ||
    error instanceof Deno.errors.NotCapable
  ) {
    return {
      why: "you may not write there",
      remedy:
        "Give yourself the right to, or use a folder of your own, and run this again.",
    };
  }
  return {
    why: "the system refused it",
    remedy: "Mend that and run this again.",
  };
}
