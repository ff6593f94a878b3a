import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  installKernel,
  kernelFolder,
  uninstallKernel,
} from "sagbook/kernel/install_kernel.ts";
import { proveKernel } from "sagbook/kernel/prove_kernel.ts";
import { startKernel } from "sagbook/protocol/start_kernel.ts";
import { inFolder } from "../files/_in_folder.ts";
import { command } from "./_session.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

async function task(...args: string[]) {
  const { code, stdout, stderr } = await inFolder((cwd) =>
    new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", join(ROOT, "lib/tasks/kernel.ts"), ...args],
      cwd,
      env: { NO_COLOR: "1" },
    }).output()
  );
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
}

Deno.test("task kernel proves itself, installs, serves a notebook anywhere by its spec alone, and goes away", async () => {
  const prefix = await Deno.makeTempDir();
  const { code, out, err } = await task("--prefix", prefix);
  equal(code, 0, err);
  match(
    out,
    /it works: first value after [\d.]+ s, a busy loop stopped in \d+ ms, variables kept\ninstalled "TypeScript, checked \(sagbook\)": /,
  );
  const folder = kernelFolder("sagbook", prefix);
  const spec = JSON.parse(await Deno.readTextFile(`${folder}/kernel.json`));
  deepEqual(
    [spec.language, spec.interrupt_mode, spec.argv[0]],
    ["typescript", "message", Deno.execPath()],
  );
  const elsewhere = await Deno.makeTempDir();
  await Deno.writeTextFile(`${elsewhere}/readings.csv`, "0.715");
  {
    await using kernel = await startKernel(spec.argv, { cwd: elsewhere });
    let value: unknown;
    const { status, error } = await kernel.execute(
      "import { millimetres } from 'sagbook/units/length.ts';\nmillimetres(Number(await Deno.readTextFile('readings.csv')))",
      {
        onOutput: (o) => {
          if (o.output_type === "execute_result") value = o.data["text/plain"];
        },
      },
    );
    equal(status, "ok", `${error?.evalue}`);
    equal(value, "0.715");
  }
  equal(
    (await task("uninstall", "--prefix", prefix)).out,
    `uninstalled: ${folder}\n`,
  );
  await rejects(Deno.stat(folder), Deno.errors.NotFound);
  equal(
    (await task("uninstall", "--prefix", prefix)).out,
    "it was not installed\n",
  );
  const wrong = await task("--fast");
  equal(wrong.code, 2);
  match(wrong.err, /^There is no flag --fast\. Known: --user/);
  match((await task("--help")).out, /^deno task kernel \[--user/);
  for (const path of [prefix, elsewhere]) {
    await Deno.remove(path, { recursive: true });
  }
});

Deno.test("installKernel() leaves a kernel of another package alone", async () => {
  const prefix = await Deno.makeTempDir();
  const folder = kernelFolder("sagbook", prefix);
  await Deno.mkdir(folder, { recursive: true });
  await Deno.writeTextFile(join(folder, "kernel.json"), '{"argv":[]}');
  const error = {
    name: "AlreadyExists",
    message:
      `Cannot change the kernel in ${folder} as it must be one of this package: it is another`,
  };
  const settings = { name: "sagbook", displayName: "", command: [], prefix };
  await rejects(installKernel(settings), error);
  await rejects(uninstallKernel("sagbook", prefix), error);
  await Deno.remove(prefix, { recursive: true });
});

Deno.test("proveKernel() accepts this kernel", async () => {
  const proof = await proveKernel(command(false));
  ok(proof.firstValue > 0 && proof.interrupt > 0);
});

Deno.test("proveKernel() refuses a kernel that colours its values, or a library that is not there", async () => {
  const own = [
    Deno.execPath(),
    "jupyter",
    "--kernel",
    "--conn",
    "{connection_file}",
  ];
  const colours = Deno.env.get("NO_COLOR");
  Deno.env.delete("NO_COLOR");
  try {
    await rejects(
      proveKernel(own),
      /Cannot use the kernel: a cell should give 1.5/,
    );
  } finally {
    if (colours !== undefined) Deno.env.set("NO_COLOR", colours);
  }
  // Without colours its values are right, if late at times, but a stop loses
  // every variable.
  Deno.env.set("NO_COLOR", "1");
  try {
    await rejects(
      proveKernel(own),
      /Cannot use the kernel: (an interrupt did not stop a loop|.* current value is undefined)/,
    );
  } finally {
    if (colours === undefined) Deno.env.delete("NO_COLOR");
  }
  await rejects(
    proveKernel(command(false), "no-such-library"),
    /Cannot use the kernel: a cell failed/,
  );
});
