/**
 * Tests that need a tool which not every machine has.
 *
 * @module
 */
import { chromiumPath } from "./_page.ts";

function onPath(program: string): boolean {
  const folders = (Deno.env.get("PATH") ?? "").split(":");
  return folders.some((folder) => {
    try {
      return Deno.statSync(`${folder}/${program}`).isFile;
    } catch {
      return false;
    }
  });
}

/** Whether each tool is there. */
const TOOLS = {
  chromium: () => chromiumPath !== undefined,
  jupyter: () => onPath("jupyter"),
} as const;

/**
 * Registers a test that needs a tool. Without it the test is skipped and says
 * so; with SAGBOOK_ALL=1 a missing tool fails the test.
 */
export function testWith(
  tool: keyof typeof TOOLS,
  name: string,
  fn: () => Promise<void>,
): void {
  const isThere = TOOLS[tool]();
  if (isThere) return Deno.test(name, fn);
  if (Deno.env.get("SAGBOOK_ALL") === "1") {
    return Deno.test(name, () => {
      throw new Error(`SAGBOOK_ALL=1 allows no skip, but ${tool} is missing`);
    });
  }
  console.log(`skipped: ${name} needs ${tool}`);
  Deno.test({ name, fn, ignore: true });
}
