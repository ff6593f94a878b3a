/**
 * Reports killed at random moments, and what they left.
 *
 * @module
 */
import { Random } from "sagbook/numerics/random.ts";
import { MARK, processesMarked } from "../protocol/_marked_processes.ts";
import { copyPiece, ROOT } from "../tasks/_run_task.ts";
import type { Study, StudyRow } from "./_study.ts";

/** Kills for each seed: 200 in all. */
const KILLS = 40;

const FILES = ["session.html", "session.ipynb", "results.json"];

/** Whether a file of a report is a whole one. */
async function isWhole(path: string): Promise<boolean> {
  try {
    const text = await Deno.readTextFile(path);
    if (path.endsWith(".html")) return /<\/html>\s*$/.test(text);
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function start(folder: string, temporary: string, mark: string) {
  return new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-prompt", "lib/tasks/report.ts", folder],
    cwd: ROOT,
    env: { NO_COLOR: "1", TMPDIR: temporary, [MARK]: mark },
    stdin: "null",
    stdout: "null",
    stderr: "null",
  }).spawn();
}

async function killReports(random: Random): Promise<readonly StudyRow[]> {
  const folder = await copyPiece("coarse-display-180");
  const temporary = await Deno.makeTempDir();
  await start(folder, temporary, "none").status; // remembers the check of types
  const begun = performance.now();
  await start(folder, temporary, "none").status;
  const longest = performance.now() - begun;
  let [torn, processes, killed] = [0, 0, 0];
  for (let k = 0; killed < KILLS && k < 3 * KILLS; k++) {
    const mark = crypto.randomUUID();
    const child = start(folder, temporary, mark);
    await new Promise((done) => setTimeout(done, random.uniform() * longest));
    const all = await processesMarked(mark, 0);
    // Of its processes any may be the one that dies, mostly the first.
    const other = all[Math.floor(random.uniform() * all.length)];
    const pid = k % 4 === 3 && other !== undefined ? Number(other) : child.pid;
    try {
      Deno.kill(pid, "SIGKILL");
      killed++;
    } catch {
      // It had ended.
    }
    await child.status;
    processes += (await processesMarked(mark)).length;
    for (const name of FILES) {
      const path = `${folder}/report/${name}`;
      // A run whose kernel was killed makes an incomplete page and no results.
      const mayLack = name === "results.json" &&
        !await Deno.stat(path).then(() => true, () => false);
      if (!mayLack && !await isWhole(path)) torn++;
    }
  }
  await start(folder, temporary, "none").status;
  const isOurs = (name: string) => name.startsWith("sagbook-");
  const folders = [...Deno.readDirSync(temporary)]
    .filter(({ name }) => isOurs(name)).length;
  const strays = [...Deno.readDirSync(`${folder}/report`)]
    .filter(({ name }) => !FILES.includes(name)).length;
  await Deno.remove(temporary, { recursive: true });
  await Deno.remove(folder, { recursive: true });
  const row = (measure: string, value: number): StudyRow => ({
    case: `${KILLS} kills`,
    measure,
    value,
    as: "number",
    atMost: 0,
  });
  return [
    {
      case: `${KILLS} kills`,
      measure: "that met a living process",
      value: killed,
      as: "number",
      atLeast: KILLS,
    },
    row("files torn or gone", torn),
    row("processes left", processes),
    row("temporary folders left after the next run", folders),
    row("files of other names in the report's folder", strays),
  ];
}

/** Two hundred kills of reports. */
export const study: Study = {
  title: "A killed report tears no file and leaves no process",
  about: `
${KILLS} reports of an invented piece for each seed, 200 in all, each killed
(SIGKILL) at a moment drawn evenly from the time that such a run takes; one that
had ended before is not counted, but made up for. Three times in four the report's own process dies, else one drawn from all that it has started:
kernel, evaluator, type checker. Processes are told by a mark in their environment.
Temporary folders of a killed process are taken away by the next run.
`,
  run: (seed) => killReports(new Random(seed)),
};
