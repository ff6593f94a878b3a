/**
 * `deno task bench [NAME …]`: speed, beside what one would use instead, written
 * to tests/benchmarks/RESULTS.md.
 *
 * @module
 */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { writeAtomically } from "../files/write_atomically.ts";
import { ROOT } from "./_report_run.ts";
import { EXIT, plainWords } from "./_task_words.ts";

const FOLDER = join(ROOT, "tests/benchmarks");

interface Measurement {
  readonly name: string;
  readonly args: readonly string[];
}

/**
 * What is measured: `*_bench.ts` by `deno bench`, and scripts that time a peer
 * of another language beside ours (`*_against_*.ts`, and any bench with a main
 * part of its own) by running them.
 */
function measurements(): Measurement[] {
  const names = [...Deno.readDirSync(FOLDER)].map(({ name }) => name).sort();
  const benches = names.filter((name) => name.endsWith("_bench.ts"));
  const scripts = names.filter((name) =>
    /_against_\w+\.ts$/.test(name) ||
    (name.endsWith("_bench.ts") &&
      Deno.readTextFileSync(join(FOLDER, name)).includes("import.meta.main"))
  );
  const path = (name: string): string => `tests/benchmarks/${name}`;
  return [
    ...benches.map((name) => ({ name, args: ["bench", "-A", path(name)] })),
    ...scripts.map((name) => ({ name, args: ["run", "-A", path(name)] })),
  ];
}

async function run({ args }: Measurement): Promise<string> {
  const { stdout, stderr, success } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd: ROOT,
    env: { NO_COLOR: "1" },
    stdout: "piped",
    stderr: "piped",
  }).output();
  const text = new TextDecoder().decode(stdout).trim()
    .replaceAll(pathToFileURL(ROOT).href, "");
  if (success) return text;
  return `${text}\nfailed: ${new TextDecoder().decode(stderr).slice(-500)}`;
}

async function version(program: string, ...args: string[]): Promise<string> {
  try {
    const { stdout, stderr } = await new Deno.Command(program, { args })
      .output();
    const said = new TextDecoder().decode(stdout) +
      new TextDecoder().decode(stderr);
    return said.trim().split("\n")[0];
  } catch {
    return "not installed";
  }
}

async function machine(): Promise<string[]> {
  const memory = Math.round(Deno.systemMemoryInfo().total / 2 ** 30);
  return [
    `Measured ${
      new Date().toISOString().slice(0, 10)
    } by \`deno task bench\` on ${navigator.hardwareConcurrency} cores, ${memory} GiB, ${Deno.build.os} ${Deno.build.arch}.`,
    "",
    `- Deno ${Deno.version.deno}, V8 ${Deno.version.v8}`,
    `- ${await version("jupyter", "nbconvert", "--version")} (nbconvert)`,
    `- ${await version("R", "--version")}`,
    `- ${await version("python3", "--version")}`,
  ];
}

/** The sections of an older file of results, by their headings. */
async function sectionsOf(path: string): Promise<Map<string, string>> {
  let text = "";
  try {
    text = await Deno.readTextFile(path);
  } catch {
    // There is none yet.
  }
  const found = text.split(/^## /m).slice(1).map((part) => {
    const end = part.indexOf("\n");
    return [part.slice(0, end), part.slice(end).trim()] as const;
  });
  return new Map(found);
}

async function main(only: readonly string[]): Promise<number> {
  const chosen = measurements().filter(({ name }) =>
    only.length === 0 || only.some((part) => name.includes(part))
  );
  if (chosen.length === 0) {
    console.error(
      `There is no benchmark with ${only.join(" or ")} in its name.`,
    );
    return EXIT.usage;
  }
  const path = join(FOLDER, "RESULTS.md");
  const kept = only.length === 0 ? new Map() : await sectionsOf(path);
  for (const one of chosen) {
    const kind = one.args[0] === "bench" ? "bench" : "beside its peer";
    console.log(`${kind}: ${one.name}`);
    const text = await run(one);
    console.log(text + "\n");
    kept.set(`${one.name} (${kind})`, "```\n" + text + "\n```");
  }
  const parts = [
    "# Speed",
    "",
    "Made by a program; do not edit. To repeat: `deno task bench`, or with a part",
    "of a name to repeat one.",
    "",
    ...(await machine()),
  ];
  for (const [name, text] of kept) parts.push("", `## ${name}`, "", text);
  await writeAtomically(path, parts.join("\n") + "\n");
  return EXIT.ok;
}

if (import.meta.main) {
  try {
    Deno.exit(await main(Deno.args));
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
