import { describeFault } from "./describe_fault.ts";

/** What is said of files that were not touched. */
export const UNCHANGED = "What stood there before is unchanged.";

/**
 * Says in plain words why a file could not be written and what helps; the
 * error keeps its class.
 */
export function explainFault(
  error: unknown,
  path: string,
  kept: string = UNCHANGED,
): unknown {
  if (!(error instanceof Error)) return error;
  if (error.message.startsWith("Cannot ")) return error; // said already
  const { why, remedy } = describeFault(error);
  error.message =
    `Cannot write ${path} as ${why} (${error.message}). ${kept} ${remedy}`;
  return error;
}
