import { deepEqual, equal, ok } from "node:assert/strict";
import type { Ring } from "sagbook/records/bench.ts";
import { radiusBudget } from "sagbook/uncertainty/radius_budget.ts";
import { radiusDifference } from "sagbook/uncertainty/radius_difference.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

Deno.test("radiusDifference() reproduces case C03: the difference shows with its common parts off, and hides without", () => {
  const data = JSON.parse(Deno.readTextFileSync(
    new URL("../cases/C03-common-errors.json", import.meta.url),
  ));
  const ring: Ring = {
    id: "A",
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(3),
      probeOffset: mm(0),
    },
    radiusUncertainty: mm(parseFloat(data.ring.u_r)),
    radiusUncertaintyAssumed: false,
    ballRadiusUncertainty: mm(0),
    expansion: 11.5e-6,
    foot: { kind: "unknown" },
  };
  const [centre, edge] = data.zones.map((
    { sag, u }: { sag: string; u: string },
  ) =>
    radiusBudget({
      form: "concave",
      ring,
      sag: {
        value: parseFloat(sag),
        own: parseFloat(u),
        dof: Infinity,
        common: { zero: parseFloat(data.zero.u) },
      },
    }).estimate
  );
  const found = radiusDifference(edge, centre)!;
  equal(found.difference.toFixed(4), "7.0607");
  equal(found.standardUncertainty.toFixed(4), "2.4964");
  equal((found.difference / found.standardUncertainty).toFixed(2), "2.83");
  // All as independent: 6.067 mm, and 1.16 of them.
  equal((found.asIfIndependent / 1.959964).toFixed(3), "6.067");
  ok(found.normalisedError > 1 && found.difference < found.asIfIndependent);
  deepEqual(found.shared, ["ring A radius", "zero"]);
});

Deno.test("radiusDifference() judges nothing without an uncertainty", () => {
  const exact = { value: 1, own: 0, dof: Infinity, common: {} };
  equal(radiusDifference(exact, exact), undefined);
});
