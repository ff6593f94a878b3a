/**
 * `deno task focal [FOLDER]`: what focal length a ground radius will become, by
 * the shop's finished pieces.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { runReportTask } from "./_report_folders.ts";
import { type ReportKind, ROOT } from "./_report_run.ts";

const USAGE = `deno task focal [FOLDER ...] --shop FOLDER [--chance PERCENT]

Reads each FOLDER (piece.json, bench.json, readings) and the shop's finished.csv,
and writes FOLDER/report/: focal.html (the page), focal.ipynb and focal.json.
Without a folder it reports on an invented piece and shop in data/.

  --shop FOLDER     the folder that holds finished.csv
  --chance PERCENT  wanted chance of landing within tolerance; 90 unless stated
  --kernel NAME     the Jupyter kernel to run on
  --notebook FILE   a notebook of your own in place of the project's
  --help            this text

Exit codes: as deno task report.`;

function kindOf(
  flags: Readonly<Record<string, string | true>>,
): ReportKind | string {
  const { shop, chance } = flags;
  if (typeof shop !== "string") {
    return "--shop needs the folder that holds finished.csv.";
  }
  const percent = typeof chance === "string" ? Number(chance) : 90;
  if (!(percent > 0 && percent < 100)) {
    return `--chance needs a number of per cent between 0 and 100: current value is ${chance}.`;
  }
  return {
    notebook: "radius-to-focal-length",
    file: "focal",
    results: "focal.json",
    parameters: {
      shop: resolve(shop),
      otherShop: "",
      chance: percent / 100,
    },
  };
}

if (import.meta.main) {
  const shown = Deno.args.some((arg) => !arg.startsWith("-"))
    ? Deno.args
    : [...Deno.args, "--shop", join(ROOT, "data/shop-twelve")];
  await runReportTask({
    usage: USAGE,
    values: ["shop", "chance"],
    defaults: ["data/history-300"],
    kind: kindOf,
  }, shown);
}
