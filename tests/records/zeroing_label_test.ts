import { equal } from "node:assert/strict";
import { zeroingLabel } from "sagbook/records/zeroing_label.ts";

Deno.test("zeroingLabel() takes the session off, and only its own", () => {
  equal(zeroingLabel({ session: "S1", zeroing: "S1 / 2" }), "2");
  equal(zeroingLabel({ session: "S1", zeroing: "S1 / a / b" }), "a / b");
  equal(zeroingLabel({ session: "S1", zeroing: "S2 / 2" }), "S2 / 2");
});
