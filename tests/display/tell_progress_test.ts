import { deepEqual, equal } from "node:assert/strict";
import { tellProgress } from "sagbook/display/tell_progress.ts";
import { RunOutputs } from "sagbook/notebook/_run_outputs.ts";
import type { KernelOutput } from "sagbook/protocol/kernel_output.ts";

Deno.test("tellProgress() does nothing outside a notebook", () => {
  equal(tellProgress("readings.csv 40 %"), undefined);
});

Deno.test("tellProgress() reaches whoever runs the notebook as one plain line, and is no output", () => {
  const outputs = new RunOutputs();
  const recorder = outputs.open(3);
  const told: [number, string][] = [];
  outputs.onWords = (index, words) => told.push([index, words]);
  const hear = (type: string, content: object) =>
    outputs.hear(
      { output_type: type, metadata: {}, ...content } as KernelOutput,
      3,
    );
  // As in a notebook; outside there is none, and nothing to put back.
  const notebook = Deno as unknown as { jupyter: object };
  notebook.jupyter = { broadcast: hear };
  tellProgress("readings.csv 40 %");
  tellProgress("a\x1b[2J\nb");
  tellProgress(7 as unknown as string);
  tellProgress("x".repeat(300));
  notebook.jupyter = {};
  deepEqual(told, [
    [3, "readings.csv 40 %"],
    [3, "a [2J b"],
    [3, "x".repeat(100)],
  ]);
  deepEqual(recorder.finish(), []);
});
