/**
 * Having at hand what a notebook without a network needs.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { dirname, join } from "node:path";
import { kernelCommand } from "../kernel/kernel_command.ts";
import { runNotebook } from "../notebook/run_notebook.ts";
import { userCacheFolder } from "../protocol/system.ts";
import { ROOT } from "./_root.ts";

/** The runtime's cache, where the mark is kept: who empties it removes both. */
const CACHE = Deno.env.get("DENO_DIR") ||
  join(dirname(userCacheFolder()), "deno");

/**
 * Fetches the project's packages and their types, once for each version of
 * them: neither a notebook's code nor the check of its text may ask a network.
 *
 * One cell that imports every layer, and nothing else, is run with the network
 * open: the runtime then fetches what `deno.json` names, types included, and the
 * check of a notebook finds them there. (Checking that cell too fetches nothing
 * more and takes seconds.)
 *
 * @param signal Stops it; then nothing is remembered.
 * @throws {Error} If something cannot be fetched.
 */
export async function fetchPackages(signal?: AbortSignal): Promise<void> {
  const settings = await Deno.readTextFile(join(ROOT, "deno.json"));
  const lock = await Deno.readTextFile(join(ROOT, "deno.lock"));
  const key = createHash("sha256")
    .update(`${Deno.version.deno}\n${settings}\n${lock}`).digest("hex");
  const mark = join(CACHE, "sagbook-packages");
  if (await Deno.readTextFile(mark).catch(() => "") === key) return;
  const layers = Object.keys(JSON.parse(settings).exports);
  const source = layers.map((name) => `import "sagbook${name.slice(1)}";`);
  const run = await runNotebook({
    metadata: {},
    cells: [{
      cell_type: "code",
      id: "layers",
      metadata: {},
      source: source.join("\n"),
      execution_count: null,
      outputs: [],
    }],
  }, {
    cwd: ROOT,
    kernel: kernelCommand({
      main: join(ROOT, "lib/tasks/kernel.ts"),
      config: join(ROOT, "deno.json"),
      check: false,
    }),
    ...(signal && { signal }),
  });
  if (run.status === "stopped") return;
  if (run.status !== "complete") {
    throw new Error(
      `Cannot fetch the packages that a notebook needs; connect to a network once, and try again: ${
        run.problems[0]?.message ?? run.status
      }`,
    );
  }
  // What cannot be remembered is looked for again the next time.
  await Deno.writeTextFile(mark, key).catch(() => {});
}
