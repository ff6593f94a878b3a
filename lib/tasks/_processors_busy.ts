/**
 * How busy a machine is before something is timed on it.
 *
 * @module
 */

/** Time that all processors together have spent, and spent idle. */
interface Spent {
  readonly all: number;
  readonly idle: number;
}

/**
 * Reads the first line of Linux' `/proc/stat`.
 *
 * @param text The file.
 * @returns Ticks since the machine started; undefined if it says none.
 */
export function spentOf(text: string): Spent | undefined {
  const ticks = /^cpu +([\d ]+)$/m.exec(text)?.[1].trim().split(" ")
    .map(Number);
  if (ticks === undefined || ticks.length < 5) return undefined;
  // The last two count guests a second time.
  const all = ticks.slice(0, 8).reduce((sum, tick) => sum + tick, 0);
  return { all, idle: ticks[3] + ticks[4] };
}

/**
 * Watches for a second how many processors other programs keep busy, while
 * this one waits.
 *
 * @returns From 0 to the number of processors; undefined where the system does
 * not say.
 */
export async function processorsBusy(): Promise<number | undefined> {
  const look = async (): Promise<Spent | undefined> => {
    try {
      return spentOf(await Deno.readTextFile("/proc/stat"));
    } catch {
      return undefined;
    }
  };
  const before = await look();
  if (before === undefined) return undefined;
  await new Promise((done) => setTimeout(done, 1000));
  const after = await look();
  if (after === undefined || after.all === before.all) return undefined;
  const idle = (after.idle - before.idle) / (after.all - before.all);
  return (1 - idle) * navigator.hardwareConcurrency;
}
