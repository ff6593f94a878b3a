/**
 * The notebook kernel: checks cells before they run, stops them without losing
 * variables, and keeps every output with its cell.
 *
 * @example Serve a kernel, and ask it to run a cell
 * ```ts
 * import { Kernel } from "sagbook/kernel/mod.ts";
 * import { createConnection, KernelClient } from "sagbook/protocol/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const connection = createConnection();
 * const kernel = new Kernel({ connection, folder: Deno.cwd() });
 * const client = await KernelClient.connect(connection);
 * const { content } = await client.request("shell", "execute_request", {
 *   code: "const sag: string = 0.715;",
 * });
 * equal(
 *   content.evalue,
 *   "cell 1, line 1, column 7: Type 'number' is not assignable to type 'string'.",
 * );
 * await kernel.shutdown();
 * client.close();
 * ```
 *
 * @module
 */
export type { Explainer } from "../cells/cell_diagnostic.ts";
export type { MimeBundle } from "../display/bundle.ts";
export type { Channel, Connection } from "../protocol/connection.ts";
export type { Endpoint } from "../protocol/endpoint.ts";
export type {
  JsonObject,
  Message,
  MessageHeader,
} from "../protocol/message.ts";
export {
  ChildEvaluator,
  type ChildEvaluatorSettings,
} from "./child_evaluator.ts";
export type {
  Evaluator,
  EvaluatorCell,
  EvaluatorEvents,
  ExpressionValue,
  Outcome,
  ThrownError,
} from "./evaluator.ts";
export { History, type HistoryEntry, type HistoryRow } from "./history.ts";
export {
  installKernel,
  type InstallSettings,
  kernelFolder,
  uninstallKernel,
} from "./install_kernel.ts";
export { Kernel } from "./kernel.ts";
export {
  type KernelArguments,
  parseKernelArguments,
} from "./kernel_arguments.ts";
export { kernelCommand, type KernelCommandSettings } from "./kernel_command.ts";
export type { KernelSettings, PermissionLimits } from "./kernel_settings.ts";
export { isAllowed, PermissionBroker } from "./permission_broker.ts";
export {
  joinLimits,
  mayFetch,
  PERMISSION_NAMES,
  type PermissionName,
} from "./permission_limits.ts";
export { type KernelProof, proveKernel } from "./prove_kernel.ts";
export { serveKernel } from "./serve_kernel.ts";
