import { equal } from "node:assert/strict";
import { closestName } from "sagbook/records/closest_name.ts";

Deno.test("closestName() finds the name that one slip of the hand turned into the typed one", () => {
  const known = ["reading", "zeroing", "zone", "zero_before"];
  const slips = [
    ["raeding", "reading"],
    ["zeroin", "zeroing"],
    ["zerooing", "zeroing"],
    ["Zero Before", "zero_before"],
    ["zoen", "zone"],
  ] as const;
  for (const [typed, meant] of slips) equal(closestName(typed, known), meant);
});

Deno.test("closestName() suggests nothing when more than a third differs, or the text is long", () => {
  equal(closestName("operator", ["reading", "zone"]), undefined);
  equal(closestName("zxyw", ["zone"]), undefined);
  equal(closestName("zone".repeat(16), ["zone".repeat(16)]), undefined);
});
