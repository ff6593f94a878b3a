/**
 * From the name of a kernel to the command that starts it.
 *
 * @module
 */
import { join } from "node:path";
import { readOrdinaryFile } from "../files/read_ordinary_file.ts";
import { userKernelFolder } from "../protocol/system.ts";
import { isJsonObject } from "./document.ts";

/** How a kernel is started and interrupted. */
export interface KernelChoice {
  /** What messages call it. */
  readonly name: string;
  /** Program and arguments; `{connection_file}` stands for the file's path. */
  readonly command: readonly string[];
  /** Variables added to its environment. */
  readonly env: Readonly<Record<string, string>>;
  /** How it is interrupted. */
  readonly interruptBy: "message" | "signal";
}

/** Folders in which kernels are installed, the first found counts. */
function kernelFolders(): string[] {
  const get = (name: string) => Deno.env.get(name) ?? "";
  const isWindows = Deno.build.os === "windows";
  const below = (folder: string) => join(folder, "kernels");
  return [
    ...get("JUPYTER_PATH").split(isWindows ? ";" : ":")
      .filter((path) => path !== "").map(below),
    userKernelFolder(),
    ...(isWindows
      ? [join(get("PROGRAMDATA"), "jupyter")]
      : ["/usr/local/share/jupyter", "/usr/share/jupyter"]).map(below),
  ];
}

async function readSpec(path: string): Promise<unknown> {
  let text: string;
  try {
    text = new TextDecoder().decode(await readOrdinaryFile(path));
  } catch {
    return undefined;
  }
  try {
    return JSON.parse(text);
  } catch {
    throw new SyntaxError(`Cannot read ${path} as it must hold JSON`);
  }
}

async function installedNames(): Promise<string[]> {
  const names = new Set(["deno"]);
  for (const folder of kernelFolders()) {
    try {
      for await (const entry of Deno.readDir(folder)) names.add(entry.name);
    } catch {
      // Not there, or not ours to read: nothing is installed in it.
    }
  }
  return [...names].sort();
}

/**
 * Finds the command of a kernel.
 *
 * The name `deno` is always known and means the kernel of the Deno that runs
 * this program; any other is looked up where Jupyter installs kernels. A list
 * is taken as the command itself.
 *
 * @param kernel A name, or program and arguments with `{connection_file}`.
 * @returns How to start it.
 * @throws {RangeError} If no kernel of that name is installed; the message
 * lists those that are.
 * @throws {SyntaxError} If the kernel's own description cannot be read.
 *
 * @see Jupyter documentation, "Making kernels for Jupyter" (kernel.json).
 *
 * @example
 * ```ts
 * import { chooseKernel } from "sagbook/notebook/kernel_choice.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { command } = await chooseKernel("deno");
 * equal(command[0], Deno.execPath());
 * ```
 */
export async function chooseKernel(
  kernel: string | readonly string[],
): Promise<KernelChoice> {
  if (typeof kernel !== "string") {
    return {
      name: kernel.join(" "),
      command: kernel,
      env: {},
      interruptBy: "message",
    };
  }
  if (kernel === "deno") {
    return {
      name: kernel,
      command: [
        Deno.execPath(),
        "jupyter",
        "--kernel",
        "--conn",
        "{connection_file}",
      ],
      env: {},
      interruptBy: "message",
    };
  }
  const isName = /^[\w.-]+$/.test(kernel);
  for (const folder of isName ? kernelFolders() : []) {
    const path = join(folder, kernel, "kernel.json");
    const spec = await readSpec(path);
    if (spec === undefined) continue;
    if (
      !isJsonObject(spec) || !Array.isArray(spec.argv) ||
      !spec.argv.every((word) => typeof word === "string")
    ) {
      throw new SyntaxError(
        `Cannot start kernel "${kernel}" as \`argv\` in ${path} must be a list of texts`,
      );
    }
    const env = isJsonObject(spec.env) ? spec.env : {};
    return {
      name: kernel,
      command: spec.argv as string[],
      env: Object.fromEntries(
        Object.entries(env).map(([name, value]) => [name, String(value)]),
      ),
      interruptBy: spec.interrupt_mode === "message" ? "message" : "signal",
    };
  }
  throw new RangeError(
    `Cannot start kernel "${kernel}" as no kernel of that name is installed: there are ${
      (await installedNames()).join(", ")
    }`,
  );
}
