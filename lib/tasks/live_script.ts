/**
 * `deno task live-script`: bundles the library for the live figures.
 *
 * @module
 */
import { join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { bundledScriptFile, SCRIPT_FILE } from "./_live_bundle.ts";
import { ROOT } from "./_root.ts";
import { EXIT, plainWords } from "./_task_words.ts";

if (import.meta.main) {
  try {
    await writeAtomically(
      join(ROOT, SCRIPT_FILE),
      await bundledScriptFile(),
    );
    console.log(`${SCRIPT_FILE}: made`);
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
