import { deepEqual, equal, match, ok } from "node:assert/strict";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
import { benchSheetCsv } from "sagbook/repeatability/bench_sheet_csv.ts";
import {
  BENCH,
  makeFolder,
  recordAll,
  recorder,
  Recording,
  rowsOf,
} from "./_record_folder.ts";
import { ROOT, runTask } from "./_run_task.ts";

const remove = (folder: string) => Deno.remove(folder, { recursive: true });
const values = (rows: readonly Record<string, string>[]) =>
  rows.map(({ reading, withdrawn }) =>
    withdrawn === "" ? reading : `${reading} ${withdrawn}`
  );

Deno.test("task record keeps each reading with its place, answers R and the difference from the centre of the set", async () => {
  const folder = await makeFolder();
  const { code, out } = await recordAll(
    folder,
    "0.715\n0.714\n0.713\n0.000",
    "--session",
    "S1",
    "--zones",
    "centre,50% reach,edge",
    "--operator",
    "A",
  );
  equal(code, 0);
  match(out, /^Set 1, centre:\ncentre 0\.715 mm: R 2520\.8 mm\.$/m);
  match(
    out,
    /^50% reach 0\.714 mm: R 2524\.4 mm, -1\.0 µm from the centre of this set\.$/m,
  );
  match(out, /^edge 0\.713 mm: R 2527\.9 mm, -2\.0 µm from the centre/m);
  match(out, /^flat 0\.000 mm: the zero stands\.$/m);
  const rows = await rowsOf(folder);
  deepEqual(
    rows.map(({ taken_at: _, ...row }) => Object.values(row).join("|")),
    ["centre|0.715", "50% reach|0.714", "edge|0.713", "flat|0.000"].map(
      (one) => {
        const [zone, reading] = one.split("|");
        const foot = zone === "flat" ? "" : "feet out";
        return `S1||A|1||0|${foot}|${zone}||${reading}|mm|A||`;
      },
    ),
  );
  ok(rows.every(({ taken_at }) => !Number.isNaN(Date.parse(taken_at))));
  const { lines, readings } = await readPieceFolder(folder);
  deepEqual(lines, { read: 4, used: 4, reported: 0 });
  equal(readings[2].sag, 0.713);
  await remove(folder);
});

Deno.test("task record warns in one line of every kind of slip, and keeps what was typed until it is taken back", async () => {
  const folder = await makeFolder();
  const slips = [
    ["0.0281", /looks like inches .* as inches 0\.7137 mm \(R 2525\.3 mm\)/],
    ["-0.714", /the reading is negative, .*does the gauge count down/],
    ["7.15", /about 10 times what this surface shows: .*one place off/],
    ["0.655", /60 µm less than the centre .*foot on the bevel or off the work/],
    ["0.02815 in", /the unit changed from mm to in: was the unit key meant/],
    ["0.7155", /finer than the display step/],
  ] as const;
  const recording = new Recording(folder, ["--zones", "centre,edge"]);
  await recording.until(/centre:\n$/);
  await recording.ask("0.715");
  const typed = ["0.715"];
  for (const [text, words] of slips) {
    const from = recording.out.length;
    await recording.ask(text);
    const said = recording.out.slice(from).split("\n");
    ok(said.some((line) => words.test(line)), `${text}: ${said.join("\n")}`);
    await recording.ask("-");
    match(recording.out.slice(from), /Taken back: edge .*not erased/);
    typed.push(`${text.replace(" in", "")} x`);
  }
  await recording.end();
  deepEqual(values(await rowsOf(folder)), typed);
  const { lines, problems } = await readPieceFolder(folder);
  deepEqual(lines, { read: 7, used: 1, reported: 6 });
  equal(problems.filter(({ code }) => code === "withdrawn").length, 6);
  await remove(folder);
});

Deno.test("task record judges differences by the scatter of earlier sets, once there is one", async () => {
  const folder = await makeFolder();
  const good =
    "0.715\n0.716\n0.000\n0.716\n0.716\n0.000\n0.715\n0.716\n0.000\n";
  const { out } = await recordAll(
    folder,
    `${good}0.716\n0.728\n0.729`,
    "--zones",
    "centre,edge",
  );
  // 12 µm above the earlier differences of 1, 0 and 1 µm.
  match(
    out,
    /^edge 0\.728 mm: .*\nwarning: 11 µm more than the same place in earlier sets/m,
  );
  equal(out.match(/^warning: /gm)?.length, 2, out);
  await remove(folder);
});

Deno.test("task record warns when the zero moves and when the flat was not looked at for long", async () => {
  const folder = await makeFolder();
  const zones = Array.from({ length: 13 }, (_, k) => `${k}%`);
  const { out } = await recordAll(
    folder,
    `${zones.map(() => "0.715").join("\n")}\n0.005`,
    "--zones",
    zones.join(),
  );
  match(out, /warning: the flat was last looked at 12 readings ago\./);
  match(out, /warning: the zero has moved by 5\.0 µm: warm hands/);
  await remove(folder);
});

Deno.test("task record goes on where it stopped, with the diameter and the places it had", async () => {
  const folder = await makeFolder();
  const places = ["--zones", "centre,edge"];
  await recordAll(folder, "0.715\n0.714\n0.000\n0.716", ...places);
  const { out } = await recordAll(folder, "0.715\n0.000");
  match(out, /^Going on with session \d{4}-\d\d-\d\d\.$/m);
  match(out, /^Set 2, edge:$/m);
  const rows = await rowsOf(folder);
  deepEqual(
    rows.map(({ zeroing, diameter_deg, zone }) =>
      [zeroing, diameter_deg, zone].join()
    ),
    [
      ...["1,0,centre", "1,0,edge", "1,0,flat"],
      ...["2,60,centre", "2,60,edge", "2,60,flat"],
    ],
  );
  const other = await recordAll(folder, "0.715", "--new");
  match(other.out, /session \d{4}-\d\d-\d\d \(2\), kept in readings\.csv/);
  const named = await recordAll(
    folder,
    "0.715",
    "--session",
    "evening",
    ...places,
  );
  match(named.out, /^Set 1, centre:$/m);
  equal(new Set((await rowsOf(folder)).map(({ session }) => session)).size, 3);
  await remove(folder);
});

Deno.test("task record follows a plan line by line, and again after a stop", async () => {
  const sheet = writeBenchSheet({
    session: "S4",
    ring: "A",
    zones: [{ label: "centre", offset: 0 }, { label: "edge", offset: 40 }],
    size: { zeroings: 2, diameters: 2, repeats: 1 },
    foot: { kind: "feet out" },
    operators: ["Ann"],
    seed: 3,
  });
  const steps = sheet.rows.filter(({ act }) => act !== "zero");
  const folder = await makeFolder({ "plan.csv": benchSheetCsv(sheet) });
  const shown = steps.map(({ act }) => act === "look" ? "0.000" : "0.715");
  const half = await recordAll(folder, shown.slice(0, 3).join("\n"));
  match(half.out, /^Set 1 of 2, flat:$/m);
  const rest = await recordAll(folder, `-\n${shown.slice(2).join("\n")}\n0.9`);
  match(rest.out, /^8 readings of session S4 in readings\.csv/m);
  const rows = await rowsOf(folder);
  const kept = rows.filter(({ withdrawn }) => withdrawn === "");
  deepEqual(
    kept.map((
      { note, zone, zeroing, operator },
    ) => [note, zone, zeroing, operator]),
    steps.map((
      { number, zone, zeroing },
    ) => [`step ${number}`, zone, zeroing, "Ann"]),
  );
  equal(rows.length, kept.length + 1);
  const { readings, lines } = await readPieceFolder(folder);
  equal(lines.used, 8);
  deepEqual(
    readings.filter(({ on }) => on === "work").map(({ offset }) => offset)
      .sort(),
    [0, 0, 40, 40],
  );
  const over = await recordAll(folder, "0.715");
  match(over.out, /^8 readings of session S4/m);
  await remove(folder);
});

Deno.test("task record says what a cable garbled, keeps it marked, and reads on", async () => {
  const folder = await makeFolder();
  const log = await Deno.readTextFile(`${ROOT}tests/cases/A12-cable-log.txt`);
  const { code, out } = await recordAll(
    folder,
    `${log}\n+  0.71\n7150, MM\n\u0007\u0002\n+  0.7150, MIL\n+  0.7140, MM`,
    "--zones",
    "centre,edge",
  );
  equal(code, 0);
  match(
    out,
    /flat 0\.0000 mm: .*\nSo near to 0 it was taken for a look at the flat/,
  );
  match(out, /centre 0\.7150 mm: R 2520\.8/);
  match(out, /the gauge reported an error: “ERR 2”/);
  match(out, /the unit changed from mm to in/);
  match(out, /cut off \(it holds NUL bytes\): “\+ {2}0\.71·*”/);
  match(out, /cut off: it has no unit: “\+ {2}0\.71”/);
  match(out, /cut off: it has no sign: “7150, MM”/);
  match(out, /not what a gauge writes: “··”/);
  ok(!/\n\s+at |undefined|NaN/.test(out), out);
  const rows = await rowsOf(folder);
  equal(rows.filter(({ withdrawn }) => withdrawn === "not read").length, 5);
  const { lines, readings } = await readPieceFolder(folder);
  equal(lines.read, lines.used + lines.reported);
  deepEqual(readings.map(({ sag }) => sag.toFixed(5)), [
    ...["0.00000", "0.71500", "0.71600"],
    ...["0.71501", "-0.71500", "0.01816", "0.71400"],
  ]);
  await remove(folder);
});

Deno.test("task record keeps a signed length with its unit as typed, and names what is none by its own fault", async () => {
  const folder = await makeFolder();
  const { code, out } = await recordAll(
    folder,
    "+0.715 mm\n-1/2\n+0.714mm\n=1+1",
    "--zones",
    "centre,edge",
    "--cable",
  );
  equal(code, 0);
  match(out, /^centre 0\.715 mm: R 2520\.8 mm\.$/m);
  match(out, /^edge 0\.714 ?mm: R 2524\.4 mm/m);
  equal(out.match(/not kept: .*more than one number/g)?.length, 2);
  ok(!/apostrophe/.test(out), out);
  deepEqual(
    (await readPieceFolder(folder)).readings.map(({ sag }) => sag),
    [0.715, 0.714],
  );
  await remove(folder);
});

Deno.test("task record follows a file that another program changes, and never loses a line", async () => {
  const folder = await makeFolder();
  const path = `${folder}/readings.csv`;
  const recording = new Recording(folder, [
    "--zones",
    "centre,edge",
    "--session",
    "S1",
  ]);
  await recording.until(/centre:\n$/);
  await recording.ask("0.715");
  const text = await Deno.readTextFile(path);
  await Deno.writeTextFile(
    path,
    `${text}S0,,,A,1,,,,centre,,0.700,mm,,from elsewhere,`,
  );
  await recording.ask("0.714");
  match(
    recording.out,
    /readings\.csv was changed by another program; it was read again/,
  );
  // A spreadsheet that saves the columns in another order, lines CRLF.
  const rows = await rowsOf(folder);
  const names = Object.keys(rows[0]).reverse();
  await Deno.writeTextFile(
    path,
    [names, ...rows.map((row) => names.map((name) => row[name]))].map((row) =>
      `${row.join(",")}\r\n`
    ).join(""),
  );
  await recording.ask("0.001");
  await recording.ask("-");
  await recording.ask("0.000");
  await Deno.remove(path);
  await recording.ask("0.716");
  // One that writes something else altogether.
  await Deno.writeTextFile(path, "diameter;centre;edge\n0;0,715;0,714\n");
  await recording.ask("0.715");
  match(
    recording.out,
    /3 readings of this run are no longer in it and written again/,
  );
  // One that writes its older copy, marks of its own in it.
  await recording.end();
  deepEqual(values(await rowsOf(folder, "sheets/recorded.csv")), [
    ...["0.715", "0.714", "0.001 x", "0.000", "0.716", "0.715"],
  ]);
  equal((await Deno.readTextFile(path)).includes("0,715;0,714"), true);
  await remove(folder);
});

Deno.test("task record leaves a file of another layout alone, and records beside it", async () => {
  const sheet = "diameter;centre;edge\n0;0,715;0,714\n";
  const folder = await makeFolder({ "readings.csv": sheet });
  const { out } = await recordAll(folder, "0.715");
  match(
    out,
    /readings\.csv has a layout of its own and was left alone; made sheets\/recorded\.csv/,
  );
  equal(await Deno.readTextFile(`${folder}/readings.csv`), sheet);
  const { lines } = await readPieceFolder(folder);
  deepEqual(lines, { read: 3, used: 3, reported: 0 });
  await remove(folder);
});

Deno.test("task record says in plain words what it cannot do, and never shows a stack", async () => {
  const folder = await makeFolder({}, {
    ...BENCH,
    rings: [...BENCH.rings, { id: "B", radius: "30 mm", ball_radius: "3 mm" }],
  });
  const runs = [
    [["/nowhere/at/all"], 1, /there is no such folder/],
    [[folder], 1, /several rings; name one with --ring: A, B/],
    [
      [folder, "--ring", "C"],
      1,
      /There is no ring “C” on this bench; it has “A”, “B”/,
    ],
    [
      [folder, "--ring", "A", "--zones", "90%"],
      1,
      /The place 90% cannot be read: .*ring A reaches/,
    ],
    [[folder, "--ring", "A", "--sets", "x"], 1, /--sets needs a whole number/],
    [[folder, "--unit", "cm"], 2, /--unit is mm or in/],
    [[], 2, /Name one folder to record to/],
    [[folder, "--rings", "A"], 2, /There is no flag --rings/],
  ] as const;
  for (const [args, code, words] of runs) {
    const run = await runTask("record", args);
    equal(run.code, code, run.out + run.err);
    match(run.err, words);
    ok(!/\n\s+at |undefined|NaN/.test(run.err), run.err);
  }
  await remove(folder);
});

Deno.test("task record stops at Ctrl-C with everything kept", async () => {
  const folder = await makeFolder();
  const recording = new Recording(folder, ["--zones", "centre,edge"]);
  await recording.until(/centre:\n$/);
  await recording.ask("0.715");
  recording.kill("SIGINT");
  await recording.until(/Next: deno task report/);
  const { code, out } = await recording.end();
  equal(code, 130);
  match(
    out,
    /1 reading of session .* in readings\.csv\. Next: deno task report/,
  );
  equal((await rowsOf(folder)).length, 1);
  equal(recorder(folder).length, 5);
  await remove(folder);
});
