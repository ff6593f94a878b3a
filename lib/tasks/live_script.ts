/**
 * `deno task live-script`: bundles the library for the live figures.
 *
 * @module
 */
import { join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { bundledScriptFile, SCRIPT_FILE } from "./_live_bundle.ts";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { runTool } from "./_tool.ts";
import { say } from "./_terminal.ts";

const USAGE = `deno task live-script

Bundles lib/live/_browser.ts with the part of the library that it uses, and
writes it to ${SCRIPT_FILE}: needed after a change to what
the live figures draw or compute. Fetches a bundler the first time.

  --help   this text

Exit codes: 0 written, 1 failed, 2 wrong call.`;

async function writeScript(): Promise<number> {
  await writeAtomically(join(ROOT, SCRIPT_FILE), await bundledScriptFile());
  say(`${SCRIPT_FILE}: made`);
  return EXIT.ok;
}

if (import.meta.main) {
  Deno.exit(await runTool({ usage: USAGE, run: writeScript }, Deno.args));
}
