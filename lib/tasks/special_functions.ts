/**
 * `deno task special-functions`: bundles the special functions that the
 * distributions need.
 *
 * @module
 */
import { join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { bundledFunctionsFile, FUNCTIONS_FILE } from "./_functions_bundle.ts";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { runTool } from "./_tool.ts";
import { say } from "./_terminal.ts";

const USAGE = `deno task special-functions

Bundles the incomplete beta and gamma functions and their inverses, from the
packages of the stdlib project whose versions tests/statistics/_stdlib.lock
holds, and writes them to ${FUNCTIONS_FILE}:
needed after a change of that lock. Fetches the packages and a bundler the
first time.

  --help   this text

Exit codes: 0 written, 1 failed, 2 wrong call.`;

async function writeFunctions(): Promise<number> {
  await writeAtomically(
    join(ROOT, FUNCTIONS_FILE),
    await bundledFunctionsFile(),
  );
  say(`${FUNCTIONS_FILE}: made`);
  return EXIT.ok;
}

if (import.meta.main) {
  Deno.exit(await runTool({ usage: USAGE, run: writeFunctions }, Deno.args));
}
