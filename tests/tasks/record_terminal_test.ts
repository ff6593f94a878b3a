import { deepEqual, equal, match, ok } from "node:assert/strict";
import { fileURLToPath } from "node:url";
import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
import { testWith } from "./_needs.ts";
import { makeFolder, recorder, Recording, rowsOf } from "./_record_folder.ts";
import { ROOT, runTask } from "./_run_task.ts";

const TERMINAL = fileURLToPath(new URL("_terminal.py", import.meta.url));

/** What is waited for, and what is then typed. */
type Typed = readonly (readonly [prompt: string, keys: string])[];

/** Runs the recorder in a terminal of its own. */
async function inTerminal(
  folder: string,
  typed: Typed,
  env: Readonly<Record<string, string>> = {},
): Promise<{ code: number; shown: string }> {
  const order = await Deno.makeTempFile({ suffix: ".json" });
  await Deno.writeTextFile(
    order,
    JSON.stringify({
      command: [Deno.execPath(), ...recorder(folder, "--session", "S1")],
      without: ["NO_COLOR"],
      env: { TERM: "xterm", ...env },
      typed,
      wait: 60,
    }),
  );
  const { code, stdout } = await new Deno.Command("python3", {
    args: [TERMINAL, order],
    cwd: ROOT,
    stdin: "null",
    stdout: "piped",
    stderr: "inherit",
  }).output();
  await Deno.remove(order);
  const shown = new TextDecoder().decode(stdout).replaceAll("\r\n", "\n");
  return { code, shown };
}

const ZERO = "zero on the flat\\..*: ";
const DIAMETER = "Diameter in degrees \\(Enter: \\d+\\): ";

/** One set: zero, diameter by Enter, then what is typed at each place. */
function set(zeroBefore: string, ...taken: Typed): Typed {
  return [[ZERO, `${zeroBefore}\r`], [DIAMETER, "\r"], ...taken];
}

const SESSION: Typed = [
  ["Places of a set: .*: ", "2\r"],
  ...set(
    "",
    ["centre: ", "0.715\r"],
    ["edge: ", "7.15\r"],
    ["Set 1, flat: ", "-\r"],
    ["edge: ", ".715\r"],
    ["flat: ", "0.000\r"],
  ),
  ...set(
    "0.002",
    ["centre: ", "-0.716\r"],
    ["Set 2, edge: ", "-\r"],
    ["centre: ", "0.716\r"],
    ["edge: ", "0.715\r"],
    ["flat: ", "0.001\r"],
  ),
  ...set(
    "",
    ["centre: ", "0.715\r"],
    ["edge: ", "0.655\r"],
    ["Set 3, flat: ", "-\r"],
    ["edge: ", "0.714\r"],
    ["flat: ", "0\r"],
  ),
  [ZERO, ".\r"],
  ["Which: ", "9\r"],
];

testWith(
  ["python3"],
  "task record takes a whole session in a terminal, catches three slips as they are typed, and the report gives the verdict",
  async () => {
    const folder = await makeFolder();
    for (const [, keys] of SESSION) match(keys, /^[0-9.\-]*\r$/);
    const { code, shown } = await inTerminal(folder, SESSION);
    equal(code, 0, shown);
    const answers = shown.split("\n");
    const after = (typed: string): string => {
      const at = answers.findIndex((line) => line.endsWith(`: ${typed}`));
      return answers.slice(at, at + 4).join("\n");
    };
    match(after("7.15"), /warning: about 10 times what this surface shows/);
    match(after("-0.716"), /warning: the reading is negative/);
    match(after("0.655"), /warning: 59 µm less .*foot on the bevel or off/);
    equal(shown.match(/warning: /g)?.length, 3, shown);
    equal(shown.split("\u001b[33mwarning: ").length, 4);
    equal(shown.split("\u001b[0m\n").length, 4);
    match(
      shown,
      /Provisional, by the rule for sets 3 to 8: within 10 µm of sag/,
    );
    const rows = await rowsOf(folder);
    deepEqual(
      rows.map(({ zeroing, diameter_deg, zone, reading, withdrawn }) =>
        [zeroing, diameter_deg, zone, reading, withdrawn].join(" ").trim()
      ),
      [
        ...["1 0 centre 0.715", "1 0 edge 7.15 x", "1 0 edge .715"],
        ...["1 0 flat 0.000", "2 60 centre -0.716 x", "2 60 centre 0.716"],
        ...["2 60 edge 0.715", "2 60 flat 0.001", "3 120 centre 0.715"],
        ...["3 120 edge 0.655 x", "3 120 edge 0.714", "3 120 flat 0"],
      ],
    );
    // The history of the zero stands in the first line of its set.
    deepEqual(
      rows.map((row) => row.zero_before).join(","),
      ",,,,0.002,0.002,,,,,,",
    );
    const { lines } = await readPieceFolder(folder);
    deepEqual(lines, { read: 12, used: 9, reported: 3 });
    const report = await runTask("report", [folder]);
    equal(report.code, 0, report.err);
    const said = report.out.replace(/[\u00a0\u202f]/g, " ");
    match(said, /The radius of curvature is 25\d\d/);
    match(said, /It is a sphere within 10 µm of sag/);
    await Deno.remove(folder, { recursive: true });
  },
);

testWith(
  ["python3"],
  "task record colours nothing where NO_COLOR is set or the terminal is dumb, and its menu needs digits, point, Enter and minus only",
  async () => {
    const folder = await makeFolder();
    const first: Typed = [
      ["Places of a set: .*: ", "\r"],
      ...set("", ["centre: ", "0.715\r"], ["reach: ", "0.0281\r"]),
      ["edge: ", "-\r"],
      ["reach: ", ".\r"],
      ["Which: ", "3\r"],
      ["Place: ", "-.3\r"],
      ["-30%: ", "0.714\r"],
      ["reach: ", ".\r"],
      ["Which: ", "6\r"],
      ["Diameter in degrees: ", "90\r"],
      ["reach: ", "0.715\r"],
      ["edge: ", ".\r"],
      ["Which: ", "4\r"],
      ["flat: ", ".\r"],
      ["Which: ", "2\r"],
      [ZERO, "0.715\r"],
      [ZERO, "\u0004"],
    ];
    const plain = await inTerminal(folder, first, { NO_COLOR: "1" });
    equal(plain.code, 0, plain.shown);
    match(plain.shown, /^warning: the reading looks like inches/m);
    match(
      plain.shown,
      /That looks like a reading of the work; nothing was kept/,
    );
    ok(!plain.shown.includes("\u001b"), plain.shown);
    deepEqual(
      (await rowsOf(folder)).map(({ zone, diameter_deg, reading }) =>
        `${zone} ${diameter_deg} ${reading}`
      ),
      [
        ...["centre 0 0.715", "50% reach 0 0.0281", "'-30% 0 0.714"],
        "50% reach 90 0.715",
      ],
    );
    const dumb = await inTerminal(folder, [
      ["Places of a set: .*: ", "\r"],
      // What was passed over is asked for again.
      ["Set 1, edge: ", "0.0281\r"],
      ["flat: ", "\u0004"],
    ], { TERM: "dumb" });
    match(dumb.shown, /^Going on with session S1\.$/m);
    match(dumb.shown, /^warning: /m);
    ok(!dumb.shown.includes("\u001b"), dumb.shown);
    await Deno.remove(folder, { recursive: true });
  },
);

testWith(
  ["python3"],
  "task record takes no reading for a zero or a diameter, not even in the first set, and asks again for a choice it does not know",
  async () => {
    const folder = await makeFolder();
    const { code, shown } = await inTerminal(folder, [
      ["Places of a set: .*: ", "what\r"],
      ["Type a number from 1 to 4, or Enter alone\\. .*: ", "2\r"],
      [ZERO, "0.715\r"],
      [ZERO, "0.002\r"],
      [DIAMETER, "0,715\r"],
      [DIAMETER, "22.5\r"],
      ["centre: ", "0.715\r"],
      ["edge: ", "\u0004"],
    ], { NO_COLOR: "1" });
    equal(code, 0, shown);
    match(shown, /That looks like a reading of the work; nothing was kept/);
    match(
      shown,
      /That looks like a reading; nothing was kept\. Type the degrees/,
    );
    deepEqual(
      (await rowsOf(folder)).map((row) => [
        row.zone,
        row.zero_before,
        row.diameter_deg,
        row.reading,
      ]),
      [["centre", "0.002", "22.5", "0.715"]],
    );
    await Deno.remove(folder, { recursive: true });
  },
);

testWith(
  ["bash", "prlimit"],
  "task record holds what does not fit on the disk, leaves no half line, and saves it once there is room",
  async () => {
    const folder = await makeFolder();
    const path = `${folder}/readings.csv`;
    const places = ["--zones", "centre,edge", "--session", "S1"];
    const start = new Recording(folder, places);
    await start.until(/centre:\n$/);
    await start.ask("0.715");
    await start.end();
    const { size } = await Deno.stat(path);
    const before = await Deno.readTextFile(path);
    // Room for the old lines and a few bytes of the next.
    const recording = new Recording(folder, places, (command) => [
      "bash",
      "-c",
      `trap '' XFSZ; exec ${command}`,
    ]);
    await recording.until(/edge:\n$/);
    const limit = (bytes: string) =>
      new Deno.Command("prlimit", {
        args: ["--pid", `${recording.pid}`, `--fsize=${bytes}:unlimited`],
      }).output();
    equal((await limit(`${size + 7}`)).success, true);
    await recording.ask("0.714");
    match(
      recording.out,
      /warning: NOT SAVED: the file may not grow any larger\. 0\.714 mm at edge is held here/,
    );
    equal(await Deno.readTextFile(path), before);
    await recording.ask("0.000");
    match(recording.out, /still not saved: .*; 1 held here/);
    match(recording.out, /what was held before it waits too/);
    equal(await Deno.readTextFile(path), before);
    await limit("unlimited");
    await recording.ask("");
    match(recording.out, /Saved now: 0\.714 at edge, 0 at flat/);
    match(recording.out, /Set 2, centre:\n$/);
    const { code } = await recording.end();
    equal(code, 0);
    deepEqual((await rowsOf(folder)).map(({ reading }) => reading), [
      "0.715",
      "0.714",
      "0.000",
    ]);
    await Deno.remove(folder, { recursive: true });
  },
);

testWith(
  ["bash", "prlimit"],
  "task record writes down what it could not save when it has to end",
  async () => {
    const folder = await makeFolder();
    const recording = new Recording(
      folder,
      ["--zones", "centre,edge"],
      (command) => [
        "bash",
        "-c",
        `trap '' XFSZ; exec ${command}`,
      ],
    );
    await recording.until(/centre:\n$/);
    const { size } = await Deno.stat(`${folder}/readings.csv`);
    await new Deno.Command("prlimit", {
      args: ["--pid", `${recording.pid}`, `--fsize=${size}:${size}`],
    }).output();
    await recording.ask("0.715");
    const { code, err } = await recording.end();
    equal(code, 1);
    match(err, /NOT SAVED; write these down:\n.*0\.715/);
    await Deno.remove(folder, { recursive: true });
  },
);
