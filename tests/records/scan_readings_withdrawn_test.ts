import { deepEqual, equal } from "node:assert/strict";
import { describeProblem } from "sagbook/records/describe_problem.ts";
import { tidyText } from "sagbook/records/write_tidy.ts";
import { BENCH, PIECE, scan } from "./_scan_of_text.ts";

const HEADER = "session,zeroing,zone,reading,unit,note,withdrawn\n";

Deno.test("scanReadings() reports a line that is marked as withdrawn and leaves it out, whatever else is wrong with it", async () => {
  const { readings, account, problems } = await scan(
    `${HEADER}S1,1,centre,0.715,mm,,
S1,1,edge,0.655,mm,,foot on the bevel
S1,1,edge,0.713,mm,,no
S1,1,,+  0.71,mm,cut off,x
S1,1,edge,0.714,mm,
`,
  );
  deepEqual(readings.map(({ sag }) => sag), [0.715, 0.713, 0.714]);
  deepEqual(
    [account.read, account.used, account.reported],
    [5, 3, 2],
  );
  const found = problems.filter(({ code }) => code === "withdrawn");
  deepEqual(found.map(describeProblem), [
    "note: readings.csv, line 3, column withdrawn: the line is marked as withdrawn and was left out: “foot on the bevel”\n  mend: blank the mark to have it used",
    "note: readings.csv, line 5, column withdrawn: the line is marked as withdrawn and was left out: “x”\n  mend: blank the mark to have it used",
  ]);
});

Deno.test("scanReadings() raises no suspicion because of a line that is withdrawn", async () => {
  const { problems } = await scan(
    `${HEADER}S1,1,centre,0.715,mm,,\nS1,1,edge,0.0281,mm,,x\nS1,1,edge,-0.714,mm,,x\n`,
  );
  deepEqual(problems.map(({ code }) => code), ["withdrawn", "withdrawn"]);
});

Deno.test("scanReadings() leaves a whole row of a bench sheet out, each cell counted", async () => {
  const { account, readings } = await scan(
    "diameter,centre,edge,withdrawn\n0,0.715,0.714,\n60,0.716,0.655,x\n",
  );
  deepEqual([account.read, account.used, account.reported], [4, 2, 2]);
  equal(readings.length, 2);
});

Deno.test("tidyText() writes no column of marks, for what it writes was not withdrawn", async () => {
  const { readings } = await scan(
    `${HEADER}S1,1,centre,0.715,mm,,\nS1,1,edge,0.655,mm,,x\n`,
  );
  const text = tidyText(readings, { piece: PIECE, bench: BENCH });
  equal(text.split("\n").length, 3);
  equal(text.includes("withdrawn"), false);
});
