/**
 * How long the bench waits: from the command to the first prompt, and from a
 * typed reading to its answer, the disk included.
 */
import { copyPiece } from "../tasks/_run_task.ts";
import { Recording } from "../tasks/_record_folder.ts";

const folder = await copyPiece("metric-250");
const places = ["--zones", "centre", "--session", "bench"];

Deno.bench("task record, command to first prompt", {
  group: "start",
  n: 20,
  warmup: 2,
}, async () => {
  const recording = new Recording(folder, places);
  await recording.until(/: ?\n$/);
  recording.kill();
  await recording.end();
});

Deno.bench("task radius, command to answer", {
  group: "start",
  n: 20,
  warmup: 2,
}, async () => {
  const { success } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "lib/tasks/radius.ts", "0.417", "--folder", folder],
    stdout: "null",
  }).output();
  if (!success) throw new Error("no answer");
});

Deno.bench("an empty program, command to end", {
  group: "start",
  baseline: true,
  n: 20,
  warmup: 2,
}, async () => {
  await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "tests/benchmarks/_nothing.ts"],
    stdout: "null",
  }).output();
});

const running = new Recording(folder, places);
await running.until(/: ?\n$/);
for (let k = 0; k < 10; k++) await running.ask("0.417");
addEventListener("unload", () => running.kill());

Deno.bench("task record, a typed reading to its answer", {
  group: "echo",
  n: 100,
  warmup: 5,
}, async () => {
  const from = running.out.length;
  await running.type("0.417");
  await running.when((out) => out.indexOf(" mm: R", from) > 0, "an answer");
});

Deno.bench("task record, a reading taken back", {
  group: "echo",
  n: 40,
  warmup: 2,
}, async () => {
  const from = running.out.length;
  await running.type("-");
  await running.when((out) => out.indexOf("Taken back", from) > 0, "an answer");
});
