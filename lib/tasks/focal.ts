/**
 * `deno task focal [FOLDER]`: what focal length a ground radius will become, by
 * the shop's finished pieces.
 *
 * @module
 */
import { dirname, join, relative, resolve } from "node:path";
import { LIMIT_WORDS } from "./_notebook_limits.ts";
import { runReportTask } from "./_report_folders.ts";
import type { ReportKind } from "./_report_run.ts";
import { ROOT } from "./_root.ts";

const USAGE =
  `deno task focal [FOLDER ...] [--shop FOLDER] [--chance PERCENT] [--figure NAME]

Reads each FOLDER (piece.json, bench.json, readings) and the shop's finished.csv,
and writes FOLDER/report/: focal.html (the page), focal.ipynb and focal.json.
Without a folder it reports on an invented piece and shop in data/.

  --shop FOLDER     the folder that holds finished.csv; the one that FOLDER lies
                    in unless stated
  --chance PERCENT  wanted chance of landing within tolerance; 90 unless stated
  --figure NAME     what the piece is figured to: paraboloid (unless stated) or
                    sphere
  --kernel NAME     a Jupyter kernel to run on, which cannot be limited and so
                    needs --allow-all; unless told the project's own
  --notebook FILE   a notebook of your own in place of the project's
  --help            this text

${LIMIT_WORDS}

finished.csv has one line for each finished piece: piece, ground_radius,
ground_radius_uncertainty, and either focal_length with
focal_length_uncertainty, or what was read to find it:
  centre, zone, source   where the rays of a zone cross near the centre of
                         curvature; source is moves or fixed
  image, lamp            the image of a lamp, and how far away the lamp was
  image                  the image of a star
with distance_uncertainty. Uncertainties are standard ones. Lengths carry their
unit, or a column unit does.

Exit codes: as deno task report.`;

const FILE = "finished.csv";

function holdsShop(folder: string): boolean {
  try {
    return Deno.statSync(join(folder, FILE)).isFile;
  } catch {
    return false;
  }
}

/** The shop of the folders: the one named, or the one they lie in. */
function shopOf(
  named: string | true | undefined,
  folders: readonly string[],
): { readonly shop: string } | string {
  if (typeof named === "string") {
    const shop = resolve(named);
    return holdsShop(shop)
      ? { shop }
      : `--shop: there is no ${FILE} in ${relative(Deno.cwd(), shop) || "."}.`;
  }
  const above = [...new Set(folders.map((one) => dirname(resolve(one))))];
  return above.length === 1 && holdsShop(above[0])
    ? { shop: above[0] }
    : `--shop needs the folder that holds ${FILE}.`;
}

function kindOf(
  flags: Readonly<Record<string, string | true>>,
  folders: readonly string[],
): ReportKind | string {
  const { chance, figure = "paraboloid" } = flags;
  const percent = typeof chance === "string" ? Number(chance) : 90;
  if (!(percent > 0 && percent < 100)) {
    return `--chance needs a number of per cent between 0 and 100: current value is ${chance}.`;
  }
  if (figure !== "paraboloid" && figure !== "sphere") {
    return `--figure is paraboloid or sphere: current value is ${figure}.`;
  }
  const found = flags.help ? { shop: "" } : shopOf(flags.shop, folders);
  return typeof found === "string" ? found : {
    notebook: "radius-to-focal-length",
    file: "focal",
    results: "focal.json",
    about: "From the ground radius to the focal length",
    folders: [found.shop],
    parameters: {
      shop: found.shop,
      otherShop: "",
      chance: percent / 100,
      figure,
    },
  };
}

if (import.meta.main) {
  const shown = Deno.args.some((arg) => !arg.startsWith("-"))
    ? Deno.args
    : [...Deno.args, "--shop", join(ROOT, "data/shop-twelve")];
  await runReportTask({
    usage: USAGE,
    values: ["shop", "chance", "figure"],
    defaults: ["data/history-300"],
    kind: kindOf,
  }, shown);
}
