/**
 * Tests that draw PNG pictures: the packages for it (15 MB) are not among those
 * that a newcomer fetches, and a test alone does not fetch them either.
 *
 * @module
 */
import { join } from "node:path";

/** Whether the packages lie in the runtime's cache. */
async function areThere(): Promise<boolean> {
  const { stdout } = await new Deno.Command(Deno.execPath(), {
    args: ["info", "--json", "--no-config"],
    stderr: "null",
  }).output();
  const { npmCache } = JSON.parse(new TextDecoder().decode(stdout));
  const folder = join(npmCache, "registry.npmjs.org");
  return await Promise.all(["@resvg/resvg-wasm", "dejavu-fonts-ttf"].map(
    (name) => Deno.stat(join(folder, name)),
  )).then(() => true, () => false);
}

const skip = Deno.env.get("SAGBOOK_ALL") !== "1" && !await areThere();

/** Registers a test that draws pictures; skipped where the packages are not. */
export function testPictures(name: string, fn: () => Promise<void>): void {
  if (skip) {
    console.log(
      `skipped: ${name} needs the packages that deno task export fetches`,
    );
  }
  Deno.test({ name, fn, ignore: skip });
}
