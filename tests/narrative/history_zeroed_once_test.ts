import { deepEqual, doesNotMatch, match, ok } from "node:assert/strict";
import { openHistory } from "sagbook/narrative/history_report.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

/** Zeroings of one evening that scatter by 2 µm or so. */
const evening = (session: string, sag: number, zeroings: number): string =>
  Array.from(
    { length: zeroings },
    (_, k) =>
      ["centre", "20 mm"].map((zone) =>
        `${session},${k + 1},${zone},0.${sag + [0, 4, 1, 3][k % 4]}\n`
      ).join(""),
  ).join("");

const history = (text: string) =>
  withFolder({
    files: {
      "readings.csv": `session,zeroing,zone,reading\n${text}`,
      "worklog.csv":
        "grade,wets,position,session\nF320,6,mirror on top,A\nF320,6,mirror on top,B\nF320,6,mirror on top,C\n",
    },
  }, openHistory);

Deno.test("historyPoints() takes no session that was zeroed once for surer than the others", async () => {
  const { points, notes } = await history(
    evening("A", 700, 4) + evening("B", 706, 1) + evening("C", 712, 4),
  );
  deepEqual(points.map(({ borrowed }) => borrowed ?? false), [
    false,
    true,
    false,
  ]);
  const [a, b, c] = points.map(({ sag }) => sag!.own);
  // One zeroing scatters twice as much as the mean of four.
  ok(b > 1.6 * Math.max(a, c) && b < 2.4 * Math.min(a, c), `${[a, b, c]}`);
  deepEqual(points.map(({ centre }) => centre!.covers), [
    "everything",
    "everything",
    "everything",
  ]);
  match(
    notes.join("\n"),
    /^Session B was zeroed once; how the zero scatters was taken from the other sessions\.$/m,
  );
});

Deno.test("historyPoints() lends nothing where no session was zeroed twice", async () => {
  const { points, notes } = await history(
    evening("A", 700, 1) + evening("B", 706, 1),
  );
  ok(points.every(({ borrowed }) => borrowed === undefined));
  doesNotMatch(notes.join("\n"), /zeroed once/);
});
