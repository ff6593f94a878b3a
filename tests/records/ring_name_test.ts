import { equal } from "node:assert/strict";
import { ringName, ringNameFirst } from "sagbook/records/ring_name.ts";

Deno.test("ringName() says ring once", () => {
  for (
    const [id, said] of [
      ["80", "ring 80"],
      ["ring 80", "ring 80"],
      ["Ring B", "Ring B"],
      ["spring", "ring spring"],
      ["the old brass ring", "the old brass ring"],
      ["bar 290", "bar 290"],
      ["barrel", "ring barrel"],
    ]
  ) equal(ringName(id), said);
});

Deno.test("ringNameFirst() begins a sentence and leaves the user's own name as it is", () => {
  equal(ringNameFirst("80"), "Ring 80");
  equal(ringNameFirst("spring"), "Ring spring");
  equal(ringNameFirst("brass ring"), "brass ring");
});
