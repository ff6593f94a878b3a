/** Tests that need a program which not every machine has. */

/** Where a program lies on the path. */
function onPath(program: string): boolean {
  return (Deno.env.get("PATH") ?? "").split(":").some((folder) => {
    try {
      return Deno.statSync(`${folder}/${program}`).isFile;
    } catch {
      return false;
    }
  });
}

/**
 * Registers a test that needs programs. Without one of them the test is
 * skipped and says so; with SAGBOOK_ALL=1 a missing one fails the test.
 */
export function testWith(
  programs: readonly string[],
  name: string,
  fn: () => Promise<void>,
): void {
  const missing = programs.filter((program) => !onPath(program));
  if (missing.length === 0) return Deno.test(name, fn);
  if (Deno.env.get("SAGBOOK_ALL") === "1") {
    return Deno.test(name, () => {
      throw new Error(
        `SAGBOOK_ALL=1 allows no skip, but ${missing} is missing`,
      );
    });
  }
  console.log(`skipped: ${name} needs ${missing.join(", ")}`);
  Deno.test({ name, fn, ignore: true });
}
