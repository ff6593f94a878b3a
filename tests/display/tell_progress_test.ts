import { deepEqual } from "node:assert/strict";
import { PROGRESS_TYPE, tellProgress } from "sagbook/display/tell_progress.ts";
import { RunOutputs } from "sagbook/notebook/_run_outputs.ts";

Deno.test("tellProgress() does nothing outside a notebook", () => {
  tellProgress("readings.csv 40 %");
});

Deno.test("tellProgress() reaches whoever runs the notebook as one plain line, and is no output", () => {
  const outputs = new RunOutputs();
  const recorder = outputs.open(3);
  const told: [number, string][] = [];
  outputs.onWords = (index, words) => told.push([index, words]);
  const update = (words: unknown) =>
    outputs.hear({
      output_type: "update_display_data",
      data: { [PROGRESS_TYPE]: { words } },
      metadata: {},
      transient: { display_id: "sagbook progress" },
    }, 3);
  update("readings.csv 40 %");
  update("a\x1b[2J\nb");
  update({ words: 7 });
  update("x".repeat(300));
  deepEqual(told, [
    [3, "readings.csv 40 %"],
    [3, "a [2J b"],
    [3, "x".repeat(100)],
  ]);
  deepEqual(recorder.finish(), []);
});
