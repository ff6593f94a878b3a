/**
 * How far a long cell is, told to whoever runs the notebook.
 *
 * @module
 */

/** The private form in which a cell tells how far it is. */
export const PROGRESS_TYPE = "application/vnd.sagbook.progress+json";

type Broadcast = (
  type: string,
  content: Record<string, unknown>,
) => unknown;

/** Outside a notebook the runtime has no such thing, and says so by an error. */
function broadcastOf(): Broadcast | undefined {
  try {
    const { jupyter } = Deno as unknown as {
      jupyter?: { broadcast: Broadcast };
    };
    return jupyter?.broadcast.bind(jupyter);
  } catch {
    return undefined;
  }
}

/**
 * Tells how far a long cell is.
 *
 * A program that runs the notebook may show it; it is no output, is kept
 * nowhere, and front ends of Jupyter pass it over, since it updates a display
 * that does not exist. Outside a notebook nothing happens. What is told leaves
 * at the next `await` that really waits.
 *
 * @param words A few words, such as `readings.csv: 40 % read`.
 *
 * @see Jupyter's messaging protocol, `update_display_data`.
 *
 * @example
 * ```ts
 * import { tellProgress } from "sagbook/display/tell_progress.ts";
 *
 * tellProgress("readings.csv: 40 % read"); // nobody listens here
 * ```
 */
export function tellProgress(words: string): void {
  const sent = broadcastOf()?.("update_display_data", {
    data: { [PROGRESS_TYPE]: { words } },
    metadata: {},
    transient: { display_id: "sagbook progress" },
  });
  // One kernel answers at once, another by a promise; nobody needs to know.
  Promise.resolve(sent).catch(() => {});
}
