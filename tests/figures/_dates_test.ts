import { deepEqual, equal, throws } from "node:assert/strict";
import { dateAxis, dateText, instant } from "../../lib/figures/_dates.ts";

Deno.test("instant() reads a date as written, whatever the machine's time zone", () => {
  equal(instant("2025-03-09", "x"), Date.UTC(2025, 2, 9));
  equal(instant("2025-03-09T14:30", "x"), Date.UTC(2025, 2, 9, 14, 30));
  equal(instant("2025-03-09 14:30", "x"), Date.UTC(2025, 2, 9, 14, 30));
  equal(
    instant("2025-03-09T14:30:00+02:00", "x"),
    Date.UTC(2025, 2, 9, 12, 30),
  );
});

Deno.test("instant() refuses what is no ISO date", () => {
  for (const text of ["9.3.2025", "2025-13-01", "", "2025-03-09T14"]) {
    throws(() => instant(text, "the timeline"), {
      name: "SyntaxError",
      message:
        `Cannot draw the timeline as a date must look like 2025-03-09 or 2025-03-09T14:30: current value is "${text}"`,
    });
  }
});

Deno.test("dateAxis() puts ticks on days, weeks, months or years, eight at most", () => {
  const day = (text: string) => instant(text, "x");
  const axis = dateAxis(day("2025-03-01"), day("2025-03-05"));
  deepEqual(axis.ticks.map((t) => axis.label(t)), [
    "1 Mar\n2025",
    "2 Mar",
    "3 Mar",
    "4 Mar",
    "5 Mar",
  ]);
  for (
    const end of [
      "2025-03-01",
      "2025-03-02",
      "2025-04-20",
      "2026-02-01",
      "2031-01-01",
      "2075-01-01",
    ]
  ) {
    const { ticks, domain } = dateAxis(day("2025-03-01"), day(end));
    equal(
      ticks.length >= 1 && ticks.length <= 9,
      true,
      `${end}: ${ticks.length}`,
    );
    equal(ticks.every((t) => t >= domain[0] && t <= domain[1]), true);
  }
  equal(dateText(day("2025-03-09")), "9 Mar 2025");
});
