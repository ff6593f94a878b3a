/**
 * Runs Jupyter's own suite on both kernels and writes RESULTS.md:
 * `deno run -A tests/jupyter/compare_kernels.ts`.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { VERSION } from "../../lib/version.ts";
import { installBoth, runSuite, type SuiteResult } from "./_kernels.ts";

async function packageVersion(name: string): Promise<string> {
  const { stdout } = await new Deno.Command("dpkg-query", {
    args: ["-W", "-f", "${Version}", name],
  }).output();
  return new TextDecoder().decode(stdout);
}

/** Outcome of each test; a test with parts counts as failed if one of them did. */
function outcomes({ lines }: SuiteResult): Map<string, string> {
  const found = new Map<string, string>();
  let current = "";
  for (const line of lines) {
    const name = /^\s*(test_\w+)/.exec(line)?.[1] ?? current;
    current = name;
    const part = /\((?:\w+=.*)\)\s\.\.\. (?:FAIL|ERROR|skipped)/.exec(line);
    const word = /(ok|FAIL|ERROR|skipped)\b[^a-z]*$/.exec(line)?.[1];
    if (part) {
      const before = found.get(name);
      const parts = Number(/^(\d+)/.exec(before ?? "")?.[1] ?? 0) + 1;
      found.set(name, `${parts} part${parts > 1 ? "s" : ""} not passed`);
    } else if (word && /^test_/.test(line)) {
      found.set(name, word === "ok" ? "passed" : word.toLowerCase());
    }
  }
  return found;
}

const { folder, env } = await installBoth();
const ours = await runSuite("sagbook", env, folder);
const peer = await runSuite("deno", env, folder);
await Deno.remove(folder, { recursive: true });
const [own, other] = [outcomes(ours), outcomes(peer)];
const versions = await Promise.all(
  ["python3-jupyter-kernel-test", "python3-jupyter-client"].map(async (name) =>
    `${name} ${await packageVersion(name)}`
  ),
);
const rows = [...own.keys()].map((name) =>
  `| \`${name}\` | ${own.get(name)} | ${other.get(name) ?? "–"} |`
);
const text = `# Jupyter's own suite for kernels

Made by \`deno run -A tests/jupyter/compare_kernels.ts\` on ${
  new Date().toISOString().slice(0, 10)
}; do not edit. sagbook ${VERSION}, Deno ${Deno.version.deno}, ${
  versions.join(", ")
}. The same samples for both kernels (\`kernel_suite.py\`), one for every optional test.

| test | sagbook | Deno's own kernel |
| --- | --- | --- |
${rows.join("\n")}
| **all** | ${ours.run} run, ${ours.failures} failures, ${ours.skipped} skipped | ${peer.run} run, ${peer.failures} failures or errors in tests and their parts, ${peer.skipped} skipped |

The pager sample sends a message of type \`page\`, which is this kernel's way; Deno's kernel has no pager.
`;
const path = fileURLToPath(new URL("./RESULTS.md", import.meta.url));
await Deno.writeTextFile(path, text);
await new Deno.Command(Deno.execPath(), { args: ["fmt", "-q", path] }).output();
console.log(text);
