import { jupyterDisplay } from "../display/bundle.ts";
import {
  exerciseKey,
  type KeyEntry,
  type KeyPart,
  reportVerdict,
} from "../narrative/exercise_key.ts";
import type { Cell, JsonObject } from "../notebook/document.ts";
import { wordsIn } from "../narrative/glossary.ts";
import { exportHtml } from "../notebook/export_html.ts";
import { VERSION } from "../version.ts";

/** The folder that holds the key, apart from the students' folders. */
export const KEY_FOLDER = "key-for-the-teacher";

async function cellOf(part: KeyPart, k: number): Promise<Cell> {
  const base = { id: `part-${k}`, metadata: { tags: ["remove-input"] } };
  if ("markdown" in part) {
    return { ...base, cell_type: "markdown", source: part.markdown };
  }
  const bundle = await part.table[jupyterDisplay]();
  return {
    ...base,
    cell_type: "code",
    source: "",
    execution_count: null,
    outputs: [{
      output_type: "display_data",
      data: { "text/html": String(bundle["text/html"]) },
      metadata: {},
    }],
  };
}

/** The key as data, lengths in mm. */
function keyJson(entries: readonly KeyEntry[], seed: number): JsonObject {
  return {
    invented: true,
    seed,
    unit: "mm",
    students: entries.map((entry) => {
      const { exercise, stated, smallest } = entry;
      const { hidden, gauge, disc } = exercise;
      return {
        folder: exercise.name,
        hidden: { ...hidden },
        vertex_radius: exercise.trueRadius,
        gauge: {
          true_circle_radius: gauge.trueRadius,
          display_step: gauge.step,
          standard_deviations: {
            zeroing: gauge.scatter.zeroing,
            repeat: gauge.scatter.repeat,
            diameter: gauge.scatter.diameter,
          },
          drift_per_reading: gauge.scatter.driftPerReading ?? 0,
        },
        sag_tolerance: disc.sagTolerance,
        true_difference_of_zones: Number(stated.zones.toPrecision(6)),
        true_difference_of_ends: Number(stated.ends.toPrecision(6)),
        right_verdict: stated.right,
        chances: { ...stated.chances },
        found_with_80_percent: smallest === undefined ? null : { ...smallest },
        report_verdict: reportVerdict(entry),
      };
    }),
  };
}

/** The files of the key by name: a page and the same as data. */
export async function keyFiles(
  entries: readonly KeyEntry[],
  seed: number,
): Promise<ReadonlyMap<string, string>> {
  const cells = await Promise.all(exerciseKey(entries, seed).map(cellOf));
  const page = await exportHtml({ metadata: {}, cells }, {
    title: "Key to the class exercises",
    subtitle: "For the teacher alone. Invented data.",
    footer: `Made by sagbook ${VERSION}.`,
    words: wordsIn,
  });
  const data = `${JSON.stringify(keyJson(entries, seed), null, 2)}\n`;
  return new Map([["key.html", page], ["key.json", data]]);
}
