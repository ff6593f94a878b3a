/**
 * How a kernel is set up.
 *
 * @module
 */
import type { Explainer } from "../cells/cell_diagnostic.ts";
import type { Connection } from "../protocol/connection.ts";
import type { PermissionLimits } from "./permission_limits.ts";

/** Settings of a kernel. */
export interface KernelSettings {
  /** Ports and key, from the connection file. */
  readonly connection: Connection;
  /** Folder of the notebook, as a path. */
  readonly folder: string;
  /** Path of the package's deno.json, whose names every notebook may import. */
  readonly packageConfig?: string;
  /** Whether cells are type-checked before they run; true unless told. */
  readonly check?: boolean;
  /** Put the compiler's complaints into words. */
  readonly explainers?: readonly Explainer[];
  /**
   * What notebooks may do; anything unless given. A check is not limited: it
   * reads the files that a cell names, and its complaints may quote them. The
   * package must lie on the disk, not at an address of the web.
   */
  readonly limits?: PermissionLimits;
  /** Version of the package, shown to front ends. */
  readonly version?: string;
}

export type { PermissionLimits };
