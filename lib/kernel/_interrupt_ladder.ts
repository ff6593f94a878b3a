import type { EvaluatorChild } from "./_evaluator_child.ts";
import type { RunningCell } from "./_running_cell.ts";

/** Waits between the steps, in ms. */
const BUSY_AFTER = 50;
const STUCK_AFTER = 150;
const STEP = 100;
const GIVE_UP_AFTER = 2_500;

/**
 * Stops a cell by the mildest means that works.
 *
 * First every await of it is ended, which the host can do while its event loop
 * turns. If it does not answer, or the cell goes on, the engine ends the code
 * that runs just now; the host is whole afterwards, since it never runs the
 * cell from its own code.
 *
 * @returns False if the cell could not be stopped; its process must be ended.
 */
export async function climbInterruptLadder(
  { side, kernel }: EvaluatorChild,
  running: RunningCell,
): Promise<boolean> {
  const { id } = running.cell;
  const begun = Date.now();
  const heard = await side.interrupt(id, false, BUSY_AFTER);
  if (await running.doneWithin(heard ? STUCK_AFTER : 0)) return true;
  let busy = !heard;
  while (Date.now() - begun < GIVE_UP_AFTER) {
    // A host that answers is not stuck: what it says stands behind what the
    // cell showed, and to end its own code would make it deaf.
    busy ||= !await side.ping(BUSY_AFTER);
    if (busy) await kernel.interrupt().catch(() => {});
    busy = false;
    await side.interrupt(id, true, STEP);
    if (await running.doneWithin(STEP)) return true;
  }
  return false;
}
