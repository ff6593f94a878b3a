import { deepEqual, equal, rejects } from "node:assert/strict";
import { chooseKernel } from "sagbook/notebook/mod.ts";

/** Calls `run` while only the given kernels are installed. */
async function withKernels(
  specs: Readonly<Record<string, string>>,
  run: (folder: string) => Promise<void>,
): Promise<void> {
  const folder = await Deno.makeTempDir();
  const names = ["JUPYTER_PATH", "JUPYTER_DATA_DIR"];
  const before = names.map((name) => Deno.env.get(name));
  for (const [name, text] of Object.entries(specs)) {
    await Deno.mkdir(`${folder}/kernels/${name}`, { recursive: true });
    await Deno.writeTextFile(`${folder}/kernels/${name}/kernel.json`, text);
  }
  Deno.env.set("JUPYTER_PATH", folder);
  Deno.env.set("JUPYTER_DATA_DIR", `${folder}/none`);
  try {
    await run(folder);
  } finally {
    names.forEach((name, i) =>
      before[i] === undefined
        ? Deno.env.delete(name)
        : Deno.env.set(name, before[i])
    );
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("chooseKernel() takes command, environment and interrupt from an installed kernel", async () => {
  const argv = ["/opt/kernel", "-f", "{connection_file}"];
  await withKernels({
    polite: JSON.stringify({
      argv,
      env: { A: "1" },
      interrupt_mode: "message",
    }),
    plain: JSON.stringify({ argv }),
  }, async () => {
    deepEqual(await chooseKernel("polite"), {
      name: "polite",
      command: argv,
      env: { A: "1" },
      interruptBy: "message",
    });
    equal((await chooseKernel("plain")).interruptBy, "signal");
  });
});

Deno.test("chooseKernel() knows the running Deno, and takes a command as it is", async () => {
  const { command } = await chooseKernel("deno");
  deepEqual(command, [
    Deno.execPath(),
    "jupyter",
    "--kernel",
    "--conn",
    "{connection_file}",
  ]);
  const own = ["/opt/kernel", "{connection_file}"];
  deepEqual((await chooseKernel(own)).command, own);
});

Deno.test("chooseKernel() refuses a name that is not installed or leads out of its folder, and a broken description", async () => {
  await withKernels({
    broken: "{",
    hollow: JSON.stringify({ argv: "run" }),
  }, async (folder) => {
    for (const name of ["dino", "../broken", ""]) {
      await rejects(() => chooseKernel(name), (error: Error) => {
        equal(error.name, "RangeError");
        equal(
          error.message.startsWith(
            `Cannot start kernel "${name}" as no kernel of that name is installed: there are broken, deno, hollow`,
          ),
          true,
          error.message,
        );
        return true;
      });
    }
    await rejects(() => chooseKernel("broken"), {
      name: "SyntaxError",
      message:
        `Cannot read ${folder}/kernels/broken/kernel.json as it must hold JSON`,
    });
    await rejects(() => chooseKernel("hollow"), {
      name: "SyntaxError",
      message:
        `Cannot start kernel "hollow" as \`argv\` in ${folder}/kernels/hollow/kernel.json must be a list of texts`,
    });
  });
});
