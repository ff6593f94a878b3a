import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { gradesTimelineFigure } from "sagbook/figures/grades_timeline_figure.ts";
import { textsOf } from "./_picture.ts";

const stretches = [
  { grade: "120", from: "2025-03-09", minutes: 60 },
  { grade: "80", from: "2025-03-01", to: "2025-03-03", minutes: 100 },
  { grade: "80", from: "2025-03-05", minutes: 20 },
];

Deno.test("gradesTimelineFigure() puts the grades in the order they were first used and adds their minutes", async () => {
  const figure = await gradesTimelineFigure({ stretches });
  const rows = textsOf(figure).filter((text) => ["80", "120"].includes(text));
  deepEqual(rows, ["80", "120"]);
  ok(
    textsOf(figure).includes("120 minutes") &&
      textsOf(figure).includes("60 minutes"),
  );
  match(
    figure.description,
    /80: 1 Mar 2025 to 5 Mar 2025, 120 minutes; 120: 9 Mar 2025, 60 minutes/,
  );
});

Deno.test("gradesTimelineFigure() draws a date as the whole day: three days are three times as long as one", async () => {
  const { svg } = await gradesTimelineFigure({ stretches });
  const widths = [...svg.matchAll(/<rect height="22" width="([\d.]+)"/g)].map((
    m,
  ) => Number(m[1]));
  equal(widths.length, 3);
  const [, long, short] = widths;
  ok(Math.abs(long / short - 3) < 0.05, `${widths}`);
});

Deno.test("gradesTimelineFigure() refuses work that ends before it begins, and a date in another style", async () => {
  await rejects(
    gradesTimelineFigure({
      stretches: [{ grade: "80", from: "2025-03-02", to: "2025-03-01" }],
    }),
    {
      name: "RangeError",
      message:
        "Cannot draw the timeline as work with 80 must not end before it begins: current value is 2025-03-02 to 2025-03-01",
    },
  );
  await rejects(
    gradesTimelineFigure({ stretches: [{ grade: "80", from: "1.3.2025" }] }),
    {
      name: "SyntaxError",
      message:
        'Cannot draw the timeline as a date must look like 2025-03-09 or 2025-03-09T14:30: current value is "1.3.2025"',
    },
  );
});
