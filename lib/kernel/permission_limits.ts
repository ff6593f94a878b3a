/**
 * What a notebook's code may do.
 *
 * @module
 */

/** What a notebook's code may do; what is not named is refused. */
export interface PermissionLimits {
  /** Paths that may be read, with all below them; true means all. */
  readonly read?: readonly string[] | true;
  /** Paths that may be written, with all below them. */
  readonly write?: readonly string[] | true;
  /** Hosts, with or without port, that may be reached. */
  readonly net?: readonly string[] | true;
  /** Hosts from which modules may be imported. */
  readonly import?: readonly string[] | true;
  /** Variables of the environment that may be read and set. */
  readonly env?: readonly string[] | true;
  /** Programs that may be run. */
  readonly run?: readonly string[] | true;
  /** Facts about the system that may be asked. */
  readonly sys?: readonly string[] | true;
  /** Native libraries that may be loaded. */
  readonly ffi?: readonly string[] | true;
}

/** The name of one kind of permission. */
export type PermissionName = keyof PermissionLimits;

/** All kinds, in the order in which they are listed. */
export const PERMISSION_NAMES: readonly PermissionName[] = [
  "read",
  "write",
  "net",
  "import",
  "env",
  "run",
  "sys",
  "ffi",
];

/**
 * Joins what two sides grant: each may do what either names.
 *
 * @param some Limits.
 * @param more Other limits.
 * @returns Their union; a list beside `true` is `true`.
 *
 * @example
 * ```ts
 * import { joinLimits } from "sagbook/kernel/permission_limits.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * deepEqual(joinLimits({ read: ["/a"] }, { read: ["/b"], env: true }), {
 *   read: ["/a", "/b"],
 *   env: true,
 * });
 * ```
 */
export function joinLimits(
  some: PermissionLimits,
  more: PermissionLimits,
): PermissionLimits {
  const joined: { -readonly [K in PermissionName]?: PermissionLimits[K] } = {};
  for (const name of PERMISSION_NAMES) {
    const [one, other] = [some[name], more[name]];
    if (one === undefined && other === undefined) continue;
    joined[name] = one === true || other === true
      ? true
      : [...one ?? [], ...other ?? []];
  }
  return joined;
}

/**
 * Whether code under these limits has a reason to reach the network, and the
 * runtime so may fetch what is imported: a host or an import is granted.
 *
 * @param limits The limits.
 * @returns True if anything of the network is granted.
 */
export function mayFetch({ net, import: modules }: PermissionLimits): boolean {
  return [net, modules].some((one) => one === true || (one?.length ?? 0) > 0);
}
