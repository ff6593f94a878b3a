import { deepEqual, equal, ok } from "node:assert/strict";
import fc from "fast-check";
import { Random } from "sagbook/numerics/random.ts";
import { csvText } from "sagbook/records/csv_text.ts";
import {
  FINISHED_HEADER,
  readFinishedPieces,
} from "sagbook/records/finished_pieces.ts";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";
import { readPlan } from "sagbook/records/read_plan.ts";
import { settingsOfText } from "sagbook/records/settings_of_text.ts";
import { readWorkLog, WORK_LOG_HEADER } from "sagbook/records/work_log.ts";
import * as cases from "./_bench_of_cases.ts";
import { DAMAGE, damaged } from "./_mutations.ts";
import { demoFiles, readDamaged } from "./_read_damaged.ts";
import { BENCH, PIECE } from "./_scan_of_text.ts";

/** Mutations of the demo files in these tests; the study makes 10⁵. */
const SAMPLE = 2_000;

Deno.test("the readers lose no line of damaged demo files and throw nothing untyped", async () => {
  const files = await demoFiles();
  const random = new Random(20);
  const scratch = await Deno.makeTempDir({ prefix: "damaged-" });
  const met = new Set<string>();
  try {
    for (let i = 0; i < SAMPLE; i++) {
      const file = files[i % files.length];
      const { bytes, kinds } = damaged(file.bytes, random);
      const fault = await readDamaged(file, bytes, scratch);
      equal(fault, undefined, `${file.name}, ${kinds}, ${i}`);
      for (const kind of kinds) met.add(kind);
    }
  } finally {
    await Deno.remove(scratch, { recursive: true });
  }
  deepEqual([...met].sort(), Object.keys(DAMAGE).sort());
});

const anyBytes = fc.oneof(
  fc.uint8Array({ maxLength: 300 }),
  fc.string({ unit: "binary", maxLength: 200 }).map((text) =>
    new TextEncoder().encode(text)
  ),
  fc.jsonValue({ maxDepth: 3 }).map((value) =>
    new TextEncoder().encode(JSON.stringify(value))
  ),
);

Deno.test("readPieceFolder() gives a folder or a RecordError for any bytes in either JSON file", async () => {
  const path = await Deno.makeTempDir({ prefix: "any-" });
  const text = (content: unknown) =>
    new TextEncoder().encode(JSON.stringify(content));
  try {
    await fc.assert(
      fc.asyncProperty(anyBytes, fc.boolean(), async (bytes, isPiece) => {
        await Deno.writeFile(
          `${path}/piece.json`,
          isPiece ? bytes : text(cases.PIECE),
        );
        await Deno.writeFile(
          `${path}/bench.json`,
          isPiece ? text(cases.BENCH) : bytes,
        );
        try {
          await readPieceFolder(path);
        } catch (error) {
          ok(error instanceof RecordError, String(error));
          ok(error.problems.some(({ severity }) => severity === "refused"));
        }
      }),
      { seed: 23, numRuns: 400 },
    );
  } finally {
    await Deno.remove(path, { recursive: true });
  }
});

Deno.test("settingsOfText() gives settings or refusals whatever stands in a field", async () => {
  const wild = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom("0 mm", "-1 mm", "1e308 m", "1,234 mm", "½ in", "", "NaN"),
  );
  const fields = Object.keys(cases.PIECE);
  const ringFields = Object.keys(cases.BENCH.rings[0]);
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...fields),
      fc.constantFrom(...ringFields),
      wild,
      async (field, ringField, value) => {
        const piece = { ...cases.PIECE, [field]: value } as never;
        const rings = [{ ...cases.BENCH.rings[0], [ringField]: value }];
        const bench = { ...cases.BENCH, rings } as never;
        const found = await settingsOfText(piece, bench, "here");
        const refused = found.problems.some(({ severity }) =>
          severity === "refused"
        );
        ok(refused || found.piece !== undefined && found.bench !== undefined);
        for (const one of [found.piece?.diameter, found.piece?.bevel]) {
          ok(one === undefined || Number.isFinite(one));
        }
      },
    ),
    { seed: 29, numRuns: 400 },
  );
});

Deno.test("readPlan() gives places or problems for any bytes below a header", async () => {
  const head = new TextEncoder().encode("session,zeroing,zone,reading\n");
  await fc.assert(
    fc.asyncProperty(
      fc.uint8Array({ maxLength: 300 }),
      fc.boolean(),
      async (bytes, headed) => {
        const all = headed ? new Uint8Array([...head, ...bytes]) : bytes;
        const { readings, problems } = await readPlan(all, {
          file: "plan.csv",
          piece: PIECE,
          bench: BENCH,
        });
        ok(readings.every(({ place }) => Number.isFinite(place.offset)));
        ok(problems.every(({ file }) => file === "plan.csv"));
      },
    ),
    { seed: 31, numRuns: 300 },
  );
});

Deno.test("readFinishedPieces() reads used plus reported whatever it is given", async () => {
  const head = new TextEncoder().encode(`${FINISHED_HEADER.join(",")}\n`);
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
      const all = new Uint8Array([...head, ...bytes]);
      const { pieces, lines } = await readFinishedPieces(all, "f.csv", "mm");
      equal(lines.read, lines.used + lines.reported);
      equal(pieces.length, lines.used);
    }),
    { seed: 37, numRuns: 300 },
  );
});

const words = fc.string({ unit: "grapheme", maxLength: 12 })
  .map((text) => text.trim())
  .filter((text) => !text.includes("\0") && !text.includes("\r"));
const amount = fc.integer({ min: 1, max: 99_999 }).map((n) => n / 100);

Deno.test("readWorkLog() and readFinishedPieces() read back what csvText() wrote", async () => {
  const entry = fc.record({
    minutes: amount,
    wets: fc.nat(99),
    stroke: words,
    note: words,
  });
  await fc.assert(
    fc.asyncProperty(
      fc.array(entry, { minLength: 1, maxLength: 6 }),
      async (list) => {
        const text = csvText([
          WORK_LOG_HEADER,
          ...list.map((one) =>
            WORK_LOG_HEADER.map((name) =>
              name === "date"
                ? "2031-05-17"
                : String((one as Record<string, unknown>)[name] ?? "")
            )
          ),
        ]);
        const { entries } = await readWorkLog(text, "worklog.csv", "mm");
        deepEqual(
          entries.map(({ minutes, wets, stroke = "", note = "" }) => ({
            minutes,
            wets,
            stroke,
            note,
          })),
          list,
        );
      },
    ),
    { seed: 41, numRuns: 200 },
  );
  const piece = fc.record({
    piece: words.filter((text) => /^\p{L}+\d$/u.test(`${text}1`)),
    ground_radius: amount,
    focal_length: amount,
    method: words,
    note: words,
  });
  await fc.assert(
    fc.asyncProperty(
      fc.array(piece, { minLength: 1, maxLength: 6 }),
      async (list) => {
        const named = list.map((one) => ({
          ...one,
          piece: `disc ${one.piece}`,
        }));
        const text = csvText([
          FINISHED_HEADER,
          ...named.map((one) =>
            FINISHED_HEADER.map((name) =>
              String((one as Record<string, unknown>)[name] ?? "")
            )
          ),
        ]);
        const { pieces } = await readFinishedPieces(text, "f.csv", "mm");
        deepEqual(
          pieces.map((one) => ({
            piece: one.piece,
            ground_radius: one.groundRadius,
            focal_length: one.focalLength,
            method: one.method ?? "",
            note: one.note ?? "",
          })),
          named.map((one) => ({ ...one, piece: one.piece.trim() })),
        );
      },
    ),
    { seed: 43, numRuns: 200 },
  );
});
