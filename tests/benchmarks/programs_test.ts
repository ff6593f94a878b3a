import { deepEqual, equal, ok, rejects } from "node:assert/strict";
import { readBenchReport } from "sagbook/tasks/_benchmark.ts";
import { ROOT, runTask } from "../tasks/_run_task.ts";
import { farthestApart, median } from "./_side_by_side.ts";
import { wholeProgram } from "./_whole_program.ts";

const FOLDER = `${ROOT}tests/benchmarks`;
const NAMES = [...Deno.readDirSync(FOLDER)]
  .map(({ name }) => /^([^_].*)_bench\.ts$/.exec(name)?.[1])
  .filter((name) => name !== undefined)
  .sort();

for (const name of NAMES) {
  Deno.test(`benchmark ${name} runs in its smallest size, ours and its peer`, async () => {
    const { success, stdout, stderr } = await new Deno.Command(
      Deno.execPath(),
      {
        args: ["run", "-A", `${FOLDER}/${name}_bench.ts`, "--tiny"],
        env: { NO_COLOR: "1" },
        cwd: ROOT,
        stdin: "null",
        stdout: "piped",
        stderr: "piped",
      },
    ).output();
    ok(success, new TextDecoder().decode(stderr));
    const { rows } = readBenchReport(new TextDecoder().decode(stdout));
    for (const { what, peer } of rows) {
      if (peer?.missing === undefined) continue;
      const skipped = `${what} beside ${peer.name} needs ${peer.missing}`;
      if (Deno.env.get("SAGBOOK_ALL") === "1") throw new Error(skipped);
      console.log(`skipped: ${skipped}`);
    }
  });
}

Deno.test("task bench writes its table where it is told, part by part, and keeps the others", async () => {
  const out = await Deno.makeTempDir({ prefix: "bench-" });
  try {
    for (const name of ["contact", "profile"]) {
      const { code, out: said } = await runTask("bench", [
        "--tiny",
        "--out",
        out,
        name,
      ]);
      // 3 where SciPy is not installed.
      ok(code === 0 || code === 3, said);
    }
    const kept = JSON.parse(await Deno.readTextFile(`${out}/RESULTS.json`));
    // In the order of the table, not of the runs.
    deepEqual(kept.map(({ name }: { name: string }) => name), [
      "profile",
      "contact",
    ]);
    const text = await Deno.readTextFile(`${out}/RESULTS.md`);
    ok(text.includes("## Contact simulator"));
    ok(text.includes("## Profile of a surface"));
  } finally {
    await Deno.remove(out, { recursive: true });
  }
});

Deno.test("wholeProgram() gives time and memory of a program, and quotes one that fails", async () => {
  const { ms, peak } = await wholeProgram([
    Deno.execPath(),
    "eval",
    "const all = new Uint8Array(1e8).fill(1); await new Promise((done) => setTimeout(done, 300)); all.length",
  ]);
  ok(ms >= 300, `${ms} ms`);
  // 100 MB are resident while it waits; nothing is known without /proc.
  ok(Deno.build.os !== "linux" || peak > 100, `${peak} MB`);
  await rejects(
    wholeProgram([Deno.execPath(), "eval", "throw new Error('no room')"]),
    /failed: [\s\S]*no room/,
  );
  await rejects(wholeProgram(["no-such-program-anywhere"]), {
    name: "NotFound",
  });
});

Deno.test("median() and farthestApart() by hand", () => {
  equal(median([3, 1, 2]), 2);
  equal(median([4, 1, 2, 3]), 2.5);
  equal(farthestApart([1, 100], [0.5, 99]), 0.5);
  equal(farthestApart([1000], [1001]).toFixed(6), "0.000999");
  equal(farthestApart([1], [1, 2]), Infinity);
});
