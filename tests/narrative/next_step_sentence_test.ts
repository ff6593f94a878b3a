import { equal } from "node:assert/strict";
import { nextStepSentence } from "sagbook/narrative/next_step_sentence.ts";

Deno.test("nextStepSentence() says that the target lies within the doubt only where it does", () => {
  const said = (beyond: boolean) =>
    nextStepSentence(
      beyond ? { kind: "near target", beyond } : { kind: "near target" },
      undefined,
      6,
      3,
      6.84,
    ).replace(/\s/g, " ");
  equal(
    said(false),
    "Next: the target lies within the doubt of the radius (±6.8 mm), so it may be reached or not; go on if the next grades can still move it, or read more sets first.",
  );
  equal(
    said(true),
    "Next: the radius may be within the tolerance of the target or not, since its doubt (±6.8 mm) leaves that open; go on if the next grades can still move it, or read more sets first.",
  );
});
