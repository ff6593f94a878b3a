/**
 * A kernel as a process of its own.
 *
 * @module
 */
import { readConnectionFile } from "../protocol/connection.ts";
import {
  onInterruptSignal,
  onStopSignal,
  parentHasEnded,
  parentId,
} from "../protocol/system.ts";
import { Kernel } from "./kernel.ts";
import type { KernelSettings } from "./kernel_settings.ts";

/** How often, in ms, it is looked whether the front end still lives. */
const WATCH_EVERY = 500;

/**
 * Runs a kernel until it is shut down: by request, by a signal, or because the
 * process that started it has ended.
 *
 * @param connectionFile Path of the file that the front end wrote.
 * @param settings Folder, checks and limits.
 */
export async function serveKernel(
  connectionFile: string,
  settings: Omit<KernelSettings, "connection">,
): Promise<void> {
  const parent = parentId();
  const watched = Number(Deno.env.get("JPY_PARENT_PID")) === parent;
  const kernel = new Kernel({
    ...settings,
    connection: await readConnectionFile(connectionFile),
  });
  const offs = [
    onInterruptSignal(() => kernel.interrupt().catch(() => {})),
    onStopSignal(() => kernel.shutdown()),
  ];
  const timer = setInterval(() => {
    if (watched && parentHasEnded(parent)) kernel.shutdown();
  }, WATCH_EVERY);
  await kernel.finished;
  clearInterval(timer);
  for (const off of offs) off();
}
