import { equal, match, ok } from "node:assert/strict";
import {
  curvatureSentence,
  drawnSentence,
  type PlanReport,
  planReport,
  writeChance,
} from "sagbook/narrative/mod.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { bench, piece, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

/** A report on sags in µm at the centre, with a ring that is known exactly. */
function report(sags: readonly number[]): PlanReport {
  const known = bench();
  const readings = session(sags.map((sag) => [sag]));
  return planReport(
    {
      path: "folder",
      piece: piece({ target: undefined }),
      bench: {
        ...known,
        rings: known.rings.map((ring) => ({
          ...ring,
          radiusUncertainty: mm(0),
          ballRadiusUncertainty: mm(0),
        })),
      },
      readings,
      files: [],
      problems: [],
      lines: { read: sags.length, used: sags.length, reported: 0 },
    },
    { studies: 20, today: "2031-05-17" },
  );
}

/** 100 zeroings with a mean and a standard error as given, in µm. */
const scattered = (mean: number, error: number): number[] => {
  const size = error * Math.sqrt(99);
  return Array.from({ length: 100 }, (_, k) => mean + (k % 2 ? size : -size));
};

Deno.test("planReport() inverts the interval of curvature and gives no mean where R has heavy tails (case C02)", () => {
  const text = JSON.parse(Deno.readTextFileSync(
    new URL("../cases/C02-heavy-tail.json", import.meta.url),
  ));
  const [value, u] = [text.sag.value, text.sag.u].map(parseFloat);
  const { answer, reasons, distribution } = report(
    scattered(1000 * value, 1000 * u),
  );
  const said = plain(answer[0]);
  // Normal quantiles give 100901 to 833281 mm; 99 degrees of freedom widen it.
  match(said, /^The radius is 180 000 mm \(100 000 mm to 8[3-9]0 000 mm\)/);
  match(said, /with a chance of 0\.[67]\d? % that it curves the other way/);
  const drawn = plain(reasons[0]);
  match(
    drawn,
    /gives 95 % between 100 000 mm and 8[3-9]0 000 mm, found in curvature and turned round/,
  );
  match(
    drawn,
    /in 0\.[67]\d? % of them, which are kept, the surface curves the other way/,
  );
  match(
    drawn,
    /no mean and no standard deviation that would settle, and none is given/,
  );
  ok(!/±/.test(said + drawn));
  equal(distribution?.mean, undefined);
  equal(plain(drawnSentence(distribution!, "mm")), drawn);
});

Deno.test("planReport() gives curvature with its interval and a least |R| for work that may be flat", () => {
  const { answer, reasons, budget } = report(scattered(2, 4));
  // 2 s / r²: 2 µm ± 1.984 · 4 µm over 60 mm.
  match(
    plain(answer[0]),
    /^The work may be flat: its curvature 1\/R is 0\.0011 per metre, with 95 % between −0\.0033 and 0\.0055 \(counted positive for concave\), so \|R\| is at least 180 000 mm\./,
  );
  match(plain(reasons[0]), /leaves a flat among the possible surfaces/);
  equal(budget?.shape, "nearly flat");
  match(plain(curvatureSentence(budget!, "in")), /per foot/);
});

Deno.test("planReport() says that work curves the other way, and does not say that nothing was read", () => {
  const { answer } = report(scattered(-50, 4));
  match(
    answer[0],
    /^The work curves the other way than concave: .*Look at the form/,
  );
});

Deno.test("writeChance() never writes a chance of nothing", () => {
  equal(writeChance(0.5), "50 %");
  equal(writeChance(1e-9), "less than 0.001 %");
});
