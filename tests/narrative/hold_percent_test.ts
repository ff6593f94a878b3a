import { deepEqual, equal } from "node:assert/strict";
import { holdPercent } from "sagbook/narrative/hold_percent.ts";

Deno.test("holdPercent() joins every number to its sign, and nothing else", () => {
  deepEqual(
    holdPercent(["5 % of 12.5 %", "a % sign", "5  %", "3\u00a0%", ""]),
    ["5\u00a0% of 12.5\u00a0%", "a % sign", "5  %", "3\u00a0%", ""],
  );
});

Deno.test("holdPercent() changes what it has held no further", () => {
  const once = holdPercent(["risk 5 % or less"]);
  deepEqual(holdPercent(once), once);
  equal(once[0].length, "risk 5 % or less".length);
});
