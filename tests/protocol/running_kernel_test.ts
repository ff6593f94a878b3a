import { deepEqual, equal, match, rejects } from "node:assert/strict";
import type {
  ExecuteOptions,
  ExecuteResult,
} from "sagbook/protocol/execute.ts";
import type { KernelOutput } from "sagbook/protocol/kernel_output.ts";
import type { RunningKernel } from "sagbook/protocol/running_kernel.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";

// Interoperation: the kernel that comes with Deno 2.9.6, whose transport is
// written in Rust by other people.
const DENO = [
  Deno.execPath(),
  "jupyter",
  "--kernel",
  "--conn",
  "{connection_file}",
];

async function run(
  kernel: RunningKernel,
  code: string,
  options: ExecuteOptions = {},
): Promise<ExecuteResult & { outputs: KernelOutput[]; late: KernelOutput[] }> {
  const outputs: KernelOutput[] = [];
  const late: KernelOutput[] = [];
  const result = await kernel.execute(code, {
    ...options,
    onOutput: (output, origin) => (origin.late ? late : outputs).push(output),
  });
  return { ...result, outputs, late };
}

Deno.test("RunningKernel.execute() gives status, count and every kind of output of Deno's own kernel", async () => {
  await using kernel = await startKernel(DENO);
  equal(kernel.info.implementation, "Deno kernel");
  const first = await run(
    kernel,
    `console.log("sag"); console.error("edge");
     await Deno.jupyter.display({ "text/html": "<b>R</b>" }, { raw: true });
     ({ [Symbol.for("Jupyter.display")]: () => ({ "text/markdown": "*R*" }) })`,
  );
  equal(first.status, "ok");
  equal(first.executionCount, 1);
  // That kernel may send printed text, and what is shown, after the cell's end.
  const given = () => [...first.outputs, ...first.late];
  const textOf = (wanted: string) =>
    given().map((o) =>
      o.output_type === "stream" && o.name === wanted ? o.text : ""
    ).join("");
  const isShown = (type: string, mime: string, text: string) =>
    given().some((o) =>
      o.output_type === type && "data" in o && o.data[mime] === text
    );
  while (
    !textOf("stdout") || !textOf("stderr") ||
    !isShown("display_data", "text/html", "<b>R</b>") ||
    !isShown("execute_result", "text/markdown", "*R*")
  ) await new Promise((done) => setTimeout(done, 20));
  deepEqual([textOf("stdout"), textOf("stderr")], ["sag\n", "edge\n"]);
  const failed = await run(kernel, "throw new RangeError('sag below 0')");
  equal(failed.status, "error");
  equal(failed.error?.ename, "RangeError");
  equal(failed.error?.evalue, "sag below 0");
  deepEqual(failed.outputs.map((o) => o.output_type), ["error"]);
  const silent = await run(kernel, "6 * 7", { silent: true });
  equal(silent.status, "ok");
});

Deno.test("RunningKernel.execute() passes questions for input on and answers them", async () => {
  await using kernel = await startKernel(DENO);
  const { status } = await run(
    kernel,
    "if (prompt('ring?') !== '60 mm') throw new Error('wrong')",
    { onInput: (prompt) => prompt.trim() === "ring?" ? "60 mm" : prompt },
  );
  equal(status, "ok");
});

Deno.test("RunningKernel.execute() rejects when a listener throws, and the kernel goes on", async () => {
  await using kernel = await startKernel(DENO);
  await rejects(
    kernel.execute("console.log(1)", {
      onOutput: () => {
        throw new Error("disk full");
      },
    }),
    { message: "disk full" },
  );
  equal((await run(kernel, "1")).status, "ok");
});

Deno.test("RunningKernel.execute() stops a cell at its time limit and says that the kernel lives", async () => {
  await using kernel = await startKernel(DENO);
  await run(kernel, "var keep = 7");
  await rejects(kernel.execute("while (true);", { timeLimit: 300 }), {
    name: "TimeLimitError",
    message: "the cell ran longer than 0.3 s and was stopped",
    kernelLives: true,
  });
  const { outputs } = await run(kernel, "keep");
  match(JSON.stringify(outputs), /7/);
});

Deno.test("RunningKernel.execute() ends a kernel that cannot stop its cell", async () => {
  const kernel = await startKernel(DENO);
  // With Deno 2.9.6 a loop after an await is not ended by an interrupt.
  await rejects(
    kernel.execute("await 0; while (true);", {
      timeLimit: 300,
      graceLimit: 300,
    }),
    {
      message:
        "the cell ran longer than 0.3 s and did not stop when asked, so the kernel was ended",
    },
  );
  equal((await kernel.exited).signal, "SIGKILL");
});

Deno.test("RunningKernel.execute() tells within 10 s that the kernel ended in mid cell, with exit code and outputs", async () => {
  const kernel = await startKernel(DENO);
  let printed = "";
  await rejects(
    kernel.execute(
      "console.log('first'); await new Promise((d) => setTimeout(d, 200)); Deno.exit(3)",
      {
        timeLimit: 10_000,
        onOutput: (o) => printed += o.output_type === "stream" ? o.text : "",
      },
    ),
    { name: "KernelDiedError", message: "the kernel ended (exit code 3)" },
  );
  equal(printed, "first\n");
  const { code, expected } = await kernel.exited;
  deepEqual([code, expected], [3, false]);
  await rejects(kernel.execute("1"), { name: "KernelDiedError" });
  equal((await kernel.shutdown()).code, 3);
});

Deno.test("RunningKernel.execute() tells of a kernel killed from outside", async () => {
  const kernel = await startKernel(DENO);
  const running = kernel.execute(
    "await new Promise((d) => setTimeout(d, 1e6))",
  );
  Deno.kill(kernel.pid, "SIGKILL");
  await rejects(running, { message: "the kernel ended (signal SIGKILL)" });
});

Deno.test("RunningKernel.shutdown() leaves no process and no open port", async () => {
  const kernel = await startKernel(DENO);
  const exit = await kernel.shutdown();
  deepEqual([exit.code, exit.expected], [0, true]);
  for (const at of Object.values(kernel.connection.endpoints)) {
    await rejects(Deno.connect(at), Deno.errors.ConnectionRefused);
  }
  if (Deno.build.os === "linux") {
    await rejects(Deno.stat(`/proc/${kernel.pid}`), Deno.errors.NotFound);
  }
});

Deno.test("RunningKernel.execute() hands late output to the cell that the kernel names", async () => {
  await using kernel = await startKernel(DENO);
  const late = Promise.withResolvers<string>();
  await kernel.execute("setTimeout(() => console.log('late'), 100)", {
    onOutput: (output, origin) => {
      if (output.output_type === "stream" && origin.late) {
        late.resolve(output.text);
      }
    },
  });
  equal(await late.promise, "late\n");
});

Deno.test("RunningKernel.interrupt() can be a signal, which ends Deno's own kernel", async () => {
  const kernel = await startKernel(DENO, { interruptBy: "signal" });
  const running = kernel.execute(
    "await new Promise((d) => setTimeout(d, 1e6))",
  );
  await new Promise((done) => setTimeout(done, 300));
  await kernel.interrupt();
  await rejects(running, { name: "KernelDiedError" });
});
