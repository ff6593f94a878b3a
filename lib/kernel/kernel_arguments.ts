/**
 * The words after `deno task kernel`.
 *
 * @module
 */
import type { PermissionLimits } from "./permission_limits.ts";

/** What the words ask for. */
export type KernelArguments =
  | {
    /** Be a kernel. */
    readonly action: "serve";
    /** The file that the front end wrote. */
    readonly connectionFile: string;
    /** The package's deno.json. */
    readonly config?: string;
    /** Whether cells are type-checked. */
    readonly check: boolean;
    /** What notebooks may do; anything unless given. */
    readonly limits?: PermissionLimits;
  }
  | {
    /** Put a kernelspec where front ends look for it, or take it away. */
    readonly action: "install" | "uninstall";
    /** Folder under which `share/jupyter/kernels` is; the user's own unless given. */
    readonly prefix?: string;
    /** Whether cells are type-checked. */
    readonly check: boolean;
  }
  | {
    /** Say what words there are. */
    readonly action: "help";
  };

/**
 * Reads the words after `deno task kernel`.
 *
 * @param words As the runtime gives them.
 * @returns What is asked for.
 * @throws {SyntaxError} If a word is not known or lacks its value.
 *
 * @example
 * ```ts
 * import { parseKernelArguments } from "sagbook/kernel/kernel_arguments.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(parseKernelArguments(["--prefix", "/opt/jupyter"]), {
 *   action: "install",
 *   prefix: "/opt/jupyter",
 *   check: true,
 * });
 * ```
 */
export function parseKernelArguments(
  words: readonly string[],
): KernelArguments {
  const rest = [...words];
  let action: KernelArguments["action"] = "install";
  if (rest[0] === "serve" || rest[0] === "uninstall") {
    action = rest.shift() as "serve" | "uninstall";
  }
  let check = true;
  let prefix: string | undefined;
  let connectionFile: string | undefined;
  let config: string | undefined;
  let limits: PermissionLimits | undefined;
  while (rest.length > 0) {
    const [word, inline] = splitOnce(rest.shift()!);
    const value = () => {
      const found = inline ?? rest.shift();
      if (!found) {
        throw new SyntaxError(
          `Cannot run the task as ${word} must be followed by a value: there is none`,
        );
      }
      return found;
    };
    if (word === "--help" || word === "-h") return { action: "help" };
    else if (word === "--no-check") check = false;
    else if (word === "--user" && action !== "serve") prefix = undefined;
    else if (word === "--uninstall") action = "uninstall";
    else if (word === "--prefix" && action !== "serve") prefix = value();
    else if (word === "--connection-file" && action === "serve") {
      connectionFile = value();
    } else if (word === "--config" && action === "serve") config = value();
    else if (word === "--limits" && action === "serve") {
      limits = JSON.parse(value());
    } else {
      throw new SyntaxError(
        `Cannot run the task as its words must be known ones: current value is ${
          JSON.stringify(word)
        } (see deno task kernel --help)`,
      );
    }
  }
  if (action !== "serve") {
    return { action, check, ...(prefix !== undefined && { prefix }) };
  }
  if (connectionFile === undefined) {
    throw new SyntaxError(
      "Cannot serve as a kernel as --connection-file must be given: it is not",
    );
  }
  return {
    action,
    connectionFile,
    check,
    ...(config !== undefined && { config }),
    ...(limits !== undefined && { limits }),
  };
}

function splitOnce(word: string): [string, string | undefined] {
  const at = word.indexOf("=");
  return at < 0 ? [word, undefined] : [word.slice(0, at), word.slice(at + 1)];
}
