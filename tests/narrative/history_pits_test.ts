import { doesNotMatch, equal, match } from "node:assert/strict";
import { workTimeline } from "sagbook/fabrication/work_timeline.ts";
import { historyPits } from "sagbook/narrative/history_pits.ts";
import { openHistory } from "sagbook/narrative/history_report.ts";
import type { WorkLogEntry } from "sagbook/records/work_log.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { withFolder } from "../records/_bench_of_cases.ts";

const plain = (list: readonly string[]): string =>
  list.join("\n").replace(/[\u00a0\u202f]/g, " ");

const pits = (entries: readonly Omit<WorkLogEntry, "line">[]) =>
  historyPits(
    workTimeline(entries.map((one, k) => ({ line: k + 2, ...one })), []),
    "mm",
  )!;

Deno.test("historyPits() does not count what the grades between took as this grade's", () => {
  const log = [
    { grade: "F220", wets: 8, thicknessEdge: mm(38) },
    { grade: "F320", wets: 6 },
    { grade: "F500", wets: 1, thicknessEdge: mm(37.6) },
  ];
  const across = pits(log);
  equal(across.state.removed, undefined);
  equal(across.state.removal, "cannot tell");
  match(
    plain(across.sentences),
    /By the thickness 400 ± 28 µm went off in F320 and F500 together; what of it F500 took is not known/,
  );
  doesNotMatch(across.sentences.join("\n"), /as much as is wanted/);
  // Work of the grade before that came after the thickness is not this grade's.
  const late = pits([log[0], { grade: "F220", wets: 4 }, log[2]]);
  equal(late.state.removed, undefined);
  match(late.sentences.join("\n"), /went off in F220 and F500 together/);
  // The other place of the work may have what this one lacks.
  const other = pits([
    log[0],
    { grade: "F320", wets: 6, thicknessCentre: mm(37.64) },
    {
      grade: "F500",
      wets: 1,
      thicknessCentre: mm(37.6),
      thicknessEdge: mm(37.6),
    },
  ]);
  equal(other.state.removed?.value.toFixed(3), "0.040");
});

const sets = (sag: number): string =>
  [0, 1, 0, 1, 0].map((more, k) =>
    ["centre", "20 mm", "40 mm"].map((zone, n) =>
      `E1,${k + 1},${30 * k},${zone},0.${sag + (more + n) % 2}\n`
    ).join("")
  ).join("");

Deno.test("openHistory() sends nobody on to a finer grade while the log says that pits are left", async () => {
  const answer = (seen: string, target?: Record<string, string>) =>
    withFolder({
      piece: {
        name: "blank 7",
        form: "concave",
        diameter: "210 mm",
        bevel: "1.5 mm",
        sphericity_tolerance: { sag: "5 µm" },
        ...(target === undefined ? {} : { target }),
        invented: true,
      },
      files: {
        "readings.csv": "session,zeroing,diameter_deg,zone,reading\n" +
          sets(714),
        "worklog.csv": `grade,wets,session,pits\nF320,6,E1,${seen}\n`,
      },
    }, openHistory).then(({ answer }) => answer.at(-1)!);
  const target = { radius: "2520 mm", tolerance: "40 mm" };
  equal(
    await answer("edge", target),
    "Next: stay with F320 until the pits are gone (the loupe, as last entered: pits left at the edge); the radius is on target, so work with positions that keep it there.",
  );
  match(
    await answer("all"),
    /^Next: stay with F320 until the pits are gone \(.*everywhere\)\.$/,
  );
  equal(
    await answer("none", target),
    "Next: go on to the next grade once the loupe shows no pits; the radius is on target.",
  );
});
