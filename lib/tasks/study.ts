/**
 * `deno task study [NAME …]`: runs the simulation studies and keeps their
 * results in `tests/studies/RESULTS.md`.
 *
 * @module
 */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { VERSION } from "../version.ts";
import { writeAtomically } from "../files/write_atomically.ts";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { runTool } from "./_tool.ts";
import { readSections, section, writeResults } from "./_study_results.ts";
import type { Study } from "./_study.ts";

const FOLDER = join(ROOT, "tests", "studies");
const RESULTS = join(FOLDER, "RESULTS.md");

/** Seeds of every study, fixed before any result was seen. */
const SEEDS = [1, 2, 3, 4, 5];

/** Names of the studies, sorted. */
function studyNames(): string[] {
  return [...Deno.readDirSync(FOLDER)]
    .map(({ name }) => /^(.+)_study\.ts$/.exec(name)?.[1])
    .filter((name) => name !== undefined)
    .sort();
}

async function runStudy(
  name: string,
): Promise<{ text: string; broken: number }> {
  const { study }: { study: Study } = await import(
    pathToFileURL(join(FOLDER, `${name}_study.ts`)).href
  );
  const bySeed = [];
  for (const seed of SEEDS) {
    const start = performance.now();
    bySeed.push(await study.run(seed));
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    console.log(`${name}: seed ${seed} took ${seconds} s`);
  }
  return section(study, SEEDS, bySeed, {
    date: new Date().toISOString().slice(0, 10),
    versions: `sagbook ${VERSION}, Deno ${Deno.version.deno}`,
  });
}

async function oldResults(): Promise<string> {
  try {
    return await Deno.readTextFile(RESULTS);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return "";
    throw error;
  }
}

/** The text as the formatter wants it, since the gate checks that. */
async function formatted(text: string): Promise<string> {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["fmt", "--ext", "md", "-"],
    stdin: "piped",
    stdout: "piped",
  }).spawn();
  const writer = child.stdin.getWriter();
  await writer.write(new TextEncoder().encode(text));
  await writer.close();
  const { success, stdout } = await child.output();
  if (!success) {
    throw new TypeError(
      "Cannot write results as the formatter must accept them: current value is an error of deno fmt",
    );
  }
  return new TextDecoder().decode(stdout);
}

const USAGE = `deno task study [NAME ...]

Repeats the simulation studies of coverage and power under tests/studies, each
with seeds ${SEEDS[0]} to ${
  SEEDS.at(-1)
}, and keeps what they find in tests/studies/RESULTS.md.
Without a NAME all of them: that takes an hour or more.

  --help   this text

Exit codes: 0 all bounds hold, 1 a bound is broken or a study failed,
2 wrong call.`;

async function runStudies(names: readonly string[]): Promise<number> {
  let broken = 0;
  for (const name of names) {
    const found = await runStudy(name);
    // Read anew each time: another run may have written its own sections.
    const sections = readSections(await oldResults(), studyNames());
    sections.set(name, found.text);
    broken += found.broken;
    console.log(
      found.broken === 0
        ? `${name}: all bounds hold`
        : `${name}: ${found.broken} bounds are broken`,
    );
    await writeAtomically(RESULTS, await formatted(writeResults(sections)));
  }
  return broken === 0 ? EXIT.ok : EXIT.failed;
}

if (import.meta.main) {
  const code = await runTool({
    usage: USAGE,
    names: { what: "study", known: studyNames },
    run: ({ chosen }) => runStudies(chosen),
  }, Deno.args);
  Deno.exit(code);
}
