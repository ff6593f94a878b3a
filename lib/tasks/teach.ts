/**
 * `deno task teach`: the class in the geometry, as one page with live figures.
 *
 * @module
 */
import { join } from "node:path";
import { liveScript } from "../live/live_script.ts";
import { wordsIn } from "../narrative/glossary.ts";
import { exportHtml } from "../notebook/export_html.ts";
import { formatNotebook } from "../notebook/format_notebook.ts";
import { readNotebook } from "../notebook/read_notebook.ts";
import { expectWritable } from "../files/expect_writable.ts";
import { writeAllAtomically } from "../files/write_atomically.ts";
import { VERSION } from "../version.ts";
import { runChecked } from "./_own_kernel.ts";
import { ROOT } from "./_root.ts";
import { stoppable } from "./_stoppable.ts";
import { readFlags } from "./_read_flags.ts";
import { EXIT, plainWords, wrongCall } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";

const NAME = "teaching-the-geometry";

const USAGE = `deno task teach [--out FOLDER]

Runs the class and writes FOLDER/${NAME}.html, one page for the projector
and for each pupil, with figures that move, and FOLDER/${NAME}.ipynb, the
notebook it came from with all results. Both need no network.

  --out FOLDER   where to write; the folder "class" unless told
  --kernel NAME  a Jupyter kernel to run on; unless told the project's own,
                 which checks the types of all cells
  --no-check     types are not checked
  --help         this text

Exit codes: 0 written, 1 a cell or the disk failed, 2 wrong call, 3 the kernel
ended, 4 a cell took too long, 130 stopped.`;

async function teach(args: readonly string[]): Promise<number> {
  const { flags, rest, problem } = readFlags(args, {
    out: "value",
    kernel: "value",
    "no-check": "switch",
    help: "switch",
  });
  const wrong = problem ??
    (rest.length > 0
      ? `The class reads no folder; --out says where to write it: current value is ${
        rest[0]
      }.`
      : undefined);
  if (wrong !== undefined) {
    complain(wrongCall(wrong, USAGE));
    return EXIT.usage;
  }
  if (flags.help) {
    say(USAGE);
    return EXIT.ok;
  }
  const out = typeof flags.out === "string" ? flags.out : "class";
  return await stoppable("teach", (signal) => write(out, flags, signal));
}

/** Runs the class and writes page and notebook, both or neither. */
async function write(
  out: string,
  flags: Readonly<Record<string, string | true>>,
  signal: AbortSignal,
): Promise<number> {
  await expectWritable(out, "the class");
  const folder = join(ROOT, "notebooks");
  const { notebook } = await readNotebook(join(folder, `${NAME}.ipynb`));
  const run = await runChecked(notebook, {
    cwd: folder,
    check: flags["no-check"] !== true,
    onUnchecked: (why) => complain(why),
    signal,
    // The notebook is the project's own, so another kernel may run it.
    ...(typeof flags.kernel === "string"
      ? { kernel: flags.kernel, limits: "unlimited" }
      : {}),
  });
  signal.throwIfAborted();
  for (const { message } of run.problems) complain(message);
  const page = join(out, `${NAME}.html`);
  await writeAllAtomically([
    {
      path: page,
      content: await exportHtml(run.notebook, {
        subtitle:
          "An hour's class. Every number on this page is computed by the library.",
        footer: `Made by sagbook ${VERSION}.`,
        layout: "reader",
        reading: "room",
        liveScript: await liveScript(),
        words: wordsIn,
        ...(run.incomplete === undefined ? {} : { incomplete: run.incomplete }),
      }),
    },
    {
      path: join(out, `${NAME}.ipynb`),
      content: formatNotebook(run.notebook),
    },
  ]);
  say(`${run.exitCode === 0 ? "Page" : "Incomplete page"}: ${page}`);
  return run.exitCode;
}

if (import.meta.main) {
  try {
    Deno.exit(await teach(Deno.args));
  } catch (error) {
    complain(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
