import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { grainSize, MICROGRITS } from "sagbook/fabrication/microgrits.ts";
import {
  pitAllowance,
  pitsState,
  removalByThickness,
  removalByWork,
} from "sagbook/fabrication/removal.ts";
import reference from "../references/abrasive-microgrits.json" with {
  type: "json",
};

const sure = (value: number, own = 0) => ({
  value,
  own,
  dof: Infinity,
  common: {},
});

Deno.test("MICROGRITS is the reference table, from memory as that is, and falls", () => {
  equal(reference.provenance, "from memory");
  deepEqual(
    MICROGRITS.map(({ grit, size, tolerance }) => ({
      grit,
      ds50_um: Number((1000 * size).toFixed(6)),
      tolerance_um: Number((1000 * tolerance).toFixed(6)),
    })),
    reference.data,
  );
  for (let i = 1; i < MICROGRITS.length; i++) {
    ok(MICROGRITS[i].size < MICROGRITS[i - 1].size);
  }
});

Deno.test("grainSize() takes a size in the name, looks F grits up, and guesses nothing", () => {
  deepEqual(grainSize("9 µm alumina"), {
    kind: "size",
    size: 0.009,
    from: "the name",
  });
  deepEqual(grainSize("12,5 micron"), {
    kind: "size",
    size: 0.0125,
    from: "the name",
  });
  deepEqual(grainSize("silicon carbide f 400"), {
    kind: "size",
    size: 0.0173,
    from: "the table",
  });
  const unknown = [
    ["P320", "paper grit"],
    ["80", "number alone"],
    ["F80", "not in the table"],
    ["rouge", "no grit"],
  ] as const;
  for (const [grade, why] of unknown) {
    deepEqual(grainSize(grade), { kind: "unknown", why });
  }
});

Deno.test("pitAllowance() is one to one and a half grains, or the user's own", () => {
  const { low, high, from } = pitAllowance(0.0292);
  equal(low, 0.0292);
  equal(high.toFixed(4), "0.0438");
  equal(from, "common practice");
  deepEqual(pitAllowance(0.03, 2), {
    low: 0.06,
    high: 0.06,
    from: "the user",
  });
  throws(() => pitAllowance(0), {
    name: "RangeError",
    message:
      "Cannot reckon pits as the grain size must be above 0 and finite: current value is 0",
  });
  throws(() => pitAllowance(0.03, -1), {
    name: "RangeError",
    message:
      "Cannot reckon pits as the factor must be above 0 and finite: current value is -1",
  });
});

Deno.test("removalByThickness() keeps own scatter and drops what both readings share", () => {
  const read = (value: number) => ({
    ...sure(value, 0.003),
    common: { caliper: 0.02 },
  });
  const taken = removalByThickness(read(40.12), read(40.07));
  equal(taken.value.toFixed(3), "0.050");
  equal(taken.own.toFixed(6), (0.003 * Math.SQRT2).toFixed(6));
  deepEqual(taken.common, {});
});

Deno.test("removalByWork() scales the shop's own rate, and refuses work below 0", () => {
  const taken = removalByWork(10, { ...sure(0.004, 0.0005), dof: 6 });
  equal(taken.value, 0.04);
  equal(taken.own, 0.005);
  equal(taken.dof, 6);
  throws(() => removalByWork(-1, sure(0.004)), {
    name: "RangeError",
    message:
      "Cannot reckon removal as the work must be 0 or more and finite: current value is -1",
  });
});

Deno.test("pitsState() weighs removal by its interval and never speaks for the loupe", () => {
  const wanted = pitAllowance(0.03);
  equal(pitsState(wanted, sure(0.06, 0.005), undefined).removal, "enough");
  equal(pitsState(wanted, sure(0.01, 0.005), undefined).removal, "not enough");
  equal(pitsState(wanted, sure(0.04, 0.005), undefined).removal, "cannot tell");
  equal(pitsState(wanted, undefined, "none").removal, "cannot tell");
  const seen = pitsState(wanted, sure(0.06, 0.001), "edge");
  equal(seen.loupe, "edge");
  equal(pitsState(wanted, sure(0.06), undefined).loupe, undefined);
});
