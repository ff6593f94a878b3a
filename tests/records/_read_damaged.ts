/** One damaged file through its reader, and what the reader did with it. */
import { readFinishedPieces } from "sagbook/records/finished_pieces.ts";
import type { Problem } from "sagbook/records/problem.ts";
import { readPlan } from "sagbook/records/read_plan.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { scanReadings } from "sagbook/records/scan_readings.ts";
import type { LineCount, PieceFolder } from "sagbook/records/folder.ts";
import { readWorkLog } from "sagbook/records/work_log.ts";

/** A demo file, the first lines of a long one. */
export interface DemoFile {
  readonly name: string;
  readonly kind: "readings" | "work log" | "finished" | "settings";
  readonly bytes: Uint8Array;
  readonly folder: PieceFolder;
}

const MOST_LINES = 40;
const ROOT = new URL("../../data/", import.meta.url);

/** The demo files that a user would write, cut to forty lines. */
export async function demoFiles(): Promise<DemoFile[]> {
  const files: DemoFile[] = [];
  const cut = async (path: string) =>
    new TextEncoder().encode(
      (await Deno.readTextFile(new URL(path, ROOT))).split("\n")
        .slice(0, MOST_LINES).join("\n") + "\n",
    );
  const pieces = ["metric-250", "inch-200", "gauge-study", "history-300"];
  for (const piece of pieces) {
    const folder = await readPieceFolder(new URL(piece, ROOT).pathname);
    for (const { file } of folder.files) {
      const bytes = await cut(`${piece}/${file}`);
      files.push({ name: `${piece}/${file}`, kind: "readings", bytes, folder });
    }
    for (const name of ["piece.json", "bench.json"]) {
      const bytes = await Deno.readFile(new URL(`${piece}/${name}`, ROOT));
      files.push({ name: `${piece}/${name}`, kind: "settings", bytes, folder });
    }
  }
  const folder = files[0].folder;
  const log = await cut("history-300/worklog.csv");
  const shop = await cut("shop-twelve/finished.csv");
  return [
    ...files,
    { name: "worklog.csv", kind: "work log", bytes: log, folder },
    { name: "finished.csv", kind: "finished", bytes: shop, folder },
  ];
}

/** What is wrong with an account of lines; `undefined` when nothing is. */
function lost(
  lines: LineCount,
  kept: number,
  problems: readonly Problem[],
): string | undefined {
  const said = problems.filter(({ severity, code }) =>
    severity === "refused" || code === "withdrawn"
  ).reduce((sum, { count = 1 }) => sum + count, 0);
  return lines.read !== lines.used + lines.reported
    ? `read ${lines.read}, used ${lines.used}, reported ${lines.reported}`
    : kept !== lines.used
    ? `used ${lines.used}, kept ${kept}`
    : said < lines.reported
    ? `reported ${lines.reported}, said ${said}`
    : undefined;
}

/**
 * Reads a damaged file.
 *
 * @returns What was lost or went wrong; `undefined` when nothing did.
 */
export async function readDamaged(
  file: DemoFile,
  bytes: Uint8Array,
  scratch: string,
): Promise<string | undefined> {
  const { piece, bench } = file.folder;
  try {
    if (file.kind === "readings") {
      const readings: Reading[] = [];
      const { account, problems } = await scanReadings(
        bytes,
        { file: "readings.csv", piece, bench },
        (reading) => readings.push(reading),
      );
      await readPlan(bytes, { file: "plan.csv", piece, bench });
      return readings.some(({ sag, offset }) => !Number.isFinite(sag + offset))
        ? "a reading is not finite"
        : lost(account, readings.length, problems);
    }
    if (file.kind === "work log") {
      const { entries, lines, problems } = await readWorkLog(bytes, "w", "mm");
      return lost(lines, entries.length, problems);
    }
    if (file.kind === "finished") {
      const { pieces, lines, problems } = await readFinishedPieces(
        bytes,
        "f",
        "mm",
      );
      return lost(lines, pieces.length, problems);
    }
    const other = file.name.endsWith("piece.json") ? "bench" : "piece";
    const name = other === "bench" ? "piece.json" : "bench.json";
    await Deno.copyFile(
      `${file.folder.path}/${other}.json`,
      `${scratch}/${other}.json`,
    );
    await Deno.writeFile(`${scratch}/${name}`, bytes);
    await readPieceFolder(scratch);
    return undefined;
  } catch (error) {
    return error instanceof RecordError && error.problems.length > 0
      ? undefined
      : `untyped: ${error}`;
  }
}
