/**
 * The script of the live figures, made from the library.
 *
 * @module
 */
import { join } from "node:path";
import { ROOT } from "./_root.ts";

/** Where the script is kept, from the project's root. */
export const SCRIPT_FILE = "lib/live/_bundled_script.ts";

/**
 * Bundles what runs in the browser, as the text of the file that keeps it.
 *
 * @returns TypeScript that exports the script as a string.
 */
export async function bundledScriptFile(): Promise<string> {
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [
      "bundle",
      "--quiet",
      "--minify",
      "--platform",
      "browser",
      "--format",
      "iife",
      join(ROOT, "lib/live/_browser.ts"),
    ],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdout: "piped",
    stderr: "piped",
  }).output();
  const text = new TextDecoder();
  if (!success) {
    throw new Error(
      `The live figures could not be bundled: ${text.decode(stderr)}`,
    );
  }
  return `// deno-fmt-ignore-file
/** Made by \`deno task live-script\` from \`_browser.ts\`; do not edit. */
export const BUNDLED_SCRIPT: string = ${
    JSON.stringify(text.decode(stdout).trim())
  };
`;
}
