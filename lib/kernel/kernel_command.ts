/**
 * The command that starts this package's kernel.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { PermissionLimits } from "./permission_limits.ts";

/** Settings of the command. */
export interface KernelCommandSettings {
  /** Path or URL of the module that serves kernels. */
  readonly main: string;
  /** Path of the package's deno.json. */
  readonly config: string;
  /** Whether cells are type-checked; true unless told. */
  readonly check?: boolean;
  /** What notebooks may do; anything unless given. */
  readonly limits?: PermissionLimits;
}

/**
 * Makes the command for a kernelspec, or for `startKernel`.
 *
 * It names the runtime and all files by absolute paths, so it works from any
 * folder, and any user may have any other runtime on the search path.
 *
 * @param settings Module, deno.json, check and limits.
 * @returns Program and arguments, with `{connection_file}` as a placeholder.
 *
 * @example
 * ```ts
 * import { kernelCommand } from "sagbook/kernel/kernel_command.ts";
 * import { equal } from "node:assert/strict";
 *
 * const command = kernelCommand({ main: "/p/kernel.ts", config: "/p/deno.json" });
 * equal(command[0], Deno.execPath());
 * equal(command.at(-1), "{connection_file}");
 * ```
 */
export function kernelCommand(settings: KernelCommandSettings): string[] {
  const { main, config, check = true, limits } = settings;
  return [
    Deno.execPath(),
    "run",
    "--allow-all",
    "--no-check",
    "--quiet",
    `--config=${config}`,
    main.startsWith("file:") ? fileURLToPath(main) : main,
    "serve",
    `--config=${config}`,
    ...(check ? [] : ["--no-check"]),
    // Not as words with commas, which a path may have as well.
    ...(limits ? [`--limits=${JSON.stringify(limits)}`] : []),
    "--connection-file",
    "{connection_file}",
  ];
}
