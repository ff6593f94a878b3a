/**
 * Very much at once: readings by the million to a report, a cell that prints
 * 50 MB to a page, a shop of many pieces; time and memory of all processes.
 *
 * `SAGBOOK_BENCH_PIECES=1000 deno task bench scale` takes a thousand pieces,
 * about a quarter of an hour.
 *
 * @module
 */
import Papa from "papaparse";
import { fileURLToPath } from "node:url";
import type { BenchRow, GrowthPoint } from "sagbook/tasks/_benchmark.ts";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
import { Random } from "sagbook/numerics/random.ts";
import { benchProgram, type BenchSize } from "./_program.ts";
import { wholeProgram, type WholeRun } from "./_whole_program.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const HEADER = "session,ring,zeroing,diameter_deg,foot_deg,zone,reading,unit\n";
const ZONES = ["centre", "50% reach", "edge"];

/** An invented folder with that many readings, so many to a session. */
async function writePiece(
  folder: string,
  readings: number,
  perSession: number,
  seed: number,
): Promise<void> {
  await Deno.mkdir(folder, { recursive: true });
  for (const name of ["piece.json", "bench.json"]) {
    await Deno.copyFile(`${ROOT}data/metric-250/${name}`, `${folder}/${name}`);
  }
  const random = new Random(seed);
  using file = await Deno.create(`${folder}/readings.csv`);
  const encoder = new TextEncoder();
  let part = HEADER;
  for (let i = 0; i < readings; i++) {
    const session = Math.floor(i / perSession) + 1;
    const set = Math.floor(i % perSession / 3) + 1;
    const sag = 0.416 + 0.001 * random.normal();
    part += `evening ${session},ring 100,${set},${20 * set % 180},foot out,${
      ZONES[i % 3]
    },${sag.toFixed(3)},mm\n`;
    if (part.length < 1 << 16 && i < readings - 1) continue;
    for (let bytes = encoder.encode(part); bytes.length > 0;) {
      bytes = bytes.subarray(await file.write(bytes));
    }
    part = "";
  }
}

const report = (folder: string, ...flags: string[]) =>
  wholeProgram([
    Deno.execPath(),
    "run",
    "-A",
    `${ROOT}lib/tasks/report.ts`,
    folder,
    ...flags,
  ]);

const parseAlone = (folder: string) =>
  wholeProgram([
    Deno.execPath(),
    "run",
    "-A",
    fileURLToPath(import.meta.url),
    "--parse",
    `${folder}/readings.csv`,
  ]);

/** Of several runs the middle one by time, with the largest memory of all. */
async function several(
  count: number,
  run: () => Promise<WholeRun>,
): Promise<WholeRun> {
  const runs: WholeRun[] = [];
  for (let i = 0; i < count; i++) runs.push(await run());
  runs.sort((a, b) => a.ms - b.ms);
  return {
    ms: runs[count >> 1].ms,
    peak: Math.max(...runs.map(({ peak }) => peak)),
  };
}

/** A row of what grows; the last size is the row's own. */
async function rowOf(
  what: string,
  grows: string,
  sizes: readonly number[],
  measure: (n: number) => Promise<{ ours: WholeRun; peer?: WholeRun }>,
  peer?: { readonly name: string; readonly version?: string },
): Promise<BenchRow> {
  const growth: GrowthPoint[] = [];
  for (const n of sizes) {
    const { ours, peer } = await measure(n);
    growth.push({
      n,
      ours: ours.ms,
      ourMemory: ours.peak,
      ...(peer && { peer: peer.ms, peerMemory: peer.peak }),
    });
    console.error(`${what}: ${n} ${grows}`);
  }
  const last = growth[growth.length - 1];
  return {
    what,
    ours: last.ours,
    grows,
    growth,
    memory: {
      ours: last.ourMemory,
      ...(last.peerMemory === undefined ? {} : { peer: last.peerMemory }),
    },
    ...(peer && { peer: { ...peer, value: last.peer } }),
  };
}

async function readingsRow(
  folder: string,
  isTiny: boolean,
  perSession: number,
  what: string,
): Promise<BenchRow> {
  const version = /npm:papaparse@([\d.]+)/.exec(
    await Deno.readTextFile(`${ROOT}deno.json`),
  )?.[1];
  return await rowOf(
    what,
    "readings",
    isTiny ? [300] : [1e4, 1e5, 1e6],
    async (n) => {
      const piece = `${folder}/${n}-${perSession}`;
      await writePiece(piece, n, perSession, n);
      const runs = n < 1e6 && !isTiny ? 3 : 1;
      const found = {
        ours: await several(
          runs,
          () => isTiny ? report(piece, "--no-check") : report(piece),
        ),
        peer: await several(runs, () => parseAlone(piece)),
      };
      await Deno.remove(piece, { recursive: true });
      return found;
    },
    {
      name: "Papa Parse alone",
      ...(version === undefined ? {} : { version }),
    },
  );
}

async function printedRow(folder: string, isTiny: boolean): Promise<BenchRow> {
  const script = fileURLToPath(import.meta.resolve("./_notebook_to_html.ts"));
  return await rowOf(
    "A cell that prints 50 MB, to a page",
    "MB printed",
    isTiny ? [1] : [1, 10, 50],
    async (n) => {
      const path = `${folder}/prints-${n}.ipynb`;
      await writeNotebook(path, {
        metadata: {
          kernelspec: {
            name: "deno",
            display_name: "Deno",
            language: "typescript",
          },
        },
        cells: [{
          cell_type: "code",
          id: "prints",
          metadata: {},
          source:
            `const line = "0.4160 mm of sag, an invented reading\\n".repeat(250);\nfor (let k = 0; k < ${
              100 * n
            }; k++) console.log(line);`,
          execution_count: null,
          outputs: [],
        }],
      });
      return {
        ours: await wholeProgram([
          Deno.execPath(),
          "run",
          "-A",
          script,
          path,
          `${folder}/prints-${n}.html`,
          ...(isTiny ? ["--no-check"] : []),
        ]),
      };
    },
  );
}

async function shopRow(folder: string, isTiny: boolean): Promise<BenchRow> {
  const most = Number(Deno.env.get("SAGBOOK_BENCH_PIECES") ?? 40);
  return await rowOf(
    `A shop of ${isTiny ? 2 : most} pieces, one after another`,
    "pieces",
    isTiny ? [2] : [most / 10, most],
    async (n) => {
      const shop = `${folder}/shop-${n}`;
      for (let piece = 1; piece <= n; piece++) {
        await writePiece(`${shop}/disc ${piece}`, 30, 30, piece);
      }
      const flags = ["--at-once", "1", ...(isTiny ? ["--no-check"] : [])];
      const found = { ours: await report(shop, ...flags) };
      await Deno.remove(shop, { recursive: true });
      return found;
    },
  );
}

async function measureAll(size: BenchSize) {
  const isTiny = size === "tiny";
  const folder = await Deno.makeTempDir({ prefix: "bench-scale-" });
  try {
    // The notebook's types are checked once, whatever it is about.
    if (!isTiny) {
      await writePiece(`${folder}/first`, 30, 30, 1);
      await report(`${folder}/first`);
    }
    return {
      title: "Very much at once",
      about:
        "Each is a whole `deno task report`, or a notebook run to a page, from its start to its end; memory is the sum over all its processes, of which the runtime and the kernel at rest take about 0.6 GB. The peer only splits the same file into strings, in one process. Of a million readings nothing is left out of the answer; figures draw ranges, and tables say what they leave out.",
      rows: [
        await readingsRow(
          folder,
          isTiny,
          Infinity,
          "Report of 10⁶ readings of one session",
        ),
        ...(isTiny ? [] : [
          await readingsRow(
            folder,
            isTiny,
            30,
            "Report of 10⁶ readings in sessions of 30",
          ),
        ]),
        await printedRow(folder, isTiny),
        await shopRow(folder, isTiny),
      ],
    };
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

if (import.meta.main) {
  const [first, path] = Deno.args;
  if (first === "--parse") {
    const text = await Deno.readTextFile(path);
    console.log(Papa.parse(text, { header: false }).data.length);
  } else await benchProgram({ run: measureAll });
}
