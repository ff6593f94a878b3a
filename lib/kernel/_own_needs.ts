import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { userCacheFolder } from "../protocol/system.ts";
import type { PermissionLimits } from "./permission_limits.ts";

/**
 * Adds to a notebook's limits what the evaluator itself must do: read the
 * package (not what else lies in its folder, such as a user's pieces), the
 * workspace and the runtime's cache of modules, and talk to its kernel over the given ports of this machine; while it starts, enter the
 * notebook's folder; load a package that looks whether it is being debugged.
 */
export function withOwnNeeds(
  limits: PermissionLimits,
  workspace: string,
  ports: readonly number[] | "any" = [],
  folder?: string,
): PermissionLimits {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  const hosts = ports === "any"
    ? ["127.0.0.1"]
    : ports.map((port) => `127.0.0.1:${port}`);
  return {
    ...limits,
    read: add(limits.read, [
      ...PACKAGE.map((name) => join(root, name)),
      workspace,
      runtimeCache(),
      ...(folder === undefined ? [] : [folder]),
    ]),
    net: add(limits.net, hosts),
    env: add(limits.env, ASKED_AT_LOADING),
  };
}

/** What a notebook reads of the package; `data` are its invented pieces. */
const PACKAGE = ["lib", "notebooks", "data", "deno.json", "deno.lock"];

/** Variables that a package of the library asks for when it is loaded. */
const ASKED_AT_LOADING = ["DEBUG", "DEBUG_FD"];

function add(
  given: readonly string[] | true | undefined,
  more: readonly string[],
): readonly string[] | true {
  return given === true ? true : [...given ?? [], ...more];
}

/** Where the runtime keeps modules and packages. */
function runtimeCache(): string {
  return Deno.env.get("DENO_DIR") || join(userCacheFolder(), "..", "deno");
}
