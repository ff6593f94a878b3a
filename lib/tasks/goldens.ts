/**
 * `deno task goldens`: runs the notebooks and keeps their outputs, and draws
 * the figures the tests compare with.
 *
 * @module
 */
import { join } from "node:path";
import { writeAtomically } from "../files/write_atomically.ts";
import { readNotebook } from "../notebook/read_notebook.ts";
import { writeNotebook } from "../notebook/write_notebook.ts";
import { GLOSSARY_FILE, glossaryPage } from "./_glossary_page.ts";
import { runChecked } from "./_own_kernel.ts";
import { ROOT } from "./_root.ts";
import { EXIT } from "./_task_words.ts";
import { runTool } from "./_tool.ts";
import { complain, say } from "./_terminal.ts";

/** The word for the figures, beside the notebooks' names. */
const FIGURES = "figures";
/** The word for the page of the guide that is made from the glossary. */
const GLOSSARY = "glossary";
/** The word for the picture in README. */
const PICTURE = "picture";

const USAGE = `deno task goldens [NAME ...]

Runs the notebooks in notebooks/ and keeps their outputs in them, and draws the
pictures in tests/goldens/figures anew: after a change that moves them, once you
have looked at what has changed. A part of a notebook's name chooses it,
"${FIGURES}" the pictures, "${GLOSSARY}" the page of the guide with all words,
"${PICTURE}" the picture in README (it needs Chromium); without a NAME all.

  --help   this text

Exit codes: 0 kept, 1 a notebook failed and is left as it was, 2 wrong call.`;

/** Names of the notebooks, sorted. */
function notebookNames(): string[] {
  return [...Deno.readDirSync(join(ROOT, "notebooks"))]
    .map(({ name }) => name)
    .filter((name) => name.endsWith(".ipynb"))
    .sort();
}

async function keepNotebook(name: string): Promise<number> {
  const folder = join(ROOT, "notebooks");
  const path = join(folder, name);
  const { notebook } = await readNotebook(path);
  const run = await runChecked(notebook, {
    cwd: folder,
    onUnchecked: (why) => complain(why),
  });
  if (run.exitCode !== 0) {
    for (const { message } of run.problems) complain(`${name}: ${message}`);
    return EXIT.failed;
  }
  await writeNotebook(path, run.notebook);
  say(`${name}: run and kept`);
  return EXIT.ok;
}

/** Runs a program of the tests that keeps pictures. */
async function draw(program: string, what: string): Promise<number> {
  const { success, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", join(ROOT, program)],
    cwd: ROOT,
    stderr: "piped",
  }).output();
  const said = new TextDecoder().decode(stderr).trim();
  if (!success || said !== "") complain(said);
  else say(`${what}: drawn and kept`);
  return success ? EXIT.ok : EXIT.failed;
}

async function writeGlossary(): Promise<number> {
  await writeAtomically(join(ROOT, GLOSSARY_FILE), glossaryPage());
  say(`${GLOSSARY_FILE}: made`);
  return EXIT.ok;
}

async function keep(names: readonly string[]): Promise<number> {
  for (const name of names) {
    const code = name === FIGURES
      ? await draw("tests/figures/_goldens.ts", "tests/goldens/figures")
      : name === PICTURE
      ? await draw("tests/documentation/_readme_picture.ts", "README's picture")
      : name === GLOSSARY
      ? await writeGlossary()
      : await keepNotebook(name);
    if (code !== EXIT.ok) return code;
  }
  return EXIT.ok;
}

if (import.meta.main) {
  const code = await runTool({
    usage: USAGE,
    names: {
      what: "notebook",
      known: () => [...notebookNames(), FIGURES, GLOSSARY, PICTURE],
      part: true,
    },
    run: ({ chosen }) => keep(chosen),
  }, Deno.args);
  Deno.exit(code);
}
