/**
 * The special functions of the statistics as one file.
 *
 * @module
 */
import { join } from "node:path";
import { ROOT } from "./_root.ts";

/** Where they are kept, from the project's root. */
export const FUNCTIONS_FILE = "lib/statistics/_stdlib/special_functions.js";

/** Versions and check sums of all packages that go in. */
const LOCK_FILE = "tests/statistics/_stdlib.lock";

/** Names of the functions in the file, and of their packages. */
const FUNCTIONS: Readonly<Record<string, string>> = {
  betainc: "betainc",
  erfc: "erfc",
  erfcinv: "erfcinv",
  gammainc: "gammainc",
  gammaincinv: "gammaincinv",
  gammaln: "gammaln",
  kernelBetaincinv: "kernel-betaincinv",
};

/** What is bundled, with the versions of the lock file. */
function entryText(lock: string): string {
  const { specifiers }: { specifiers: Record<string, string> } = JSON.parse(
    lock,
  );
  return Object.entries(FUNCTIONS).map(([name, part]) => {
    const start = `npm:@stdlib/math-base-special-${part}@`;
    const specifier = Object.keys(specifiers).find((one) =>
      one.startsWith(start)
    );
    if (specifier === undefined) {
      throw new TypeError(
        `Cannot bundle the special functions as ${LOCK_FILE} must name ${start}: current value is nothing`,
      );
    }
    return `export { default as ${name} } from "${specifier}";\n`;
  }).join("");
}

/**
 * Bundles the functions of the packages that the lock file names.
 *
 * They are 242 packages on npm, which took a newcomer most of the first minute
 * to fetch; what they compute is 0.2 MB. The code is theirs, with its notices.
 *
 * @returns JavaScript that exports the functions.
 * @throws {Error} If they cannot be fetched or bundled.
 */
export async function bundledFunctionsFile(): Promise<string> {
  const folder = await Deno.makeTempDir({ prefix: "functions-" });
  try {
    const lock = await Deno.readTextFile(join(ROOT, LOCK_FILE));
    await Deno.writeTextFile(join(folder, "deno.json"), "{}\n");
    await Deno.writeTextFile(join(folder, "deno.lock"), lock);
    await Deno.writeTextFile(join(folder, "entry.ts"), entryText(lock));
    const { success, stderr } = await new Deno.Command(Deno.execPath(), {
      args: [
        "bundle",
        "--quiet",
        "--frozen",
        "--minify",
        "--platform",
        "browser",
        "--format",
        "esm",
        "-o",
        "functions.js",
        "entry.ts",
      ],
      cwd: folder,
      env: { NO_COLOR: "1" },
      stdout: "null",
      stderr: "piped",
    }).output();
    if (!success) {
      throw new Error(
        `The special functions could not be bundled: ${
          new TextDecoder().decode(stderr)
        }`,
      );
    }
    const text = await Deno.readTextFile(join(folder, "functions.js"));
    return `// deno-fmt-ignore-file
// deno-lint-ignore-file
// Made by \`deno task special-functions\` from packages of the stdlib project on
// npm; do not edit. Licences: LICENSE and NOTICE in this folder, and the notices
// in the text.
${text.trim()}
`;
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
