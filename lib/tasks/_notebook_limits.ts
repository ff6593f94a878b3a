/**
 * What a notebook may do in a task, from the flags that grant it.
 *
 * @module
 */
import { resolve } from "node:path";
import {
  PERMISSION_NAMES,
  type PermissionLimits,
  type PermissionName,
} from "../kernel/permission_limits.ts";

/** Flags that widen what a notebook may do, for `readFlags`. */
export const LIMIT_FLAGS: Readonly<Record<string, "list" | "switch">> = {
  ...Object.fromEntries(
    PERMISSION_NAMES.map((name) => [`allow-${name}`, "list" as const]),
  ),
  "allow-all": "switch",
};

/** The paragraph of `--help` on these flags. */
export const LIMIT_WORDS =
  `A notebook is code. It may read FOLDER, this project's lib, notebooks and data,
and the runtime's own cache, and nothing else: no other file, no network, no
environment, no program, no worker, no native library, no names of this machine
or of you, and it writes nothing. The task itself writes the files. To grant a
notebook you trust more, name it:

  --allow-read[=PATH,...]    read these, or every file you can read
  --allow-write[=PATH,...]   write and delete there, or wherever you can
  --allow-net[=HOST,...]     reach these hosts, or any; fetch npm packages
  --allow-import[=HOST,...]  run modules from these hosts, or any; npm packages
  --allow-env[=NAME,...]     see and set these variables, or all, secrets too
  --allow-run[=NAME,...]     start these programs, or any: they are not limited
  --allow-sys[=NAME,...]     ask for facts about this machine and you
  --allow-ffi[=PATH,...]     load native libraries: they are not limited
  --allow-all                whatever you may do yourself`;

/**
 * Reads the grants among a task's flags.
 *
 * @param flags As `readFlags` gives them.
 * @returns What they grant; undefined means no limits at all.
 */
export function limitsFromFlags(
  flags: Readonly<Record<string, string | true>>,
): PermissionLimits | undefined {
  if (flags["allow-all"]) return undefined;
  const limits: { [K in PermissionName]?: readonly string[] | true } = {};
  for (const name of PERMISSION_NAMES) {
    const given = flags[`allow-${name}`];
    if (given === undefined) continue;
    if (given === true) {
      limits[name] = true;
      continue;
    }
    const list = given.split(",").filter((one) => one !== "");
    const isPath = name === "read" || name === "write" || name === "ffi";
    limits[name] = isPath ? list.map((one) => resolve(one)) : list;
  }
  return limits;
}
