import { deepEqual, match, ok } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";

const PIECE = {
  name: "invented",
  form: "concave",
  diameter: "250 mm",
  bevel: "1 mm",
  target: { radius: "3000 mm" },
};
const BENCH = {
  gauge: {
    id: "g",
    shows: "sag",
    unit: "mm",
    display_step: { mm: "0.001 mm" },
  },
  rings: [{ id: "A", feet: "balls", radius: "50 mm", ball_radius: "5 mm" }],
};

async function problemsOf(readings: string) {
  const folder = await Deno.makeTempDir({ prefix: "far-" });
  await Deno.writeTextFile(`${folder}/piece.json`, JSON.stringify(PIECE));
  await Deno.writeTextFile(`${folder}/bench.json`, JSON.stringify(BENCH));
  await Deno.writeTextFile(`${folder}/readings.csv`, readings);
  const found = await readPieceFolder(folder);
  await Deno.remove(folder, { recursive: true });
  return found;
}

Deno.test("readPieceFolder() warns of a slipped decimal point with its line and factor", async () => {
  const rows = ["0.417", "0.416", "417", "0.418"].map((sag, k) =>
    `S1,${k + 1},centre,${sag}`
  );
  const { problems, lines } = await problemsOf(
    `session,zeroing,zone,reading\n${rows.join("\n")}\n`,
  );
  const warning = problems.find(({ code }) => code === "far-off-reading");
  ok(warning);
  match(
    warning.message,
    /^1 of 4 readings of session S1 lies far from its others \(0\.417 mm\): 417 mm is about 1000 times larger, .* Without it the mean sag is 0\.417 mm/,
  );
  deepEqual([warning.line, lines.used], [4, 4]);
});

Deno.test("readPieceFolder() refuses a tidy file without its header, and does not take a reading for a place", async () => {
  const { problems, readings } = await problemsOf(
    "S1,1,centre,0.417\nS1,1,50%,0.416\nS1,2,centre,0.418\n",
  );
  deepEqual(readings.length, 0);
  ok(problems.some(({ severity }) => severity === "refused"));
});
