import { deepEqual, equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  heatSentences,
  heatTable,
  openPlan,
  planReport,
  thermalSentence,
} from "sagbook/narrative/mod.ts";
import { readFolderWorkLog } from "sagbook/records/read_folder_work_log.ts";
import type { Reading } from "sagbook/records/reading.ts";
import {
  conductingGlass,
  heatOfPiece,
} from "sagbook/uncertainty/thermal_piece.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { PIECE, withFolder } from "../records/_bench_of_cases.ts";
import { bench, piece, session } from "../zones/_session.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const GLASS = { thickness: mm(40), glass: "borosilicate" } as const;
const heat = heatOfPiece({ form: "concave", ...GLASS }, mm(3000), [
  { id: "A", expansion: 11.5e-6 },
  { id: "B", expansion: 23e-6 },
])!;

Deno.test("heatOfPiece() reproduces the worked figures for 40 mm of borosilicate", () => {
  // 1 K across: 0.74 mm; ring 5 K warm: 1.15e-4 of R; pad after half an hour
  // from 5 K: -0.48 mm; bench 4 K colder: 0.78 mm for good.
  equal(heat.perGradientKelvin.toFixed(2), "0.74");
  equal((5 * heat.perRingKelvin[0].radiusReadsLonger).toFixed(3), "-0.345");
  equal(heat.supports[1].after[1].radiusReadsLonger.toFixed(2), "-0.48");
  ok(Math.abs(4 * heat.perBenchKelvin - 0.78) < 0.005);
  const minutes = (seconds: number) => Math.round(seconds / 60);
  const { leftToItself, oneFaceHeld, drivenByAir } = heat.supports[1].times;
  equal(minutes(leftToItself), 4);
  equal(minutes(oneFaceHeld), 17);
  equal(minutes(drivenByAir), 115);
  equal(
    heatOfPiece(
      { form: "concave", glass: "jade", thickness: mm(40) },
      mm(3000),
      [],
    ),
    undefined,
  );
  equal(conductingGlass(undefined), undefined);
});

Deno.test("heatSentences() and heatTable() say signs, times, and what is missing", async () => {
  const said = plain(heatSentences(heat, "mm").join(" "));
  match(
    said,
    /upper face 1 K warmer than the lower makes the radius read 0\.74 mm too long/,
  );
  match(
    said,
    /bench 1 K colder than the air it reads 0\.19 mm too long|0\.20 mm too long/,
  );
  match(said, /The ring B 1 K warmer .* reads? 0\.14 mm too short/);
  match(heatSentences(undefined, "mm")[0], /state its thickness and glass/);
  const shown = async (of: typeof heat | undefined) =>
    plain(String((await heatTable(of, "mm")[jupyterDisplay]())["text/plain"]));
  const text = await shown(heat);
  match(
    text,
    /three small supports.* 4 min .* 17 min .* 57 min .* 12 min .* reads true/,
  );
  match(text, /a pad.* 1\.9 h .* 5\.7 h .* 0\.48 mm too short/);
  match(await shown(undefined), /^No thickness and glass are stated\.\s*$/);
  const convex = heatOfPiece({ form: "convex", ...GLASS }, mm(3000), [])!;
  match(plain(heatSentences(convex, "mm")[0]), /0\.74 mm too short/);
});

Deno.test("planReport() warns of a cold bench, of warm work, and of reading too soon after work", () => {
  const readings = session([[715], [715]]).map((one): Reading => ({
    ...one,
    takenAt: "2031-05-17T10:10",
    temperatureAir: 20,
    temperatureBench: 14,
    temperatureWork: 25,
  }));
  const { thermal, answer } = planReport({
    path: "folder",
    piece: piece(GLASS),
    bench: bench(),
    readings,
    files: [],
    problems: [],
    lines: { read: 2, used: 2, reported: 0 },
  }, { studies: 20, today: "2031-05-18", workEndedAt: ["2031-05-17T10:00"] });
  equal(
    thermal.map(({ kind }) => kind).join(),
    "bench and air apart,work and air apart,too soon after work",
  );
  const said = plain(answer.join(" "));
  match(
    said,
    /The bench was 6\.0 K colder than the air \(S1\): work lying on it reads 0\.8\d mm too long for good\. Rest it on three small supports/,
  );
  match(said, /The work was 5\.0 K warmer than the air/);
  match(said, /read 10 minutes after warm work; \d+ are needed on a pad/);
  equal(
    plain(thermalSentence(thermal[2], "mm")),
    plain(answer[answer.length - 1]),
  );
});

Deno.test("openPlan() takes the end of warm work from the log, where the log gives a time", async () => {
  const warned = async (date: string) => {
    const { thermal } = await withFolder({
      piece: { ...PIECE, thickness: "40 mm", glass: "borosilicate" },
      files: {
        "worklog.csv": `date,grade,minutes\n${date},80 grit,30\n`,
        "readings.csv":
          "session,taken_at,zeroing,zone,reading\nS1,2031-05-17T10:10,1,centre,0.715\n",
      },
    }, (path) => openPlan(path, { studies: 20, today: "2031-05-18" }));
    return thermal.map(({ kind }) => kind);
  };
  deepEqual(await warned("2031-05-17T10:00"), ["too soon after work"]);
  deepEqual(await warned("2031-05-17"), []);
});

Deno.test("readFolderWorkLog() reads the log of a folder", async () => {
  const text = "date,minutes\n2031-05-17,30\n";
  const { entries, lines } = await withFolder(
    { files: { "worklog.csv": text } },
    (path) => readFolderWorkLog(path, "mm"),
  );
  equal(entries[0].minutes, 30);
  deepEqual(lines, { read: 1, used: 1, reported: 0 });
});
