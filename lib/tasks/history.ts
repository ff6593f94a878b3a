/**
 * `deno task history [FOLDER]`: the history of a piece, what it taught, how much
 * work remains, and a record to print.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { LIMIT_WORDS } from "./_notebook_limits.ts";
import { runReportTask } from "./_report_folders.ts";
import type { ReportKind } from "./_report_run.ts";
import { ROOT } from "./_root.ts";

const USAGE =
  `deno task history [FOLDER ...] [--earlier FOLDER] [--up-to SESSION] [--risk PERCENT]

Reads each FOLDER (piece.json, bench.json, readings, worklog.csv) and writes
FOLDER/report/: history.html (the page), history.ipynb and history.json. Without
a folder it reports on an invented piece in data/.

  --earlier FOLDER  an earlier piece of the same diameter, whose rates are
                    expected of this one
  --up-to SESSION   look back to this session: what came later is left out
  --risk PERCENT    accepted risk of passing the target; 5 unless stated
  --kernel NAME     a Jupyter kernel to run on, which cannot be limited and so
                    needs --allow-all; unless told the project's own
  --notebook FILE   a notebook of your own in place of the project's
  --help            this text

${LIMIT_WORDS}

Exit codes: as deno task report.`;

function kindOf(
  flags: Readonly<Record<string, string | true>>,
): ReportKind | string {
  const { earlier, risk, "up-to": upTo } = flags;
  const percent = typeof risk === "string" ? Number(risk) : 5;
  if (!(percent > 0 && percent < 100)) {
    return `--risk needs a number of per cent between 0 and 100: current value is ${risk}.`;
  }
  return {
    notebook: "fabrication-history",
    file: "history",
    results: "history.json",
    about: "The history of the piece",
    folders: typeof earlier === "string" ? [resolve(earlier)] : [],
    parameters: {
      earlier: typeof earlier === "string" ? resolve(earlier) : "",
      upTo: typeof upTo === "string" ? upTo : "",
      risk: percent / 100,
    },
  };
}

if (import.meta.main) {
  const shown = Deno.args.some((arg) => !arg.startsWith("-")) ? Deno.args : [
    ...Deno.args,
    "--earlier",
    join(ROOT, "data/history-300-before"),
  ];
  await runReportTask({
    usage: USAGE,
    values: ["earlier", "up-to", "risk"],
    defaults: ["data/history-300"],
    kind: kindOf,
  }, shown);
}
