import { equal, match, rejects } from "node:assert/strict";
import { KernelDiedError } from "sagbook/protocol/kernel_error.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";
import { MARK, processesMarked } from "./_marked_processes.ts";

/** A "kernel" that runs a line of script and never answers. */
const script = (code: string) => [
  Deno.execPath(),
  "eval",
  code,
  "{connection_file}",
];

Deno.test("startKernel() tells that a program ended, with its exit code and its last words", async () => {
  const command = script("console.error('no licence'); Deno.exit(7)");
  await rejects(startKernel(command), (error) => {
    equal(error instanceof KernelDiedError, true);
    const { message, exit } = error as KernelDiedError;
    equal(message, "the kernel ended (exit code 7)");
    match(exit.log, /no licence/);
    return true;
  });
});

Deno.test("startKernel() ends a program that never answers, and leaves no file", async () => {
  let log = "";
  const command = script(
    "console.log(Deno.pid + ' ' + Deno.args[0]); setInterval(() => {}, 1000)",
  );
  await rejects(
    startKernel(command, { timeLimit: 1_500, onLog: (text) => log += text }),
    {
      name: "TimedOut",
      message:
        "Cannot start the kernel as it must answer within 1.5 s: it has not",
    },
  );
  const [pid, file] = log.trim().split(" ");
  if (Deno.build.os === "linux") {
    await rejects(Deno.stat(`/proc/${pid}`), Deno.errors.NotFound);
  }
  await rejects(Deno.stat(file), Deno.errors.NotFound);
});

Deno.test("startKernel() tries other ports when another process has taken one", async () => {
  const folder = await Deno.makeTempDir();
  const command = script(
    `const n = Deno.readDirSync(${JSON.stringify(folder)}).toArray().length;
     Deno.writeTextFileSync(${JSON.stringify(folder)} + "/" + n, "");
     if (n < 2) throw new Error("Address already in use (os error 98)");
     Deno.exit(5);`,
  );
  await rejects(startKernel(command), {
    message: "the kernel ended (exit code 5)",
  });
  equal([...Deno.readDirSync(folder)].length, 3);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("startKernel() refuses a command without a place for the connection file, and a missing program", async () => {
  await rejects(startKernel(["deno", "jupyter"]), {
    name: "RangeError",
    message:
      'Cannot start a kernel as its command must contain {connection_file}: current value is "deno jupyter"',
  });
  await rejects(
    startKernel(["/no/such/program", "{connection_file}"]),
    Deno.errors.NotFound,
  );
});

Deno.test({
  name:
    "startKernel() starts nothing that outlives its process, killed at any moment of the start",
  ignore: Deno.build.os !== "linux",
  fn: async () => {
    const client = `
      import { startKernel } from "sagbook/protocol/start_kernel.ts";
      const own = Deno.args[0] === "own";
      // In a shared group a program's own children are its own affair.
      const program = own ? "sleep 60 & sleep 60" : "exec sleep 60";
      const command = ["sh", "-c", program, "{connection_file}"];
      console.log("begins");
      await startKernel(command, { ownGroup: own });`;
    for (const group of ["own", "shared"]) {
      for (const wait of [0, 2, 5, 10, 20, 50, 100, 300]) {
        const mark = crypto.randomUUID();
        const child = new Deno.Command(Deno.execPath(), {
          args: ["eval", `--config=deno.json`, client, group],
          env: { [MARK]: mark },
          stdin: "null",
          stdout: "piped",
          stderr: "null",
        }).spawn();
        const reader = child.stdout.getReader();
        await reader.read();
        await new Promise((done) => setTimeout(done, wait));
        child.kill("SIGKILL");
        await reader.cancel();
        await child.status;
        const left = await processesMarked(mark);
        for (const pid of left) Deno.kill(Number(pid), "SIGKILL");
        equal(left.length, 0, `${group}, ${wait} ms: ${left}`);
      }
    }
  },
});
