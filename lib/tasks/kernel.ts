/**
 * `deno task kernel`: installs the notebook kernel; what a front end starts is
 * this file as well.
 *
 * @module
 */
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  type KernelArguments,
  parseKernelArguments,
} from "../kernel/kernel_arguments.ts";
import { explainUnitMixUp } from "../units/explain_unit_mix_up.ts";
import { VERSION } from "../version.ts";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const NAME = "sagbook";
const DISPLAY_NAME = "TypeScript, checked (sagbook)";

const HELP = `deno task kernel [--user | --prefix FOLDER] [--no-check]
  tries the notebook kernel, then installs it for Jupyter front ends:
  --user           for the current user (the default)
  --prefix FOLDER  under FOLDER/share/jupyter/kernels
  --no-check       cells are not type-checked before they run
deno task kernel uninstall [--user | --prefix FOLDER]
  takes it away again

  --help           this text

Exit codes: 0 done, 1 the kernel did not work or could not be installed,
2 wrong call.`;

/** Words of the task; those of `serve` are for front ends. */
const WORDS = ["--user", "--prefix", "--no-check", "--uninstall", "--help"];

async function serve(
  given: KernelArguments & { action: "serve" },
): Promise<void> {
  const { serveKernel } = await import("../kernel/serve_kernel.ts");
  await serveKernel(given.connectionFile, {
    folder: Deno.cwd(),
    packageConfig: given.config,
    check: given.check,
    limits: given.limits,
    explainers: [explainUnitMixUp],
    version: VERSION,
  });
}

async function install(
  given: KernelArguments & { action: "install" | "uninstall" },
): Promise<void> {
  const { installKernel, uninstallKernel } = await import(
    "../kernel/install_kernel.ts"
  );
  const { prefix, check } = given;
  if (given.action === "uninstall") {
    const folder = await uninstallKernel(NAME, prefix);
    console.log(folder ? `uninstalled: ${folder}` : "it was not installed");
    return;
  }
  const { kernelCommand } = await import("../kernel/kernel_command.ts");
  const { proveKernel } = await import("../kernel/prove_kernel.ts");
  const command = kernelCommand({
    main: import.meta.url,
    config: join(ROOT, "deno.json"),
    check,
  });
  console.log("trying the kernel: one cell, one interrupt …");
  const proof = await proveKernel(command, NAME);
  const seconds = (proof.firstValue / 1000).toFixed(1);
  const stopped = Math.round(proof.interrupt);
  console.log(
    `it works: first value after ${seconds} s, a busy loop stopped in ${stopped} ms, variables kept`,
  );
  const folder = await installKernel({
    name: NAME,
    displayName: DISPLAY_NAME,
    command,
    prefix,
  });
  console.log(`installed "${DISPLAY_NAME}": ${folder}`);
}

/** Reads the call; a wrong one ends the program. */
async function readCall(): Promise<KernelArguments> {
  try {
    return parseKernelArguments(Deno.args);
  } catch (error) {
    const { plainWords, unknownWord, wrongCall } = await import(
      "./_task_words.ts"
    );
    const flag = Deno.args.find((word) => /^-/.test(word))?.split("=")[0];
    const isUnknown = flag !== undefined && !WORDS.includes(flag) &&
      Deno.args[0] !== "serve";
    const wrong = isUnknown
      ? unknownWord("flag", flag, WORDS)
      : plainWords(error);
    console.error(wrongCall(wrong, HELP));
    Deno.exit(2);
  }
}

if (import.meta.main) {
  try {
    const given = await readCall();
    if (given.action === "help") console.log(HELP);
    else if (given.action === "serve") await serve(given);
    else await install(given);
    Deno.exit(0);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    Deno.exit(1);
  }
}
