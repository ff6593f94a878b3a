import { equal, match, ok } from "node:assert/strict";
import { startKernel } from "sagbook/protocol/start_kernel.ts";
import { command, pause, Session, textOf } from "./_session.ts";

const LOST =
  "and was started anew: all variables were lost, so run the cells above again";

Deno.test("Kernel() says that variables were lost when a cell ends the evaluator, and goes on", async () => {
  await using session = await Session.start();
  const { pid } = session.kernel;
  await session.run("const keep = 7");
  const { error, printed } = await session.run(
    "console.log('second'); Deno.exit(3)",
  );
  equal(printed, "second\n");
  equal(error?.ename, "EvaluatorRestarted");
  equal(error?.evalue, `the evaluator ended (exit code 3) ${LOST}`);
  equal((await session.run("typeof keep")).value, '"undefined"');
  equal(session.kernel.pid, pid);
});

Deno.test("Kernel() says so as well when the evaluator is killed, in a cell or between two", async () => {
  if (Deno.build.os !== "linux") return;
  await using session = await Session.start();
  const running = session.run("Deno.kill(Deno.pid, 'SIGKILL'); while (true);");
  const { error } = await running;
  equal(error?.evalue, `the evaluator ended (signal SIGKILL) ${LOST}`);
  await session.run("const keep = 7");
  await session.run("setTimeout(() => Deno.exit(4), 50)");
  await pause(500);
  const next = await session.run("typeof keep");
  equal(next.value, '"undefined"');
  equal(
    textOf(next.outputs, "stderr"),
    `The evaluator ended (exit code 4) ${LOST}.\n`,
  );
  equal(textOf((await session.run("1")).outputs, "stderr"), "");
});

Deno.test("Kernel() forgets the types of lost variables", async () => {
  await using session = await Session.start({ check: true });
  await session.run("const keep = 7");
  await session.run("Deno.exit(3)");
  const { error } = await session.run("keep");
  match(error!.evalue, /Cannot find name 'keep'/);
});

/** How many processes are left; they have a while to end on a busy machine. */
async function left(session: Session): Promise<number> {
  let count = 1;
  for (let tries = 0; tries < 200 && count > 0; tries++) {
    count = (await session.processes()).length;
    if (count > 0) await pause(100);
  }
  return count;
}

Deno.test("Kernel() leaves no process after shutdown, after SIGTERM, and after it is killed in a busy cell", async () => {
  if (Deno.build.os !== "linux") return;
  const ends: Record<string, (session: Session) => Promise<void>> = {
    shutdown: async ({ kernel }) => {
      equal((await kernel.shutdown()).code, 0);
    },
    SIGTERM: async ({ kernel }) => {
      Deno.kill(kernel.pid, "SIGTERM");
      equal((await kernel.exited).code, 0);
    },
    SIGKILL: async ({ kernel }) => {
      Deno.kill(kernel.pid, "SIGKILL");
      await kernel.exited;
    },
  };
  for (const [name, end] of Object.entries(ends)) {
    const session = await Session.start({ check: true });
    await session.run("1 + 1");
    const busy = session.run("while (true);").catch(() => {});
    await pause(500);
    const before = await session.processes();
    ok(before.length >= 3, `${name}: ${before.length} processes`);
    await end(session);
    await busy;
    equal(await left(session), 0, name);
    await Deno.remove(session.folder, { recursive: true });
  }
});

Deno.test("Kernel() ends when the process that started it is gone", async () => {
  if (Deno.build.os !== "linux") return;
  const session = import.meta.resolve("./_session.ts");
  const code = `
    const { Session } = await import(${JSON.stringify(session)});
    const s = await Session.start();
    await s.run("1");
    console.log(JSON.stringify({ mark: s.mark, folder: s.folder }));
    Deno.kill(Deno.pid, "SIGKILL");`;
  const { stdout } = await new Deno.Command(Deno.execPath(), {
    args: ["eval", "--no-check", code],
  }).output();
  const { mark, folder } = JSON.parse(new TextDecoder().decode(stdout));
  const { processes } = Session.prototype;
  const gone = { mark, processes } as Session;
  equal(await left(gone), 0);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("Kernel() says that a cell took more memory than there is", async () => {
  const kernel = await startKernel(command(false), {
    env: { DENO_V8_FLAGS: "--max-old-space-size=256" },
  });
  const printed: string[] = [];
  const { error } = await kernel.execute(
    "const all: unknown[] = []; while (true) all.push(new Array(1e5).fill(1.5));",
    {
      timeLimit: 120_000,
      onOutput: (output) => {
        if (output.output_type === "stream") printed.push(String(output.text));
      },
    },
  );
  equal(
    error?.evalue,
    "the evaluator ended (the cell took more memory than there is) and was started anew: all variables were lost, so run the cells above again",
  );
  equal(printed.join("").includes("GC"), false);
  await kernel.shutdown();
});
