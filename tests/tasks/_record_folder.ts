/** Folders to record into, and the recorder run on them. */
import Papa from "papaparse";
import { ROOT, type TaskRun } from "./_run_task.ts";

/** An invented 210 mm disc under an invented ring of 60 mm. */
export const PIECE = {
  name: "blank 7",
  form: "concave",
  diameter: "210 mm",
  bevel: "1.5 mm",
  target: { radius: "2520 mm" },
  sphericity_tolerance: { sag: "0.01 mm" },
  unit: "mm",
  invented: true,
};

export const BENCH = {
  gauge: { unit: "mm", display_step: "0.001 mm", scale_uncertainty: 0.0005 },
  rings: [{
    id: "A",
    radius: "60 mm",
    ball_radius: "3 mm",
    radius_uncertainty: "0.02 mm",
    foot: "feet out",
  }],
};

/** Makes a folder; other files by their names. */
export async function makeFolder(
  files: Readonly<Record<string, string>> = {},
  bench: unknown = BENCH,
): Promise<string> {
  const path = await Deno.makeTempDir({ prefix: "record-" });
  await Deno.writeTextFile(`${path}/piece.json`, JSON.stringify(PIECE));
  await Deno.writeTextFile(`${path}/bench.json`, JSON.stringify(bench));
  for (const [name, text] of Object.entries(files)) {
    await Deno.writeTextFile(`${path}/${name}`, text);
  }
  return path;
}

/** The command line of the recorder. */
export function recorder(folder: string, ...args: string[]): string[] {
  const task = ["run", "-A", "--no-prompt", "lib/tasks/record.ts"];
  return [...task, folder, ...args];
}

/** A recorder whose lines are written one by one. */
export class Recording {
  readonly #child: Deno.ChildProcess;
  readonly #writer: WritableStreamDefaultWriter<Uint8Array>;
  readonly #reading: Promise<void>;
  /** Everything said so far. */
  out = "";
  #heard: () => void = () => {};

  constructor(
    folder: string,
    args: readonly string[] = [],
    shell?: (command: string) => string[],
  ) {
    const own = [Deno.execPath(), ...recorder(folder, ...args)];
    const [program, ...rest] = shell === undefined
      ? own
      : shell(own.map((word) => `'${word}'`).join(" "));
    this.#child = new Deno.Command(program, {
      args: rest,
      cwd: ROOT,
      env: { NO_COLOR: "1" },
      stdin: "piped",
      stdout: "piped",
      stderr: "piped",
    }).spawn();
    this.#writer = this.#child.stdin.getWriter();
    this.#reading = this.#listen();
  }

  get pid(): number {
    return this.#child.pid;
  }

  async #listen(): Promise<void> {
    const text = this.#child.stdout.pipeThrough(new TextDecoderStream());
    for await (const chunk of text) {
      this.out += chunk;
      this.#heard();
    }
  }

  /** Waits until something holds of what was said; fails after a long time. */
  async when(holds: (out: string) => boolean, what: string): Promise<void> {
    const late = Date.now() + 60_000;
    while (!holds(this.out)) {
      if (Date.now() > late) {
        throw new Error(`never said: ${what}\n${this.out}`);
      }
      let timer: ReturnType<typeof setTimeout> | undefined;
      await new Promise<void>((resolve) => {
        this.#heard = resolve;
        timer = setTimeout(resolve, 200);
      });
      clearTimeout(timer);
    }
  }

  /** Waits until something is said. */
  async until(pattern: RegExp): Promise<void> {
    await this.when((out) => pattern.test(out), String(pattern));
  }

  /** Writes text, a line end after it. */
  async type(text: string): Promise<void> {
    await this.#writer.write(new TextEncoder().encode(`${text}\n`));
  }

  /** Types a line and waits for the next prompt. */
  async ask(text: string): Promise<void> {
    const before = this.out.length;
    await this.type(text);
    await this.when(
      (out) => out.length > before && out.endsWith(":\n"),
      "a prompt",
    );
  }

  kill(signal: Deno.Signal = "SIGKILL"): void {
    this.#child.kill(signal);
  }

  /** Ends the input and waits for the end. */
  async end(): Promise<TaskRun> {
    await this.#writer.close().catch(() => {});
    const [{ code }, err] = await Promise.all([
      this.#child.status,
      new Response(this.#child.stderr).text(),
      this.#reading,
    ]);
    return { code, out: this.out, err };
  }
}

/** Runs the recorder on lines that are all there at once. */
export async function recordAll(
  folder: string,
  input: string,
  ...args: string[]
): Promise<TaskRun> {
  const recording = new Recording(folder, args);
  await recording.type(input);
  return await recording.end();
}

/** Rows of a folder's readings.csv, by the names of their columns. */
export async function rowsOf(
  folder: string,
  file = "readings.csv",
): Promise<Record<string, string>[]> {
  const text = await Deno.readTextFile(`${folder}/${file}`);
  const [header, ...rows] = Papa.parse<string[]>(text.trimEnd()).data;
  return rows.map((row) =>
    Object.fromEntries(header.map((name, k) => [name, row[k] ?? ""]))
  );
}
