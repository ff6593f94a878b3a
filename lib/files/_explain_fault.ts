/** What the user can do about each fault of writing; the first fit counts. */
const REMEDIES: readonly (readonly [RegExp, string, string])[] = [
  [
    /os error 28\b|ENOSPC|no space left/i,
    "there is no space left on its disk",
    "Free some space and run this again.",
  ],
  [
    /os error 122\b|EDQUOT|quota/i,
    "your share of its disk is used up",
    "Free some space and run this again.",
  ],
  [
    /os error 30\b|EROFS|read-only file system/i,
    "its disk is read-only",
    "Copy the folder to a disk that can be written and run this again.",
  ],
  [
    /os error 27\b|EFBIG|file too large/i,
    "it would be larger than a file may be there",
    "Copy the folder to another disk and run this again.",
  ],
  [
    /os error 5\b|EIO|input\/output error/i,
    "its disk does not take it (an input or output error)",
    "Save what is on that disk, and write to another.",
  ],
];

/**
 * Says in plain words why a file could not be written and what helps; the
 * error keeps its class.
 */
export function explainFault(error: unknown, path: string): unknown {
  if (!(error instanceof Error)) return error;
  const [why, what] = reason(error);
  error.message =
    `Cannot write ${path} as ${why} (${error.message}). What stood there before is unchanged. ${what}`;
  return error;
}

function reason(error: Error): readonly [string, string] {
  const found = REMEDIES.find(([sign]) => sign.test(error.message));
  if (found) return [found[1], found[2]];
  if (error instanceof Deno.errors.NotFound) {
    return [
      "its folder is not there (any more)",
      "Bring the folder back, or name the one it has become, and run this again.",
    ];
  }
  if (error instanceof Deno.errors.PermissionDenied) {
    return [
      "you may not write there",
      "Give yourself the right to, or copy the folder to a place of your own, and run this again.",
    ];
  }
  return ["the system refused it", "Mend that and run this again."];
}
