import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import {
  openPlan,
  type PlanReport,
  planReport,
  ringRecordsTable,
  ringSentences,
  showRingWords,
  surfaceSentences,
} from "sagbook/narrative/mod.ts";
import type { Bench, Ring } from "sagbook/records/bench.ts";
import type { RingRecord } from "sagbook/records/ring_record.ts";
import { ringsOnRecord } from "sagbook/uncertainty/rings_on_record.ts";
import { ringFit } from "sagbook/uncertainty/ring_fit.ts";
import type { SurfaceForm } from "sagbook/geometry/feet.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { BENCH, PIECE, withFolder } from "../records/_bench_of_cases.ts";
import { bench, piece } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const TODAY = "2031-05-17";

const RING: Ring = { ...bench().rings[0], id: "A" };
const EMPTY: RingRecord = { surfaces: [], earlier: [] };
const plate = (
  id: string,
  form: SurfaceForm,
  radius: number,
  sags: readonly number[] = [0, 2e-4],
  ball = 3,
) => {
  const feet = { circleRadius: mm(60), ballRadius: mm(ball) };
  const sag = sagFromRadius(mm(radius), feet, form);
  return {
    id,
    form,
    radius: mm(radius),
    radiusUncertainty: mm(0.05),
    sags: sags.map((off) => mm(sag + off)),
  };
};

/** Everything said of a bench with these rings. */
function said(rings: readonly Ring[], changes: Partial<Bench> = {}): string {
  const records = ringsOnRecord({ ...bench(), ...changes, rings }, {
    today: TODAY,
  });
  return plain(ringSentences(records, 2520, "mm").join("\n"));
}
const withRecord = (record: Partial<RingRecord>, more: Partial<Ring> = {}) =>
  said([{ ...RING, ...more, record: { ...EMPTY, ...record } }]);

Deno.test("openPlan() calibrates a ring by the caliper figures of a user's file, and asks what was spanned (case G09)", async () => {
  const bytes = await Deno.readFile(
    new URL("../cases/G09-foot-spacing.csv", import.meta.url),
  );
  const ring = { id: "A", ball_radius: "3 mm", calibration: {} };
  const words = async (ring: Record<string, unknown>) =>
    await withFolder(
      { bench: { ...BENCH, rings: [ring] }, files: { "feet.csv": bytes } },
      async (path) => {
        const { ringWords } = await openPlan(path, {
          studies: 20,
          today: TODAY,
        });
        return plain(ringWords.join("\n"));
      },
    );
  const own = await words({ ...ring, spacings: "feet.csv" });
  match(
    own,
    /A: the caliper gives a foot circle of 60\.010 ± 0\.013 mm radius; that is the radius used\./,
  );
  match(
    own,
    /nothing says what the caliper spanned; centre to centre was taken\. Over the outsides the same figures make it 56\.5\d\d mm\. Which was it\? Write spacings_measured\./,
  );
  match(own, /caliper's uncertainty is not stated; 0\.020 mm .* was assumed/);
  match(
    own,
    /write its radius as 60\.0104 mm and radius_uncertainty as 0\.0067 mm \(standard\)/,
  );
  match(
    own,
    /no uncertainty of its radius is stated; 0\.050 mm \(standard\) was taken and is marked as assumed/,
  );
  const kept = {
    ...ring,
    radius_uncertainty: "0.02 mm",
    calibration: {
      spacings: "feet.csv",
      spacings_measured: "centre to centre",
    },
  };
  const spacing = await words({ ...kept, radius: "103.923 mm" });
  match(
    spacing,
    /√3 times what was measured: is that the distance between two feet, taken for the radius of their circle\? R comes out three times too long/,
  );
  const diameter = await words({ ...kept, radius: "120 mm" });
  match(
    diameter,
    /twice what was measured: is that the diameter, taken for the radius\? R comes out four times too long/,
  );
  match(
    await words({ ...kept, radius: "60 mm" }),
    /the bench file states 60\.000 mm, which agrees within both uncertainties\./,
  );
  equal(PIECE.form, "concave");
});

Deno.test("ringSentences() says what a ring that differs does to R, and what to write", () => {
  const figure = mm(60.2 * Math.sqrt(3));
  const text = withRecord({
    spacings: {
      figures: [figure, figure, figure],
      over: "outsides",
      overStated: true,
      caliper: {
        id: "C",
        standardUncertainty: mm(0.005),
        assumed: false,
        scaleUncertainty: 0,
      },
    },
  }, {
    shape: {
      kind: "balls",
      circleRadius: mm(56.8),
      ballRadius: mm(3),
      probeOffset: mm(0),
    },
  });
  // 60.2 less 6/√3 is 56.736: stated 0.064 too large, 2 · 0.064 / 56.7 of R.
  match(text, /from figures over the outsides less one ball diameter/);
  match(
    text,
    /differs by more than both uncertainties: R comes out 5\.7 mm too long with a foot circle like that/,
  );
  match(text, /to use it, write its radius as 56\.73\d\d mm/);
});

Deno.test("ringSentences() says that the ball stays the micrometer's, and when it is freed", () => {
  const surfaces = [
    plate("P1", "concave", 2000),
    plate("P2", "convex", 300),
  ];
  const held = withRecord({ surfaces });
  match(held, /2 known surfaces give a foot circle of 60\.00\d+ ± .* radius\./);
  match(
    held,
    /the ball radius is the micrometer's \(standard uncertainty 0\.0010 mm\): the surfaces alone would know it to 0\.\d+ mm only/,
  );
  const freed = withRecord({ surfaces }, { ballRadiusUncertainty: mm(1) });
  match(
    freed,
    /know the ball better than the micrometer does, so it was fitted along: ball radius [23]\.\d+ mm/,
  );
  const one = withRecord({ surfaces: surfaces.slice(0, 1) });
  match(one, /one surface cannot tell ball from circle/);
  const edge = withRecord({
    surfaces: [plate("P1", "concave", 2000, [0, 0], 0)],
  }, {
    shape: { kind: "edge", innerRadius: mm(59), outerRadius: mm(60) },
  });
  match(edge, /an? outer edge of 60\.00/);
  ok(!/micrometer/.test(edge));
});

Deno.test("ringSentences() names a plate of the wrong form, plates that disagree, and a wrong ball", () => {
  const turned = { ...plate("P1", "convex", 2000), form: "concave" as const };
  const wrong = withRecord({ surfaces: [turned] });
  match(
    wrong,
    /P1 would fit this ring if it curved the other way \(60\.003 mm\): is its form written the wrong way round\?/,
  );
  // 0.2 µm of the second reading is 3 µm of radius; nothing is to be copied.
  ok(!/to use it/.test(wrong));
  const apart = [
    plate("P1", "concave", 2000, [-1e-4, 1e-4]),
    plate("P2", "concave", 1500, [0.02, 0.0202]),
  ];
  match(
    withRecord({ surfaces: apart }),
    /the surfaces do not agree with one circle \(chance below 0\.1 %\); P\d is farthest off/,
  );
  const large = [
    plate("P1", "concave", 300, [0, 1e-5], 4),
    plate("P2", "convex", 300, [0, 1e-5], 4),
  ];
  match(withRecord({ surfaces: large }), /contradicts the micrometer/);
});

Deno.test("surfaceSentences() says whose scatter was used", () => {
  const once = [plate("P1", "concave", 2000, [0])];
  const scatter = (repeatability?: { standardDeviation: number }) => {
    const [{ sizes: [{ size, bySurfaces }] }] = ringsOnRecord(
      {
        ...bench(),
        rings: [{ ...RING, record: { ...EMPTY, surfaces: once } }],
      },
      { today: TODAY, ...(repeatability ? { repeatability } : {}) },
    );
    return surfaceSentences(size, bySurfaces!, "mm")[0];
  };
  match(scatter(), /a scatter of one display step assumed/);
  match(
    scatter({ standardDeviation: 0.002 }),
    /the scatter the gauge has elsewhere/,
  );
});

Deno.test("ringSentences() says when a calibration is due, overdue, undated, and changed", () => {
  const earlier = [
    { on: "2028-05-02", radius: mm(60.1), radiusUncertainty: mm(0.01) },
  ];
  const overdue = withRecord({ earlier }, { calibratedOn: "2030-05-02" });
  match(
    overdue,
    /calibrated on 2030-05-02; the next was due on 2031-05-02, which has passed \(12 months assumed/,
  );
  match(
    overdue,
    /since the calibration before it is 0\.100 ± 0\.044 mm smaller, more than its uncertainty covers: look for wear/,
  );
  const due = withRecord({ everyMonths: 24 }, { calibratedOn: "2030-05-02" });
  equal(due, "A: calibrated on 2030-05-02; the next is due on 2032-05-02.");
  const undated = withRecord({ surfaces: [plate("P1", "concave", 2000)] });
  match(
    undated,
    /no date, so nobody knows when the next is due: write calibrated_on/,
  );
  const steps = [60.1, 60.066, 60.033].map((radius, k) => ({
    on: `202${k + 6}-05-02`,
    radius: mm(radius),
    radiusUncertainty: mm(0.012),
  }));
  match(
    withRecord({ earlier: steps }, {
      calibratedOn: "2030-05-02",
      radiusUncertainty: mm(0.012),
    }),
    /since the first of 4 calibrations it is 0\.100 ± 0\.033 mm smaller: it creeps/,
  );
});

Deno.test("ringSentences() compares a duplicate with its twin", () => {
  const twins = (radius: number) =>
    said([
      { ...RING, record: { ...EMPTY, twin: "B" } },
      {
        ...RING,
        id: "B",
        shape: { ...RING.shape, circleRadius: mm(radius) } as Ring["shape"],
      },
    ]);
  match(
    twins(60.01),
    /against its twin B it is 0\.010 ± 0\.055 mm smaller; they agree, .* \(by what the bench file states, not by measurements\)/,
  );
  match(
    twins(60.3),
    /they do not agree: changing one for the other moves R by 1\.0 % of R/,
  );
});

Deno.test("ringRecordsTable() says where each ring stands, marks what is assumed, and leaves out empty columns", async () => {
  const rings = [
    { ...RING, radiusUncertaintyAssumed: true },
    {
      ...RING,
      id: "B",
      shape: { ...RING.shape, circleRadius: mm(120) } as Ring["shape"],
    },
  ];
  const flat = { id: "F", size: mm(150) };
  const of = { ...bench(), rings, flat };
  const fits = rings.map((ring) => ({
    ring: ring.id,
    fit: ringFit(ring, piece(), mm(2520), flat),
  }));
  const records = ringsOnRecord(of, { today: TODAY });
  const shown = await ringRecordsTable(rings, records, fits, "mm")
    [jupyterDisplay]();
  const text = plain(String(shown["text/plain"]));
  match(text, /A +60\.000 mm +0\.020 mm, assumed +work and flat/);
  match(
    text,
    /B +120\.000 mm .* not the work \(needs 2\d\d mm\), not the flat \(needs 240 mm\)/,
  );
  ok(!/due again|by caliper/.test(text));
});

Deno.test("showRingWords() puts each ring's sentences under its name, and shows nothing for rings without any", async () => {
  const two = {
    ringWords: ["A: it is due.", "A2: it is not."],
    records: [{ ring: "A" }, { ring: "A2" }],
  } as unknown as PlanReport;
  const shown = await showRingWords(two)![jupyterDisplay]();
  equal(
    shown["text/html"],
    "<h3>A</h3><ul><li>It is due.</li></ul><h3>A2</h3><ul><li>It is not.</li></ul>",
  );
  equal(showRingWords({ ...two, ringWords: [] }), undefined);
});

Deno.test("planReport() puts a ring that its calibrations contradict into the answer", () => {
  const figure = mm(60 * Math.sqrt(3));
  const record: RingRecord = {
    ...EMPTY,
    spacings: {
      figures: [figure, figure, figure],
      over: "centres",
      overStated: true,
      caliper: {
        id: "C",
        standardUncertainty: mm(0.01),
        assumed: false,
        scaleUncertainty: 0,
      },
    },
  };
  const answer = (circle: number) =>
    planReport({
      path: "folder",
      piece: piece(),
      bench: {
        ...bench(),
        rings: [{
          ...RING,
          record,
          shape: { ...RING.shape, circleRadius: mm(circle) } as Ring["shape"],
        }],
      },
      readings: [],
      files: [],
      problems: [],
      lines: { read: 0, used: 0, reported: 0 },
    }, { studies: 20, today: TODAY }).answer;
  match(
    answer(61).join(" "),
    /Look at ring A first: its calibrations say otherwise/,
  );
  deepEqual(answer(60).filter((one) => /Look at/.test(one)), []);
});
