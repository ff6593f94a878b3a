/** Kernels installed in a folder of their own, for Jupyter's programs. */
import { fileURLToPath } from "node:url";
import { installKernel } from "sagbook/kernel/install_kernel.ts";
import { kernelCommand } from "sagbook/kernel/kernel_command.ts";
import { writeRuntimeKernel } from "./_runtime_kernel.ts";

const path = (name: string) =>
  fileURLToPath(new URL(`../../${name}`, import.meta.url));

/** A folder with both kernels, and the variables that lead Jupyter to it. */
export async function installBoth(): Promise<{
  readonly folder: string;
  readonly env: Record<string, string>;
}> {
  const folder = await Deno.makeTempDir({ prefix: "jupyter-" });
  await installKernel({
    name: "sagbook",
    displayName: "sagbook",
    command: kernelCommand({
      main: path("lib/tasks/kernel.ts"),
      config: path("deno.json"),
    }),
    prefix: folder,
  });
  await writeRuntimeKernel(`${folder}/share/jupyter`);
  return {
    folder,
    env: {
      JUPYTER_PATH: `${folder}/share/jupyter`,
      JUPYTER_DATA_DIR: `${folder}/data`,
      JUPYTER_RUNTIME_DIR: `${folder}/run`,
      JUPYTER_CONFIG_DIR: `${folder}/config`,
    },
  };
}

/** Outcome of each test of Jupyter's suite, as it prints them. */
export interface SuiteResult {
  /** Name of the test, or of the part of one that failed, and what happened. */
  readonly lines: readonly string[];
  readonly run: number;
  readonly failures: number;
  readonly skipped: number;
  readonly text: string;
}

/** Runs Jupyter's tests for kernels on one of both. */
export async function runSuite(
  name: "sagbook" | "deno",
  env: Readonly<Record<string, string>>,
  cwd: string,
): Promise<SuiteResult> {
  const { stdout, stderr } = await new Deno.Command("/usr/bin/python3", {
    args: [path("tests/jupyter/kernel_suite.py")],
    env: { ...env, KERNEL_NAME: name },
    cwd,
  }).output();
  const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  const text = decode(stderr) + decode(stdout);
  const number = (pattern: RegExp) => Number(pattern.exec(text)?.[1] ?? 0);
  return {
    lines: text.split("\n").filter((line) =>
      /^(test_|FAIL|ERROR|\s+test_)/.test(line)
    ),
    run: number(/^Ran (\d+) tests?/m),
    failures: number(/failures=(\d+)/) + number(/errors=(\d+)/),
    skipped: number(/skipped=(\d+)/),
    text,
  };
}

/** Whether this machine has Jupyter's tests for kernels. */
export async function hasSuite(): Promise<boolean> {
  try {
    const { success } = await new Deno.Command("/usr/bin/python3", {
      args: ["-c", "import jupyter_kernel_test"],
      stderr: "null",
    }).output();
    return success;
  } catch {
    return false;
  }
}
