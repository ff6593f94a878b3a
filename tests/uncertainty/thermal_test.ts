import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { materialNamed } from "sagbook/uncertainty/material.ts";
import { thermalWarnings } from "sagbook/uncertainty/thermal_check.ts";
import {
  radiusReadLonger,
  radiusWarmedBy,
  type WarmPiece,
} from "sagbook/uncertainty/thermal_radius.ts";
import {
  type ConductingMaterial,
  radiusReadLongerAfter,
  settlingTimes,
  STILL_AIR,
  type Support,
} from "sagbook/uncertainty/thermal_settling.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { referenceFiles } from "./_reference_files.ts";

const borosilicate = materialNamed("borosilicate") as ConductingMaterial;
const piece: WarmPiece = {
  radius: mm(3000),
  form: "concave",
  thickness: mm(40),
  expansion: 3.3e-6,
};

for (const file of referenceFiles("thermal-")) {
  Deno.test(`materialNamed() and radiusWarmedBy() agree with ${file.name} (${file.source})`, () => {
    for (const row of file.data) {
      if ("material" in row) {
        const found = materialNamed(String(row.material))?.expansion ?? NaN;
        const wanted = Number(row[file.expected.field]);
        const allowed = file.tolerance.absolute_per_K[String(row.material)];
        ok(Math.abs(found - wanted) <= allowed, String(row.material));
        continue;
      }
      const wanted = Number(row[file.expected.field]);
      const found = radiusWarmedBy(
        mm(Number(row.R_mm)),
        Number(row.alpha_per_K),
        Number(row.dT_K),
      );
      ok(Math.abs(found / wanted - 1) <= file.tolerance.relative, `${found}`);
    }
  });
}

Deno.test("materialNamed() knows the usual names and no others", () => {
  equal(materialNamed("Float glass")?.name, "soda-lime glass");
  equal(materialNamed("FUSED QUARTZ")?.name, "fused silica");
  equal(materialNamed("tool steel")?.name, "steel");
  equal(materialNamed("aluminum")?.name, "aluminium");
  equal(materialNamed(""), undefined);
});

Deno.test("radiusReadLonger() has opposite signs on concave and convex work: 0.74 mm for 1 K", () => {
  equal(radiusReadLonger(piece, 1).toFixed(2), "0.74");
  equal(radiusReadLonger({ ...piece, form: "convex" }, 1).toFixed(2), "-0.74");
  equal(radiusReadLonger(piece, 0), 0);
  throws(() => radiusReadLonger({ ...piece, thickness: mm(0) }, 1), {
    name: "RangeError",
    message:
      "Cannot find what a gradient does as the thickness must be above 0 mm: current value is 0 mm",
  });
});

Deno.test("settlingTimes() gives 4 minutes, 17 minutes and about two hours", () => {
  const times = settlingTimes(borosilicate, mm(40), "insulating pad");
  equal(Math.round(times.leftToItself / 60), 4);
  equal(Math.round(times.oneFaceHeld / 60), 17);
  ok(Math.abs(times.drivenByAir / 3600 - 2) < 0.1);
  equal(times.governing, times.drivenByAir);
  const both = settlingTimes(borosilicate, mm(40), "small supports");
  equal(both.drivenByAir, times.drivenByAir / 2);
  // Twice the thickness: four times, four times, twice.
  const thick = settlingTimes(borosilicate, mm(80), "cold bench");
  ok(Math.abs(thick.leftToItself / times.leftToItself - 4) < 1e-12);
  ok(Math.abs(thick.drivenByAir / times.drivenByAir - 2) < 1e-12);
  equal(thick.governing, thick.oneFaceHeld);
});

Deno.test("radiusReadLongerAfter() gives -0.48 mm at 30 min on a pad and +0.78 mm for good on a cold bench", () => {
  const pad = radiusReadLongerAfter(piece, borosilicate, {
    support: "insulating pad",
    warmerBy: 5,
    after: 1800,
  });
  equal(pad.toFixed(2), "-0.48");
  const bench = radiusReadLongerAfter(piece, borosilicate, {
    support: "cold bench",
    warmerBy: 0,
    benchColderBy: 4,
    after: Infinity,
  });
  equal(bench.toFixed(2), "0.78");
  const convex = radiusReadLongerAfter(
    { ...piece, form: "convex" },
    borosilicate,
    { support: "cold bench", warmerBy: 0, benchColderBy: 4, after: Infinity },
  );
  equal(convex.toFixed(2), "-0.78");
});

/** The same slab by finite differences, 200 cells, for an independent route. */
function simulated(
  support: Support,
  warmerBy: number,
  benchColderBy: number,
  after: number,
): number {
  const cells = 200;
  const { conductivity, diffusivity } = borosilicate;
  const dz = piece.thickness / cells;
  const dt = 0.4 * dz * dz / diffusivity;
  const loss = STILL_AIR / 1000 * dz / conductivity;
  let now = new Float64Array(cells).fill(warmerBy);
  for (let time = 0; time < after; time += dt) {
    const next = new Float64Array(cells);
    for (let i = 0; i < cells; i++) {
      const below = i > 0
        ? now[i - 1] - now[i]
        : support === "cold bench"
        ? 2 * (-benchColderBy - now[0])
        : 0;
      // Half a cell of glass and the air film in series.
      const above = i < cells - 1
        ? now[i + 1] - now[i]
        : -now[i] * loss / (1 + loss / 2);
      next[i] = now[i] + 0.4 * (above + below);
    }
    now = next;
  }
  let moment = 0;
  now.forEach((kelvin, i) => {
    moment += kelvin * ((i + 0.5) / cells - 0.5) / cells;
  });
  return radiusReadLonger(piece, 12 * moment);
}

Deno.test("radiusReadLongerAfter() agrees with a simulated slab at every time", () => {
  for (const support of ["insulating pad", "cold bench"] as const) {
    for (const after of [30, 120, 600, 1800]) {
      const [warmerBy, benchColderBy] = [5, support === "cold bench" ? 3 : 0];
      const found = radiusReadLongerAfter(piece, borosilicate, {
        support,
        warmerBy,
        benchColderBy,
        after,
      });
      const wanted = simulated(support, warmerBy, benchColderBy, after);
      ok(
        Math.abs(found - wanted) < 0.004 * (1 + Math.abs(wanted)),
        `${support} ${after}: ${found}, ${wanted}`,
      );
    }
  }
});

Deno.test("radiusReadLongerAfter() starts and ends at 0, and stays there between equal faces", () => {
  for (const after of [0, Infinity]) {
    for (const support of ["insulating pad", "cold bench"] as const) {
      equal(
        Math.abs(radiusReadLongerAfter(piece, borosilicate, {
          support,
          warmerBy: 5,
          after,
        })),
        0,
      );
    }
  }
  equal(
    radiusReadLongerAfter(piece, borosilicate, {
      support: "small supports",
      warmerBy: 5,
      after: 60,
    }),
    0,
  );
});

const at = (
  session: string,
  takenAt: string,
  air?: number,
  bench?: number,
  work?: number,
) => ({
  session,
  takenAt,
  ...(air === undefined ? {} : { temperatureAir: air }),
  ...(bench === undefined ? {} : { temperatureBench: bench }),
  ...(work === undefined ? {} : { temperatureWork: work }),
});

Deno.test("thermalWarnings() warns of bench and air apart with the figure it would make", () => {
  const context = {
    piece,
    glass: borosilicate,
    support: "cold bench",
    allowed: mm(0.2),
  } as const;
  const readings = [
    at("S1", "2031-05-02T10:00", 20, 19.5),
    at("S2", "2031-05-03T10:00", 20, 16),
  ];
  const { warnings } = thermalWarnings(readings, context);
  equal(warnings.length, 1);
  const [warning] = warnings;
  ok(warning.kind === "bench and air apart");
  equal(warning.kelvin, 4);
  equal(warning.radiusReadsLonger.toFixed(2), "0.78");
  deepEqual(warning.sessions, ["S2"]);
});

Deno.test("thermalWarnings() warns of readings too soon after work, and says when they would do", () => {
  const context = {
    piece,
    glass: borosilicate,
    workEndedAt: ["2031-05-02T09:30", "2031-05-01T12:00"],
    allowed: mm(0.2),
  };
  const readings = [
    at("S1", "2031-05-02T10:20"),
    at("S1", "2031-05-02T10:00"),
    at("S2", "2031-05-02T16:00"),
  ];
  const { warnings, times } = thermalWarnings(readings, context);
  equal(warnings.length, 1);
  const [warning] = warnings;
  ok(warning.kind === "too soon after work");
  equal(warning.session, "S1");
  equal(warning.minutes, 30);
  equal(warning.warmthAssumed, true);
  equal(warning.radiusReadsLonger.toFixed(2), "-0.48");
  const left = radiusReadLongerAfter(piece, borosilicate, {
    support: "insulating pad",
    warmerBy: 5,
    after: warning.minutesNeeded * 60,
  });
  ok(Math.abs(Math.abs(left) - 0.2) < 1e-6);
  equal(times.governing, times.drivenByAir);
  const once = { ...context, workEndedAt: ["2031-05-02T09:30"] };
  equal(thermalWarnings(readings, once).warnings.length, 1);
  const later = { ...context, workEndedAt: ["2031-05-02T18:00"] };
  deepEqual(thermalWarnings(readings, later).warnings, []);
});

Deno.test("thermalWarnings() warns of work apart from the air, and keeps silent without data", () => {
  const context = { piece, glass: borosilicate, allowed: mm(0.2) };
  const { warnings } = thermalWarnings(
    [at("S1", "2031-05-02T10:00", 20, undefined, 24)],
    context,
  );
  equal(warnings.length, 1);
  equal(warnings[0].kind, "work and air apart");
  ok(warnings[0].radiusReadsLonger < -0.3);
  deepEqual(
    thermalWarnings([at("S1", "2031-05-02T10:00")], context).warnings,
    [],
  );
  deepEqual(thermalWarnings([{ session: "S" }], context).warnings, []);
  throws(() => thermalWarnings([], { ...context, allowed: mm(0) }), {
    name: "RangeError",
    message:
      "Cannot judge heat as the allowed change of radius must be above 0 mm: current value is 0 mm",
  });
});
