import { doesNotMatch, equal, match } from "node:assert/strict";
import { openHistory } from "sagbook/narrative/history_report.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import { PIECE, withFolder } from "../records/_bench_of_cases.ts";

/** Six sets of a sphere, in µm; one reading at the edge is off by so much. */
const readings = (off: number): string =>
  "session,zeroing,diameter_deg,zone,reading\n" +
  [0, 1, 0, 1, 0, 1].map((more, k) =>
    ["centre", "20 mm", "40 mm"].map((zone, n) =>
      `E1,${k + 1},${30 * k},${zone},0.${
        714 + (more + n) % 2 + (k === 2 && n === 2 ? off : 0)
      }\n`
    ).join("")
  ).join("");

const answers = (off: number) =>
  withFolder({
    piece: {
      ...PIECE,
      target: { radius: "2520 mm", tolerance: "40 mm" },
      sphericity_tolerance: { sag: "3 µm" },
    },
    files: { "readings.csv": readings(off) },
  }, async (path) => {
    const { session, answer } = await openPiece(path);
    const history = await openHistory(path);
    return {
      session: session!,
      next: answer.at(-1)!.replace(/[\u00a0\u202f]/g, " "),
      history: history.answer.at(-1)!.replace(/[\u00a0\u202f]/g, " "),
    };
  });

Deno.test("sessionReport() asks for a set that alone decides the verdict again, before strokes or more sets", async () => {
  const { session, next, history } = await answers(-9);
  equal(session.sphericity.verdict, "undecided");
  equal(session.withoutOutliers?.sphericity.verdict, "within");
  match(
    next,
    /^Next: read set 3 \(E1 \/ 3\) again, where 40 mm stands \d\.\d µm apart from the other sets — with it the verdict is “not decided”, without “a sphere within the tolerance”\.$/,
  );
  equal(history, next);
  const calm = await answers(0);
  equal(calm.session.sphericity.verdict, "within");
  doesNotMatch(calm.next, /again/);
});
