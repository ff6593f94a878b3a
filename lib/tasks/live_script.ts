/**
 * `deno task live-script`: bundles the library for the live figures.
 *
 * @module
 */
import { join } from "node:path";
import { writeTextAtomically } from "../notebook/write_text_atomically.ts";
import { bundledScriptFile, SCRIPT_FILE } from "./_live_bundle.ts";
import { ROOT } from "./_root.ts";
import { EXIT, plainWords } from "./_task_words.ts";

if (import.meta.main) {
  try {
    await writeTextAtomically(
      join(ROOT, SCRIPT_FILE),
      await bundledScriptFile(),
    );
    console.log(`${SCRIPT_FILE}: made`);
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
