/**
 * `deno task report [FOLDER …]`: readings in, one page out, the answer first.
 *
 * @module
 */
import { LIMIT_WORDS } from "./_notebook_limits.ts";
import { runReportTask } from "./_report_folders.ts";
import { SESSION_REPORT } from "./_report_run.ts";

const USAGE = `deno task report [FOLDER ...] [--kernel NAME] [--notebook FILE]

Reads each FOLDER (piece.json, bench.json, readings), runs the session notebook
on it and writes FOLDER/report/: session.html (the page), session.ipynb (the
notebook as run) and results.json. A folder of such folders is done one by one,
and gets a page that lists them, FOLDER/report/index.html. Without a folder it
reports on the invented pieces in data/.

  --at-once N      pieces done at the same time; unless told half as many as
                   there are processors, four at most
  --continue       leaves out pieces whose page is younger than all their files
  --kernel NAME    a Jupyter kernel to run on, which cannot be limited and so
                   needs --allow-all; unless told the project's own
  --no-check       types are not checked
  --notebook FILE  a notebook of your own in place of the session notebook; it
                   needs a cell tagged "parameters" that declares "folder"
  --help           this text

${LIMIT_WORDS}

Exit codes: 0 all reports made, 1 a folder or a cell failed, 2 wrong call,
3 the kernel ended, 4 a cell took too long, 130 stopped.`;

if (import.meta.main) {
  await runReportTask({
    usage: USAGE,
    defaults: ["data"],
    hasIndex: true,
    kind: () => SESSION_REPORT,
  }, Deno.args);
}
