import { deepEqual, equal, ok } from "node:assert/strict";
import { ProblemCollector } from "sagbook/records/_problem_collector.ts";
import { LARGE_FILE, scanInBlocks } from "sagbook/records/_scan_in_blocks.ts";
import { scanText } from "sagbook/records/_scan_text.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { readPieceSettings } from "sagbook/records/read_piece_settings.ts";
import type { Reading } from "sagbook/records/reading.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import { BENCH as BENCH_FILE, PIECE as PIECE_FILE } from "./_bench_of_cases.ts";
import { BENCH, PIECE } from "./_scan_of_text.ts";

function source() {
  const problems = new ProblemCollector();
  const readings: Reading[] = [];
  return {
    problems,
    readings,
    file: "readings.csv",
    piece: PIECE,
    bench: BENCH,
    firstOrder: 5,
    sheetSession: "readings",
    visit: (reading: Reading) => void readings.push(reading),
  };
}

/** Scans bytes whole and in blocks; what both found, the latter first. */
async function bothWays(content: string | Uint8Array, block: number) {
  const bytes = typeof content === "string"
    ? new TextEncoder().encode(content)
    : content;
  const path = await Deno.makeTempFile({ prefix: "blocks-" });
  try {
    await Deno.writeFile(path, bytes);
    const [inBlocks, whole] = [source(), source()];
    const told: number[] = [];
    const account = await scanInBlocks(
      path,
      bytes.length,
      inBlocks,
      (count) => told.push(count),
      block,
    );
    const found = (account: unknown, { problems, readings }: typeof whole) => ({
      account,
      problems: problems.list(),
      readings,
    });
    return {
      told,
      whole: found(await scanText(bytes, whole), whole),
      visited: inBlocks.readings.length,
      inBlocks: account === undefined ? undefined : found(account, inBlocks),
    };
  } finally {
    await Deno.remove(path);
  }
}

const HEADER = "session;zeroing;diameter_deg;zone;reading;unit;note";

/** Lines of every kind that a table may hold, several times over. */
function manyLines(decimal: string, end: string): string {
  const lines = ["# an invented table", HEADER];
  for (let i = 0; i < 400; i++) {
    const reading = `0${decimal}7${String(10 + i % 20)}`;
    lines.push(
      i % 41 === 3
        ? ""
        : i % 43 === 5
        ? "# zone: edge"
        : i % 61 === 7
        ? HEADER
        : i % 53 === 11
        ? `S1;${i};0;centre;oops;mm;é`
        : i % 71 === 13
        ? "mean;;;;0,7;mm;"
        : `S${i % 3};${i >> 2};20;${
          i % 2 ? "edge" : "centre"
        };${reading};mm;µm ${i}`,
    );
  }
  return lines.join(end) + (decimal === "," ? end : "");
}

Deno.test("scanInBlocks() finds in a table what one scan of the whole finds, wherever its blocks end", async () => {
  for (const [decimal, end] of [[".", "\n"], [",", "\r\n"]] as const) {
    const text = manyLines(decimal, end);
    for (const block of [211, 1_000, 4_096, 1 << 20]) {
      const { inBlocks, whole, told } = await bothWays(
        `\uFEFF${text}`,
        block,
      );
      deepEqual(inBlocks, whole);
      ok(whole.readings.length > 300 && whole.problems.length > 5);
      ok(told.length >= text.length / block);
    }
  }
});

Deno.test("scanInBlocks() finds in every handed table what one scan finds, or leaves it to that", async () => {
  const cases = new URL("../cases/", import.meta.url);
  let same = 0;
  for await (const { name } of Deno.readDir(cases)) {
    if (!/\.(csv|txt)$/.test(name)) continue;
    const bytes = await Deno.readFile(new URL(name, cases));
    const { inBlocks, whole, visited } = await bothWays(bytes, 1 << 10);
    if (inBlocks === undefined) equal(visited, 0);
    else {
      deepEqual(inBlocks, whole, name);
      same++;
    }
  }
  ok(same >= 5, `${same}`);
});

Deno.test("scanInBlocks() leaves quotes, other encodings and what is no table to one scan of the whole", async () => {
  const table = `session,zeroing,zone,reading\nS1,1,centre,0.715\n`;
  for (
    const content of [
      `${table}S1,1,edge,"0.7\n"\n`,
      new Uint8Array([...new TextEncoder().encode(table), 0xe9, 0x0a]),
      `${table}\u0000`,
      "nothing that is a table\n".repeat(50),
      "",
    ]
  ) {
    const { inBlocks, visited } = await bothWays(content, 1 << 10);
    equal(inBlocks, undefined);
    equal(visited, 0);
  }
});

Deno.test("readPieceFolder() tells how far a long file is, and ends at all of it", async () => {
  const path = await Deno.makeTempDir({ prefix: "blocks-" });
  try {
    await Deno.writeTextFile(`${path}/piece.json`, JSON.stringify(PIECE_FILE));
    await Deno.writeTextFile(`${path}/bench.json`, JSON.stringify(BENCH_FILE));
    const line = `S1,1,centre,0.715,${"an invented note ".repeat(20)}\n`;
    const count = Math.ceil(LARGE_FILE / line.length) + 1;
    await Deno.writeTextFile(
      `${path}/readings.csv`,
      `session,zeroing,zone,reading,note\n${line.repeat(count)}`,
    );
    const told: number[] = [];
    const { readings, lines } = await readPieceFolder(path, {
      onProgress: ({ part }) => told.push(part),
    });
    equal(readings.length, count);
    deepEqual(lines, { read: count, used: count, reported: 0 });
    equal(readings[count - 1].line, count + 1);
    ok(told.length > 3);
    equal(told.at(-1), 1);
    deepEqual(told, told.toSorted((a, b) => a - b));
  } finally {
    await Deno.remove(path, { recursive: true });
  }
});

Deno.test("readPieceSettings() reads the piece and the bench without the readings, and refuses what readPieceFolder() refuses", async () => {
  const path = await Deno.makeTempDir({ prefix: "blocks-" });
  try {
    await Deno.writeTextFile(`${path}/piece.json`, JSON.stringify(PIECE_FILE));
    const failure = await readPieceSettings(path).catch((error) => error);
    ok(failure instanceof RecordError);
    deepEqual(await readPieceFolder(path).catch((error) => error), failure);
    await Deno.writeTextFile(`${path}/bench.json`, JSON.stringify(BENCH_FILE));
    await Deno.mkdir(`${path}/readings.csv`);
    const { piece, bench, problems } = await readPieceSettings(path);
    equal(piece.name, PIECE_FILE.name);
    equal(bench.rings[0].id, "A");
    deepEqual(problems, []);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
});
