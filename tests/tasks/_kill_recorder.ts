/** A recorder that is killed at a random moment, and what it left behind. */
import type { Random } from "sagbook/numerics/random.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { makeFolder, Recording } from "./_record_folder.ts";

/** What one kill left. */
export interface KilledRecorder {
  /** Readings that were answered. */
  readonly answered: number;
  /** Of these, how many the file does not hold as typed. */
  readonly missing: number;
  /** Marks that were answered and are not in the file. */
  readonly unmarked: number;
  /** Lines of the file that are no whole reading and no mark. */
  readonly torn: number;
  /** Temporary files that bear the name of readings. */
  readonly strays: number;
}

/**
 * Starts a recorder, feeds it readings (each of another value, every seventh
 * taken back) as fast as it takes them, kills it, and looks at the file.
 */
export async function killRecorder(random: Random): Promise<KilledRecorder> {
  const folder = await makeFolder();
  const recording = new Recording(folder, [
    "--zones",
    "centre",
    "--session",
    "S1",
  ]);
  await recording.until(/centre:\n$/);
  const wait = random.uniform() * 250;
  const killed = new Promise<void>((resolve) => {
    setTimeout(() => {
      recording.kill("SIGKILL");
      resolve();
    }, wait);
  });
  const feed = (async () => {
    for (let k = 0; k < 2000; k++) {
      const value = (0.7 + k / 100_000).toFixed(5);
      await recording.type(k % 7 === 6 ? `${value}\n-` : value);
    }
  })().catch(() => {
    // The recorder is gone.
  });
  await killed;
  await recording.end();
  await feed;
  const { lines, readings, problems } = await readPieceFolder(folder);
  const text = await Deno.readTextFile(`${folder}/readings.csv`);
  const held = new Set(readings.map(({ shown }) => shown!.amount.toFixed(5)));
  const rows = text.split("\n").slice(1, -1);
  const marked = new Set(
    rows.filter((row) => row.endsWith(",x")).map((row) =>
      /0\.\d{5}/.exec(row)?.[0]
    ),
  );
  const answers = [
    ...recording.out.matchAll(/^centre (0\.\d{5}) mm: R .*\.$/gm),
  ]
    .map(([, value]) => value);
  const taken = [
    ...recording.out.matchAll(/^Taken back: centre (0\.\d+) mm .*\.$/gm),
  ]
    .map(([, value]) => Number(value).toFixed(5));
  const names = [...Deno.readDirSync(folder)].map(({ name }) => name);
  await Deno.remove(folder, { recursive: true });
  return {
    answered: answers.length,
    missing: answers.filter((one) => !held.has(one) && !marked.has(one)).length,
    unmarked: taken.filter((one) => !marked.has(one) || held.has(one)).length,
    torn: lines.read - lines.used -
      problems.filter(({ code }) => code === "withdrawn")
        .reduce((sum, { count = 1 }) => sum + count, 0) +
      (text.endsWith("\n") ? 0 : 1),
    strays:
      names.filter((name) => /^readings/.test(name) && name !== "readings.csv")
        .length,
  };
}
