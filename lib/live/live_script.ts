/**
 * The script that makes still figures live.
 *
 * @module
 */

/**
 * Gives the script that a page runs to make its still figures live.
 *
 * It is this library's geometry and the drawings that call it, compiled and
 * made small by `deno task live-script`; a test makes it again and compares. It
 * reads the names and settings that figures carry, builds elements one by one,
 * and asks nothing of any host.
 *
 * @returns The script's text, without a line that could end a script element.
 *
 * @example
 * ```ts
 * import { liveScript } from "sagbook/live/live_script.ts";
 * import { ok } from "node:assert/strict";
 *
 * ok(!/<\/script|<!--/i.test(await liveScript()));
 * ```
 */
export async function liveScript(): Promise<string> {
  const { BUNDLED_SCRIPT } = await import("./_bundled_script.ts");
  return BUNDLED_SCRIPT;
}
