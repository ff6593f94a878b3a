/**
 * Work that a key or a signal ends without leaving half of it behind.
 *
 * @module
 */
import { onInterruptSignal, onStopSignal } from "../protocol/system.ts";
import { EXIT } from "./_task_words.ts";
import { complain } from "./_terminal.ts";

/**
 * Does some work until it is done, or until Ctrl-C, a closed terminal or
 * another program stops it; the work then takes back what it has begun.
 *
 * @param name What is stopped, for the words.
 * @param work Gives the exit code; throws once the signal is aborted.
 * @returns Its exit code, or that of a stopped task.
 */
export async function stoppable(
  name: string,
  work: (signal: AbortSignal) => Promise<number>,
): Promise<number> {
  const stop = new AbortController();
  const onStop = () => stop.abort(new Error("stopped"));
  const offs = [onInterruptSignal(onStop), onStopSignal(onStop)];
  try {
    return await work(stop.signal);
  } catch (error) {
    if (!stop.signal.aborted) throw error;
    complain(`${name}: stopped; nothing was written.`);
    return EXIT.stopped;
  } finally {
    for (const off of offs) off();
  }
}
