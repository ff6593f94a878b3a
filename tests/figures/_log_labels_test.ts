import { deepEqual } from "node:assert/strict";
import { clearLogLabels } from "../../lib/figures/_log_labels.ts";

Deno.test("clearLogLabels() leaves out labels that would touch, powers of ten last", () => {
  const ticks = [1, 2, 5, 10, 20, 50, 100];
  const shown = (height: number) => {
    const label = clearLogLabels(
      { domain: [1, 100], ticks, label: String },
      height,
      18,
    );
    return ticks.map(label).filter((text) => text !== "");
  };
  deepEqual(shown(400), ["1", "2", "5", "10", "20", "50", "100"]);
  // Of 100 px a decade has 50: 2 stands 15 px above 1, and 5 stands 15 below 10.
  deepEqual(shown(100), ["1", "10", "100"]);
  deepEqual(shown(30), ["1", "100"]);
});
