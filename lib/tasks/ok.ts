/**
 * `deno task ok`: the one gate. Format, lint, types, docs, tests, packaging.
 *
 * @module
 */
import { join } from "node:path";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { runTool } from "./_tool.ts";

interface Step {
  readonly name: string;
  readonly args: readonly string[];
}

const folders = [...Deno.readDirSync(join(ROOT, "lib"))]
  .filter(({ isDirectory, name }) => isDirectory && name !== "tasks")
  .map(({ name }) => `lib/${name}`)
  .filter((folder) => exists(`${folder}/mod.ts`))
  .sort();

function exists(path: string): boolean {
  try {
    return Deno.statSync(join(ROOT, path)).isFile;
  } catch {
    return false;
  }
}

/** Steps in the order of how soon they fail; `--no-tests` leaves `tests/` out. */
function steps(withTests: boolean): readonly Step[] {
  return [
    { name: "format", args: ["fmt", "--check"] },
    { name: "lint", args: ["lint"] },
    {
      name: "types, with the lock frozen",
      args: ["check", "--frozen", "lib", "tests"],
    },
    {
      name: "types of the notebooks",
      args: ["run", "-A", "--frozen", "lib/tasks/check_notebooks.ts"],
    },
    {
      name: "docs",
      args: [
        "doc",
        "--lint",
        "lib/mod.ts",
        ...folders.map((f) => `${f}/mod.ts`),
      ],
    },
    { name: "examples", args: ["test", "-A", "--doc", "--quiet", "lib"] },
    ...(withTests
      ? [{ name: "tests", args: ["test", "-A", "--quiet", "tests"] }]
      : []),
    { name: "package", args: ["publish", "--dry-run"] },
  ];
}

let [passed, failed, skipped] = [0, 0, 0];

/** Runs one step; its output is shown when it fails, and by tests always. */
async function run({ name, args }: Step): Promise<boolean> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd: ROOT,
    stdout: "piped",
    stderr: "piped",
    env: { NO_COLOR: "1" },
  }).output();
  const text = new TextDecoder().decode(stdout) +
    new TextDecoder().decode(stderr);
  console.log(`${code === 0 ? "ok    " : "FAILED"}  ${name}`);
  const counted =
    /(\d+) passed(?: \(.*?\))? \| (\d+) failed(?: \| (\d+) ignored)?/.exec(
      text,
    );
  if (counted) {
    passed += Number(counted[1]);
    failed += Number(counted[2]);
    skipped += Number(counted[3] ?? 0);
  }
  for (const line of text.match(/^skipped: .*$/gm) ?? []) {
    console.log(`        ${line}`);
    skipped++;
  }
  if (code !== 0) console.log(text);
  return code === 0;
}

const USAGE = `deno task ok [--no-tests]

The one gate that a change must pass: format, lint, types of library, tests and
notebooks, docs, their examples, the tests, the package. Nothing is written.

  --no-tests   all but the tests under tests/
  --help       this text

Exit codes: 0 all passed, 1 something failed, 2 wrong call.`;

async function runSteps(withTests: boolean): Promise<number> {
  let good = true;
  for (const step of steps(withTests)) good = await run(step) && good;
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  return good ? EXIT.ok : EXIT.failed;
}

if (import.meta.main) {
  const code = await runTool({
    usage: USAGE,
    flags: { "no-tests": "switch" },
    run: ({ flags }) => runSteps(flags["no-tests"] !== true),
  }, Deno.args);
  Deno.exit(code);
}
