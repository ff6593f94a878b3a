import { deepEqual } from "node:assert/strict";
import { join } from "node:path";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";

/** Codes of the warnings on a set whose zero moved by so many mm. */
async function codesFor(moved: number, step: number): Promise<string[]> {
  const folder = await Deno.makeTempDir({ prefix: "flat-" });
  try {
    await Deno.writeTextFile(
      join(folder, "piece.json"),
      JSON.stringify({
        name: "disc",
        form: "concave",
        diameter: "150 mm",
        target: { radius: "2400 mm" },
      }),
    );
    await Deno.writeTextFile(
      join(folder, "bench.json"),
      JSON.stringify({
        gauge: {
          unit: "mm",
          display_step: `${step} mm`,
          scale_uncertainty: "0.05 %",
        },
        rings: [{
          id: "30",
          radius: "30 mm",
          ball_radius: "3 mm",
          radius_uncertainty: "0.005 mm",
          ball_radius_uncertainty: "0.002 mm",
        }],
      }),
    );
    const set = (zeroing: number, look: number): string =>
      [["centre", 0.1877], ["flat", look]].map(([zone, reading]) =>
        `A,${zeroing},${zone},${reading}`
      ).join("\n");
    await Deno.writeTextFile(
      join(folder, "readings.csv"),
      `session,zeroing,zone,reading\n${set(1, moved)}\n${set(2, 0)}\n${
        set(3, step)
      }\n`,
    );
    const { problems } = await readPieceFolder(folder);
    return problems.filter(({ severity }) => severity === "warning")
      .map(({ code }) => code);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("readPieceFolder() takes a zero that moved for a knock by the gauge's hands, not by how fine its display is", async () => {
  for (const step of [0.0001, 0.0005, 0.001]) {
    deepEqual(await codesFor(0.012, step), [], `step ${step} mm`);
    deepEqual(await codesFor(-0.03, step), ["zero-jumped"], `step ${step} mm`);
  }
  // A coarse display hides more.
  deepEqual(await codesFor(0.12, 0.01), []);
  deepEqual(await codesFor(0.16, 0.01), ["zero-jumped"]);
});
