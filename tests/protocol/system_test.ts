import { equal, match, rejects, throws } from "node:assert/strict";
import { join } from "node:path";
import {
  expectProgram,
  guardedCommand,
  parentEnvironment,
  parentHasEnded,
  parentId,
  readPrivateText,
  signalProcess,
  userCacheFolder,
  userKernelFolder,
  writePrivateText,
} from "sagbook/protocol/system.ts";

Deno.test("writePrivateText() makes a file once, for its owner", async () => {
  const folder = await Deno.makeTempDir();
  const path = join(folder, "secret");
  await writePrivateText(path, "R");
  equal(await readPrivateText(path), "R");
  if (Deno.build.os !== "windows") {
    equal((await Deno.stat(path)).mode! & 0o077, 0);
  }
  await rejects(writePrivateText(path, "R"), Deno.errors.AlreadyExists);
  await Deno.remove(folder, { recursive: true });
});

Deno.test("parentHasEnded() is false while the parent lives and true for another id", () => {
  equal(parentHasEnded(parentId()), false);
  if (Deno.build.os !== "windows") equal(parentHasEnded(parentId() + 1), true);
  equal(parentEnvironment().JPY_PARENT_PID, String(Deno.pid));
});

Deno.test("userKernelFolder() and userCacheFolder() follow the user's settings", () => {
  const before = Deno.env.get("JUPYTER_DATA_DIR");
  Deno.env.set("JUPYTER_DATA_DIR", "/somewhere");
  equal(userKernelFolder(), join("/somewhere", "kernels"));
  Deno.env.delete("JUPYTER_DATA_DIR");
  match(userKernelFolder(), /jupyter[\\/]kernels$/i);
  match(userCacheFolder(), /sagbook$/);
  if (before !== undefined) Deno.env.set("JUPYTER_DATA_DIR", before);
});

Deno.test("onInterruptSignal() and onStopSignal() hear signals until taken away", async () => {
  if (Deno.build.os === "windows") return;
  const module = import.meta.resolve("../../lib/protocol/system.ts");
  const child = new Deno.Command(Deno.execPath(), {
    args: [
      "eval",
      `import { onInterruptSignal, onStopSignal } from ${
        JSON.stringify(module)
      };
      const heard = Promise.withResolvers();
      const off = onInterruptSignal(() => {
        console.log("interrupt");
        Deno.kill(Deno.pid, "SIGTERM");
      });
      const offStop = onStopSignal(() => heard.resolve());
      Deno.kill(Deno.pid, "SIGINT");
      await heard.promise;
      console.log("stop");
      off();
      offStop();
      Deno.kill(Deno.pid, "SIGTERM");
      setTimeout(() => console.log("not reached"), 5_000);`,
    ],
  });
  const { stdout, signal } = await child.output();
  equal(new TextDecoder().decode(stdout), "interrupt\nstop\n");
  equal(signal, "SIGTERM");
});

Deno.test("signalProcess() stops a process, and does nothing to one that has ended", async () => {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["eval", "setInterval(() => {}, 1000)"],
  }).spawn();
  signalProcess(child, "kill");
  equal((await child.status).signal, "SIGKILL");
  signalProcess(child, "interrupt");
});

Deno.test("expectProgram() finds a program by its path and on the search path, and names one that is not there", () => {
  expectProgram(Deno.execPath());
  expectProgram(Deno.build.os === "windows" ? "cmd" : "sh");
  if (Deno.build.os === "windows") return;
  throws(() => expectProgram("no-such-program"), {
    name: "NotFound",
    message:
      "Cannot start a program as it must be there: current value is no-such-program",
  });
  throws(() => expectProgram("/no/such/program"), { name: "NotFound" });
});

Deno.test({
  name:
    "guardedCommand() keeps process id, arguments and exit code, gives an empty standard input, and ends the program with the pipe",
  ignore: Deno.build.os === "windows",
  fn: async () => {
    const start = (...command: string[]) => {
      const [program, ...args] = guardedCommand(command);
      return new Deno.Command(program, {
        args,
        stdin: "piped",
        stdout: "piped",
      }).spawn();
    };
    const done = start(
      "sh",
      "-c",
      'cat; echo "$$|$1|$2"; exit 7',
      "x",
      "a b",
      "'",
    );
    const { code, stdout } = await done.output();
    equal(code, 7);
    equal(new TextDecoder().decode(stdout), `${done.pid}|a b|'\n`);
    const letGo = start("sleep", "0.3");
    const writer = letGo.stdin.getWriter();
    await writer.write(new TextEncoder().encode("\n"));
    await writer.close();
    equal((await letGo.output()).code, 0);
    const killed = start("sleep", "60");
    await killed.stdin.close();
    equal((await killed.output()).signal, "SIGKILL");
  },
});
