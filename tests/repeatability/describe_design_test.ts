import { deepEqual, equal, ok } from "node:assert/strict";
import { describeDesign } from "sagbook/repeatability/describe_design.ts";
import { groupReadings } from "sagbook/repeatability/group_readings.ts";
import type { SurfaceDesign } from "sagbook/repeatability/surface_design.ts";
import { readCase, readingsOf, type Row } from "./_readings.ts";

/** The zones of the usual set. */
const ZONES = ["centre", "50%", "edge"] as const;

/** Rows of a full crossing of what is listed. */
function cross(
  ...lists: readonly (readonly Partial<Row>[])[]
): Row[] {
  return lists.reduce<Row[]>(
    (rows, list) =>
      rows.flatMap((row) => list.map((more) => ({ ...row, ...more }))),
    [{}],
  );
}

const times = (count: number): Row[] =>
  Array.from({ length: count }, () => ({}));
const zeroings = (count: number): Row[] =>
  times(count).map((_, k) => ({ zeroing: k + 1 }));
const zones = ZONES.map((zone) => ({ zone }));

function design(rows: readonly Row[]): SurfaceDesign {
  const found = describeDesign(readingsOf(rows));
  equal(found.length, 1);
  return found[0];
}

Deno.test("describeDesign() finds a crossed, replicated, balanced study with everything estimable", () => {
  const found = design(
    cross(
      [{ operator: "A" }, { operator: "B" }, { operator: "C" }],
      zeroings(4),
      zones,
      times(2),
    ).map((row) => ({
      ...row,
      zeroing: row.zeroing! + 10 * "ABC".indexOf(row.operator!),
    })),
  );
  deepEqual(found.estimable, [
    "repeat",
    "zeroing",
    "operator",
    "zone × zeroing",
  ]);
  deepEqual(found.confounded, []);
  deepEqual(
    [found.leastRepeats, found.mostRepeats, found.replicated, found.balanced],
    [2, 2, true, true],
  );
  deepEqual(found.relations.find(({ first }) => first === "zeroing"), {
    first: "zeroing",
    second: "operator",
    relation: "nested",
  });
  deepEqual(found.dof, 72 - 3);
});

Deno.test("describeDesign() names one reading per zeroing and one zeroing per session as one figure (B04)", async () => {
  const { readings } = await readCase("B04-confounded");
  const [found] = describeDesign(readings);
  deepEqual(found.estimable, []);
  equal(found.confounded.length, 1);
  deepEqual(found.confounded[0].sources, ["repeat", "zeroing", "session"]);
  deepEqual(
    found.confounded[0].separatedBy.map(({ vary, within, least }) => ({
      vary,
      within,
      least,
    })),
    [
      { vary: "repeat", within: "zeroing", least: 2 },
      { vary: "zeroing", within: "session", least: 2 },
    ],
  );
  deepEqual(found.reusedLabels, ["1"]);
});

Deno.test("describeDesign() keeps zeroings of different sessions apart though their labels are the same (B05)", async () => {
  const { readings } = await readCase("B05-reused-labels");
  const [found] = describeDesign(readings);
  equal(found.factors.find(({ source }) => source === "zeroing")?.levels, 4);
  deepEqual(found.reusedLabels, ["1", "2"]);
  deepEqual(found.estimable, ["repeat", "zeroing", "session"]);
  deepEqual(found.absent.find(({ source }) => source === "diameter"), {
    source: "diameter",
    reason: "centre only",
  });
});

Deno.test("describeDesign() finds one diameter per zeroing separated by the centre, and confounded without it", () => {
  const rows = cross(
    [0, 1, 2, 3].map((k) => ({ zeroing: k, diameter: 45 * k })),
    zones,
  );
  const whole = design(rows);
  ok(
    whole.estimable.includes("zeroing") && whole.estimable.includes("diameter"),
  );
  deepEqual(whole.confounded.map(({ sources }) => sources), [
    ["repeat", "zone × zeroing"],
  ]);
  const noCentre = design(rows.filter(({ zone }) => zone !== "centre"));
  deepEqual(noCentre.confounded.map(({ sources }) => sources), [
    ["repeat", "zone × zeroing"],
    ["zeroing", "diameter"],
  ]);
  deepEqual(noCentre.confounded[1].separatedBy, [
    { vary: "diameter", within: "zeroing", least: 2, orReadCentre: true },
  ]);
});

Deno.test("describeDesign() names one zone, one operator per session and one reading per zeroing", () => {
  const oneZone = design(cross(zeroings(3), times(2)));
  deepEqual(oneZone.absent.find(({ source }) => source === "zone × zeroing"), {
    source: "zone × zeroing",
    reason: "one zone",
  });
  deepEqual(oneZone.estimable, ["repeat", "zeroing"]);
  const perSession = design(cross(
    [
      { session: "S1", operator: "A" },
      { session: "S2", operator: "B" },
      { session: "S3", operator: "C" },
    ],
    zeroings(3),
    times(2),
  ));
  deepEqual(perSession.confounded.map(({ sources }) => sources), [
    ["operator", "session"],
  ]);
  deepEqual(perSession.relations.map(({ relation }) => relation), [
    "matched",
    "nested",
    "nested",
  ]);
  const single = design(cross(zeroings(4)));
  deepEqual(single.confounded[0].sources, ["repeat", "zeroing"]);
  equal(single.replicated, false);
});

Deno.test("describeDesign() takes feet that turn with the diameter for what they are: one figure with the zeroing", () => {
  const rows = cross(
    [0, 1, 2].map((k) => ({ zeroing: k, diameter: 60 * k, foot: 60 * k })),
    zones,
    times(2),
  );
  deepEqual(design(rows).confounded.map(({ sources }) => sources), [
    ["zeroing", "rotation"],
  ]);
  const fixed = design(rows.map((row) => ({ ...row, foot: 0 })));
  deepEqual(fixed.confounded, []);
  deepEqual(
    fixed.absent.find(({ source }) => source === "rotation")?.reason,
    "one level",
  );
});

Deno.test("describeDesign() answers one zeroing, one reading and a missing zone without a fault", () => {
  const one = design([{}]);
  deepEqual([one.dof, one.estimable, one.confounded], [0, [], []]);
  const single = design(cross([{ zeroing: 1 }], zones, times(2)));
  deepEqual(single.estimable, ["repeat"]);
  deepEqual(
    single.absent.find(({ source }) => source === "zeroing")?.reason,
    "one level",
  );
  deepEqual(
    single.absent.find(({ source }) => source === "zone × zeroing")?.reason,
    "in the zones",
  );
  const gap = cross(zeroings(3), zones).filter(({ zeroing, zone }) =>
    !(zeroing === 2 && zone === "edge")
  );
  deepEqual(design(gap).missing, [{ zeroing: "S1 / 2", zone: "edge" }]);
  equal(design(gap).balanced, false);
  deepEqual(describeDesign([]), []);
});

Deno.test("describeDesign() gives each session its own surface where the work was worked in between", () => {
  const rows = cross(
    [{ session: "S1" }, { session: "S2" }],
    zeroings(2),
    zones,
    times(2),
  );
  const [found] = describeDesign(readingsOf(rows), { work: "worked" });
  equal(found.dof, 24 - 6);
  equal(found.absent[0].reason, "worked");
  deepEqual(found.estimable, ["repeat", "zeroing", "zone × zeroing"]);
});

Deno.test("describeDesign() advises readings that do separate: with them the sources are estimable", () => {
  // Each study followed as advised, one level further at a time.
  const studies: [Row[], Row[]][] = [
    [cross(zeroings(3)), cross(zeroings(3), times(2))],
    [
      cross([{ session: "S1" }, { session: "S2" }], times(2)),
      cross([{ session: "S1" }, { session: "S2" }], zeroings(2), times(2)),
    ],
    [
      cross(
        [0, 1, 2].map((k) => ({
          zeroing: k,
          diameter: 60 * k,
          zone: "edge" as const,
        })),
        times(2),
      ),
      cross(
        zeroings(3),
        [0, 60].map((diameter) => ({ diameter, zone: "edge" as const })),
        times(2),
      ),
    ],
    [
      cross(
        [{ session: "S1", operator: "A" }, { session: "S2", operator: "B" }],
        zeroings(2),
        times(2),
      ),
      cross([{ session: "S1" }, { session: "S2" }], [
        { operator: "A", zeroing: 1 },
        { operator: "A", zeroing: 2 },
        { operator: "B", zeroing: 3 },
        { operator: "B", zeroing: 4 },
      ], times(2)),
    ],
  ];
  for (const [before, after] of studies) {
    ok(design(before).confounded.length > 0);
    deepEqual(design(after).confounded, []);
  }
});

Deno.test("groupReadings() keeps rings and grades apart and leaves out groups without the work", () => {
  const readings = readingsOf([{}, {}, {}]);
  const groups = groupReadings([
    { ...readings[0], grade: "180" },
    { ...readings[1], grade: "320" },
    { ...readings[2], ring: "ring 80", on: "flat" },
  ]);
  deepEqual(groups.map(({ grade }) => grade), ["180", "320"]);
});
