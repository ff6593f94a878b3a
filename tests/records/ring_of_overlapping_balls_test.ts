import { equal, match } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { RecordError } from "sagbook/records/record_error.ts";

async function faultOf(ring: string): Promise<string> {
  const folder = await Deno.makeTempDir();
  await Deno.writeTextFile(
    `${folder}/piece.json`,
    '{ "name": "x", "form": "concave", "diameter": "8 in" }',
  );
  await Deno.writeTextFile(
    `${folder}/bench.json`,
    `{ "gauge": { "unit": "mm", "display_step": "0.001 mm" }, "rings": [{ "id": "A", ${ring} }] }`,
  );
  try {
    await readPieceFolder(folder);
    return "";
  } catch (error) {
    if (!(error instanceof RecordError)) throw error;
    return error.problems.filter(({ severity }) => severity === "refused")
      .map(({ message, column }) => `${column}: ${message}`).join("\n");
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("readPieceFolder() refuses balls that would not fit side by side, and takes those that just do", async () => {
  equal(
    await faultOf('"radius": "2.5 in", "ball_diameter": "8 in"'),
    "rings.0.ball_diameter: balls of this size do not fit side by side: they are 203.2 mm across, and their centres 110 mm apart",
  );
  match(
    await faultOf(
      '"spacings": ["34 mm", "34 mm", "34 mm"], "spacings_measured": "centre to centre", "ball_radius": "17 mm"',
    ),
    /^rings\.0\.ball_radius: .* 34 mm across, and their centres 34 mm apart$/,
  );
  equal(
    await faultOf(
      '"spacings": ["34 mm", "34 mm", "34 mm"], "spacings_measured": "centre to centre", "ball_radius": "16.9 mm"',
    ),
    "",
  );
});
