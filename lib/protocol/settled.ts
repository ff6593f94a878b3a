/**
 * Waiting, but not for ever.
 *
 * @module
 */

/**
 * Waits for a promise, but no longer than a limit; one that is broken has come
 * as well.
 *
 * @param promise What is waited for.
 * @param limit Longest time, in ms.
 * @returns Whether it came in time.
 *
 * @example
 * ```ts
 * import { settled } from "sagbook/protocol/settled.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(await settled(Promise.reject("broken"), 1_000), true);
 * equal(await settled(new Promise(() => {}), 1), false);
 * ```
 */
export async function settled(
  promise: Promise<unknown>,
  limit: number,
): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((resolve) =>
    timer = setTimeout(() => resolve(false), limit)
  );
  try {
    return await Promise.race([promise.then(() => true, () => true), late]);
  } finally {
    clearTimeout(timer);
  }
}
