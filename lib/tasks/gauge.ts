/**
 * `deno task gauge [FOLDER]`: how good the gauge is, from what, and which plan
 * would decide.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { parseLength } from "../units/parse_length.ts";
import { LIMIT_WORDS } from "./_notebook_limits.ts";
import { runReportTask } from "./_report_folders.ts";
import type { ReportKind } from "./_report_run.ts";
import { ROOT } from "./_root.ts";

const USAGE = `deno task gauge [FOLDER ...] [--stretch LENGTH] [--after FOLDER]

Reads each FOLDER (piece.json, bench.json, readings of one surface on several
zeroings) and writes FOLDER/report/: gauge.html (the page), gauge.ipynb,
gauge.json and plan.csv (the plan to fill in; copied into FOLDER it is what
deno task record follows). Without a folder it reports on the invented study in data/.

  --stretch LENGTH  change of the sag by one stretch of work, such as "12 µm"
  --after FOLDER    the study repeated after a change, to compare
  --kernel NAME     a Jupyter kernel to run on, which cannot be limited and so
                    needs --allow-all; unless told the project's own
  --no-check        types are not checked
  --notebook FILE   a notebook of your own in place of the project's
  --help            this text

${LIMIT_WORDS}

Exit codes: as deno task report.`;

function kindOf(
  flags: Readonly<Record<string, string | true>>,
): ReportKind | string {
  const { stretch, after } = flags;
  let change = 0;
  if (typeof stretch === "string") {
    const read = parseLength(stretch);
    if (read.kind !== "length" || read.value <= 0) {
      return `--stretch needs a length above 0 with its unit, such as "12 µm": current value is ${stretch}.`;
    }
    change = read.value;
  }
  return {
    notebook: "repeatability",
    file: "gauge",
    results: "gauge.json",
    about: "How good the gauge is, and what to read to decide",
    hasPlan: true,
    folders: typeof after === "string" ? [resolve(after)] : [],
    parameters: {
      after: typeof after === "string" ? resolve(after) : "",
      stretch: change,
    },
  };
}

if (import.meta.main) {
  const shown = Deno.args.some((arg) => !arg.startsWith("-")) ? Deno.args : [
    ...Deno.args,
    "--after",
    join(ROOT, "data/gauge-study-cured"),
    "--stretch",
    "12 µm",
  ];
  await runReportTask({
    usage: USAGE,
    values: ["stretch", "after"],
    defaults: ["data/gauge-study"],
    kind: kindOf,
  }, shown);
}
