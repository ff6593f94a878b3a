/**
 * `deno task plan [FOLDER]`: how sure the radius is, which ring for which
 * question, and what to read next.
 *
 * @module
 */
import { parseLength } from "../units/parse_length.ts";
import { LIMIT_WORDS } from "./_notebook_limits.ts";
import { runReportTask } from "./_report_folders.ts";
import type { ReportKind } from "./_report_run.ts";

const USAGE = `deno task plan [FOLDER ...] [--edge LENGTH] [--sets N]

Reads each FOLDER (piece.json, bench.json, readings if there are any) and writes
FOLDER/report/: plan.html (the page, with a bench sheet to print), plan.ipynb,
plan.json and plan.csv (the sheet to fill in; copied into FOLDER it is what
deno task record follows). Without a folder it plans for an invented study in data/.

  --edge LENGTH    width of the turned edge to look for, such as "15 mm"
  --sets N         sets that rings are compared for, from 2
  --kernel NAME    a Jupyter kernel to run on, which cannot be limited and so
                   needs --allow-all; unless told the project's own
  --no-check       types are not checked
  --notebook FILE  a notebook of your own in place of the project's
  --help           this text

${LIMIT_WORDS}

Exit codes: as deno task report.`;

function kindOf(
  flags: Readonly<Record<string, string | true>>,
): ReportKind | string {
  const parameters: Record<string, number> = {};
  if (typeof flags.edge === "string") {
    const read = parseLength(flags.edge);
    if (read.kind !== "length" || read.value <= 0) {
      return `--edge needs a length above 0 with its unit, such as "15 mm": current value is ${flags.edge}.`;
    }
    parameters.edgeWidth = read.value;
  }
  if (typeof flags.sets === "string") {
    const sets = Number(flags.sets);
    if (!Number.isInteger(sets) || sets < 2 || sets > 100) {
      return `--sets needs a whole number from 2 to 100: current value is ${flags.sets}.`;
    }
    parameters.sets = sets;
  }
  return {
    notebook: "measurement-plan",
    file: "plan",
    results: "plan.json",
    about: "Before the next session: rings, uncertainty, what to read",
    hasPlan: true,
    parameters,
  };
}

if (import.meta.main) {
  await runReportTask({
    usage: USAGE,
    values: ["edge", "sets"],
    defaults: ["data/gauge-study"],
    kind: kindOf,
  }, Deno.args);
}
