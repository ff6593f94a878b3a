/**
 * Offering the kernel to front ends.
 *
 * @module
 */
import { join } from "node:path";
import { expectWritable } from "../files/expect_writable.ts";
import { readOrdinaryFile } from "../files/read_ordinary_file.ts";
import { writeAtomically } from "../files/write_atomically.ts";
import { userKernelFolder } from "../protocol/system.ts";

/** What is installed, and where. */
export interface InstallSettings {
  /** Name of the folder, and of the kernel in a notebook's file. */
  readonly name: string;
  /** Name in a front end's menu. */
  readonly displayName: string;
  /** The kernel's command, with `{connection_file}`. */
  readonly command: readonly string[];
  /**
   * Folder under which `share/jupyter/kernels` is, such as that of an
   * environment; the user's own kernels unless given.
   */
  readonly prefix?: string;
}

/**
 * Finds the folder of a kernelspec.
 *
 * @param name Name of the kernel.
 * @param prefix As in {@linkcode InstallSettings}.
 * @returns Its path, which need not exist.
 * @see Jupyter documentation, "Data files" and "Making kernels for Jupyter".
 */
export function kernelFolder(name: string, prefix?: string): string {
  return prefix === undefined
    ? join(userKernelFolder(), name)
    : join(prefix, "share", "jupyter", "kernels", name);
}

/**
 * Writes a kernelspec, over an older one of this kernel.
 *
 * It asks for interrupts by message: a signal would go to every process of the
 * kernel, and says nothing about the cell that is meant.
 *
 * @param settings Names, command and place.
 * @returns Path of the folder.
 * @throws {Deno.errors.AlreadyExists} If another kernel has that name there.
 * @throws {Error} If it cannot be written; an older one is then untouched.
 *
 * @example
 * ```ts
 * import { installKernel, uninstallKernel } from "sagbook/kernel/install_kernel.ts";
 * import { equal } from "node:assert/strict";
 *
 * const prefix = await Deno.makeTempDir();
 * const folder = await installKernel({
 *   name: "sagbook",
 *   displayName: "TypeScript (sagbook)",
 *   command: ["deno", "run", "kernel.ts", "serve", "{connection_file}"],
 *   prefix,
 * });
 * const spec = JSON.parse(await Deno.readTextFile(`${folder}/kernel.json`));
 * equal(spec.interrupt_mode, "message");
 * equal(await uninstallKernel("sagbook", prefix), folder);
 * ```
 */
export async function installKernel(
  settings: InstallSettings,
): Promise<string> {
  const { name, displayName, command, prefix } = settings;
  const folder = kernelFolder(name, prefix);
  await refuseForeign(folder);
  const spec = {
    argv: command,
    display_name: displayName,
    language: "typescript",
    interrupt_mode: "message",
    metadata: { [OWN_MARK]: true, debugger: false },
  };
  const text = `${JSON.stringify(spec, null, 2)}\n`;
  await expectWritable(folder, "the kernel");
  await writeAtomically(join(folder, "kernel.json"), text);
  return folder;
}

/**
 * Takes a kernelspec away, if it is this kernel's.
 *
 * @param name Name of the kernel.
 * @param prefix As in {@linkcode InstallSettings}.
 * @returns Path of the folder that was removed; undefined if there was none.
 * @throws {Deno.errors.AlreadyExists} If another kernel has that name there.
 */
export async function uninstallKernel(
  name: string,
  prefix?: string,
): Promise<string | undefined> {
  const folder = kernelFolder(name, prefix);
  if (!await refuseForeign(folder)) return undefined;
  await Deno.remove(folder, { recursive: true });
  return folder;
}

const OWN_MARK = "sagbook";

/** Tells whether there is a kernelspec of ours; throws at a stranger's. */
async function refuseForeign(folder: string): Promise<boolean> {
  let text: string;
  try {
    const bytes = await readOrdinaryFile(join(folder, "kernel.json"));
    text = new TextDecoder().decode(bytes);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return false;
    if (error instanceof Deno.errors.NotADirectory) return false;
    throw error;
  }
  let own = false;
  try {
    own = JSON.parse(text)?.metadata?.[OWN_MARK] === true;
  } catch {
    // Not JSON, so not ours.
  }
  if (!own) {
    throw new Deno.errors.AlreadyExists(
      `Cannot change the kernel in ${folder} as it must be one of this package: it is another`,
    );
  }
  return true;
}
