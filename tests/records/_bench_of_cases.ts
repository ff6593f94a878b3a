import { effectiveFeet } from "sagbook/geometry/effective_feet.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import type { PieceFolder } from "sagbook/records/folder.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

/** The invented piece of every case: 210 mm, bevel 1.5 mm, R 2520 mm. */
export const PIECE = {
  name: "blank 7",
  form: "concave",
  diameter: "210 mm",
  bevel: "1.5 mm",
  target: { radius: "2520 mm" },
  invented: true,
};

/** The invented bench of every case: r 60 mm, b 3 mm, step 0.001 mm. */
export const BENCH = {
  gauge: { unit: "mm", display_step: "0.001 mm", scale_uncertainty: 0.0005 },
  rings: [{
    id: "A",
    radius: "60 mm",
    ball_radius: "3 mm",
    radius_uncertainty: "0.02 mm",
  }],
};

/** What a test folder is made of. */
export interface FolderParts {
  piece?: Record<string, unknown> | string;
  bench?: Record<string, unknown> | string;
  files?: Record<string, string | Uint8Array>;
}

/** Makes a folder, hands it over, and takes it away. */
export async function withFolder<T>(
  parts: FolderParts,
  use: (path: string) => Promise<T>,
): Promise<T> {
  const path = await Deno.makeTempDir({ prefix: "records-" });
  const text = (part: Record<string, unknown> | string) =>
    typeof part === "string" ? part : JSON.stringify(part, null, 2);
  try {
    await Deno.mkdir(`${path}/sheets`);
    await Deno.writeTextFile(`${path}/piece.json`, text(parts.piece ?? PIECE));
    await Deno.writeTextFile(`${path}/bench.json`, text(parts.bench ?? BENCH));
    for (const [name, content] of Object.entries(parts.files ?? {})) {
      if (typeof content === "string") {
        await Deno.writeTextFile(`${path}/${name}`, content);
      } else await Deno.writeFile(`${path}/${name}`, content);
    }
    return await use(path);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
}

/** Bytes of a hard input. */
export function caseBytes(name: string): Promise<Uint8Array> {
  return Deno.readFile(new URL(`../cases/${name}`, import.meta.url));
}

/** Reads a hard input as the readings of the invented piece. */
export async function readCase(
  name: string,
  parts: FolderParts = {},
  as = "readings.csv",
): Promise<PieceFolder> {
  const files = { ...parts.files, [as]: await caseBytes(name) };
  return await withFolder({ ...parts, files }, readPieceFolder);
}

/** Radius of curvature from the mean sag of some readings, to 0.001 mm. */
export function radiusOfMean(folder: PieceFolder, zone: string): string {
  const sags = folder.readings.filter((one) => one.zone.label === zone)
    .map((one) => one.sag);
  const mean = sags.reduce((sum, sag) => sum + sag, 0) / sags.length;
  const { form } = folder.piece;
  const feet = effectiveFeet(folder.bench.rings[0].shape, form);
  return radiusFromSag(mm(mean), feet, form).toFixed(3);
}

/** Problems of a severity, as `line code`. */
export function codes(folder: PieceFolder, severity: string): string[] {
  return folder.problems.filter((one) => one.severity === severity)
    .map((one) => `${one.line ?? "-"} ${one.code}`);
}
