import { deepEqual, equal, match, ok } from "node:assert/strict";
import { check } from "../../lib/tasks/check.ts";
import { overhear, runTask } from "./_run_task.ts";

const PIECE =
  '{ "name": "blank 7", "form": "concave", "diameter": "210 mm", "bevel": "1.5 mm" }';
const BENCH =
  '{ "gauge": { "unit": "mm", "display_step": "0.001 mm", "scale_uncertainty": 0 }, "rings": [{ "id": "A", "radius": "60 mm", "ball_radius": "3 mm", "radius_uncertainty": "0.02 mm" }] }';

async function folderOf(files: Record<string, string>): Promise<string> {
  const path = await Deno.makeTempDir();
  const all = { "piece.json": PIECE, "bench.json": BENCH, ...files };
  for (const [name, text] of Object.entries(all)) {
    await Deno.writeTextFile(`${path}/${name}`, text);
  }
  return path;
}

/** What the task says, run in this process. */
const said = (args: readonly string[]) => overhear(() => check(args));

Deno.test("check() says what a usable folder holds and ends with 0", async () => {
  const path = await folderOf({
    "readings.csv": "session,zeroing,zone,reading\nS1,1,centre,0.715\n",
    "worklog.csv": "date,wets\n2031-05-17,12\n",
  });
  const { code, out } = await said([path]);
  equal(code, 0);
  match(out, /piece: blank 7, concave, 210 mm across, no target/);
  match(out, /readings\.csv: 1 read, 1 used, 0 refused/);
  match(out, /worklog\.csv: 1 read, 1 used, 0 refused/);
  ok(out.endsWith(`${path} can be used.`));
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() passes a folder without readings, with a note", async () => {
  const path = await folderOf({});
  const { code, out } = await said([path]);
  equal(code, 0);
  match(out, /note: .*the folder holds no readings yet/);
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() tells every refusal of every file at once and ends with 1", async () => {
  const path = await folderOf({
    "readings.csv":
      "session,zeroing,zone,reading\nS1,1,centre,0.715\nS1,1,centre,n/a\nS1,,edge,0.7\n",
    "worklog.csv": "date,wets\nyesterday,12\n",
  });
  const { code, out } = await said([path]);
  equal(code, 1);
  match(out, /readings\.csv, line 3, column reading: .*“n\/a”/);
  match(out, /readings\.csv, line 4, column zeroing/);
  match(out, /worklog\.csv, line 2, column date/);
  ok(out.endsWith(`${path}: 3 things refused; the rest can be used.`));
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() tells faults of piece and bench together", async () => {
  const path = await folderOf({
    "piece.json": '{ "name": "x", "form": "concave",\n "diameter": 210 }',
    "bench.json": '{ "gauge": {}, "rings": [] }',
  });
  const { code, out } = await said([path]);
  equal(code, 1);
  match(out, /piece\.json, line 2, column diameter/);
  match(out, /bench\.json, line 1, column rings/);
  ok(out.endsWith(`${path} cannot be used: 2 things to mend.`));
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() gives scripts one JSON document", async () => {
  const path = await folderOf({
    "readings.csv": "session,zeroing,zone,reading\nS1,1,centre,x\n",
  });
  const { code, out } = await said([path, "/no/such", "--json"]);
  equal(code, 1);
  const [first, second] = JSON.parse(out);
  deepEqual(
    [first.folder, first.usable, first.files[0].reported],
    [path, false, 1],
  );
  equal(second.problems[0].code, "no-folder");
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() ends with 2 on a wrong call, and shows how to call it", async () => {
  for (const args of [[], ["--colour"]]) {
    const { code, out, err } = await said(args);
    equal(code, 2);
    equal(out, "");
    match(err, /deno task check FOLDER/);
  }
});

Deno.test("check() shows no stack for a file, a missing folder and folders in place of files", async () => {
  const path = await folderOf({});
  await Deno.remove(`${path}/piece.json`);
  await Deno.mkdir(`${path}/piece.json`);
  await Deno.mkdir(`${path}/readings.csv`);
  const run = await runTask("check", [path, `${path}/bench.json`, "/no/such"]);
  equal(run.code, 1);
  equal(run.err, "");
  match(run.out, /piece\.json: this is a folder, not a file/);
  match(run.out, /bench\.json: this is a file, not a folder/);
  match(run.out, /\/no\/such: there is no such folder/);
  ok(!/\bat .*\.ts:\d+/.test(run.out));
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() says of a folder without a reading left that there is nothing to report on", async () => {
  const cases = [
    ["session,zeroing,zone,reading\n", "no reading of the work yet", 0],
    ["", "no reading of the work yet", 0],
    [
      "session,zeroing,zone,reading\nS1,1,flat,0\n",
      "no reading of the work yet",
      0,
    ],
    [
      "session,zeroing,zone,reading\nS1,1,centre,n/a\n",
      "no reading is left \\(1 of 1 lines left out\\)",
      1,
    ],
  ] as const;
  for (const [text, words, expected] of cases) {
    const path = await folderOf({ "readings.csv": text });
    const { code, out } = await said([path]);
    equal(code, expected, text);
    match(out, new RegExp(`${words}, so there is nothing to report on[^\n]*$`));
    ok(!out.includes("can be used"), out);
    await Deno.remove(path, { recursive: true });
  }
});

Deno.test("check() counts a warning once however many lines it is for", async () => {
  const rows = [1, 2, 3, 4].map((set) => `S1,${set},50%,0.715`).join("\n");
  const path = await folderOf({
    "readings.csv": `session,zeroing,zone,reading\n${rows}\n`,
  });
  const { out } = await said([path]);
  match(out, /can be used, 1 warning\.$/);
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() speaks of an inch piece in inches", async () => {
  const path = await folderOf({
    "piece.json":
      '{ "name": "blank 7", "form": "concave", "diameter": "8 in", "bevel": "0.06 in", "target": { "radius": "80 in" }, "unit": "in" }',
  });
  const { out } = await said([path]);
  match(out, /8 in across, target R 80 in/);
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() lets no control code of a file through to the terminal", async () => {
  const evil = "\u001b]0;title\u0007\u001b[2J\u202e\u009b31m";
  const path = await folderOf({
    "piece.json": PIECE.replace("blank 7", JSON.stringify(evil).slice(1, -1)),
    "readings.csv":
      `session,zeroing,zone,reading,"${evil}"\n"${evil}",1,"${evil}",0.715,x\n"S${evil}",1,centre,0.0281,x\n`,
    [`sheets-${evil.length}`]: "",
  });
  for (const flags of [[], ["--json"]]) {
    const { out } = await said([path, ...flags]);
    // deno-lint-ignore no-control-regex
    ok(!/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/.test(out), out);
    if (flags.length > 0) JSON.parse(out);
  }
  await Deno.remove(path, { recursive: true });
});

Deno.test("task check guesses which folder was meant", async () => {
  const { code, out } = await runTask("check", ["data/metric-25"]);
  equal(code, 1);
  match(out, /^Did you mean data\/metric-250\?$/m);
  const json = await runTask("check", ["--json", "data/metric-25"]);
  equal(JSON.parse(json.out)[0].usable, false);
});

Deno.test("check() tells lines that were withdrawn from lines refused", async () => {
  const path = await folderOf({
    "readings.csv": "session,zeroing,zone,reading,withdrawn\n" +
      "S1,1,centre,0.715,\nS1,1,centre,0.7l5,\n" +
      "S1,1,70%,0.715,x\n".repeat(25),
  });
  const { out } = await said([path]);
  match(out, /readings\.csv: 27 read, 1 used, 1 refused, 25 withdrawn/);
  ok(out.endsWith(`${path}: 1 thing refused; the rest can be used.`), out);
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() counts lines refused, and not each of their faults", async () => {
  const path = await folderOf({
    "readings.csv":
      "session,zeroing,zone,reading\nS1,1,centre,0.715\nS1,,nowhere,n/a\n",
  });
  const { out } = await said([path]);
  match(out, /readings\.csv: 2 read, 1 used, 1 refused/);
  ok(out.endsWith(`${path}: 1 thing refused; the rest can be used.`), out);
  await Deno.remove(path, { recursive: true });
});

Deno.test("check() names a session of the work log that no readings bear", async () => {
  const path = await folderOf({
    "readings.csv": "session,zeroing,zone,reading\nevening 1,1,centre,0.715\n",
    "worklog.csv":
      "date,wets,session\n2031-05-17,12,evening-1\n2031-05-18,12,later\n2031-05-18,12,\n",
  });
  const { code, out } = await said([path]);
  equal(code, 0);
  match(
    out,
    /warning: worklog\.csv, line 2, column session: no readings bear this session's name: “evening-1”\n.*\n {2}mend: did you mean evening 1\?/,
  );
  match(out, /note: worklog\.csv, line 3, column session: .*: “later”/);
  equal(out.match(/no readings bear/g)?.length, 2);
  await Deno.remove(path, { recursive: true });
});
