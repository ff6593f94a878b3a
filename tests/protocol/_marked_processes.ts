/** Variable by which the processes of one test are told from all others. */
export const MARK = "SAGBOOK_TEST_MARK";

/**
 * Ids of the living processes that were started with a mark, on Linux.
 *
 * Waits up to `patience` ms until there is none; who is told to end need not
 * be gone at once.
 */
export async function processesMarked(
  mark: string,
  patience = 5_000,
): Promise<string[]> {
  const end = Date.now() + patience;
  for (;;) {
    const found = [...Deno.readDirSync("/proc")]
      .map(({ name }) => name)
      .filter((name) => /^\d+$/.test(name) && has(name, `${MARK}=${mark}`));
    if (found.length === 0 || Date.now() > end) return found;
    await new Promise((done) => setTimeout(done, 20));
  }
}

function has(pid: string, variable: string): boolean {
  try {
    const text = Deno.readTextFileSync(`/proc/${pid}/environ`);
    return text.split("\0").includes(variable);
  } catch {
    return false; // it has ended, or is somebody else's
  }
}
