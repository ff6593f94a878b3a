/**
 * A Jupyter client and its transport: sockets, signed messages, kernels started
 * by their command.
 *
 * @example Run a cell on a kernel and read what it printed
 * ```ts
 * import { startKernel } from "sagbook/protocol/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * await using kernel = await startKernel(
 *   [Deno.execPath(), "jupyter", "--kernel", "--conn", "{connection_file}"],
 *   { timeLimit: 60_000 },
 * );
 * let printed = "";
 * const result = await kernel.execute("console.log('0.715 mm')", {
 *   timeLimit: 30_000,
 *   onOutput: (output) => {
 *     if (output.output_type === "stream") printed += output.text;
 *   },
 * });
 * equal(result.status, "ok");
 * // Deno's own kernel may send what was printed after its reply.
 * while (printed === "") await new Promise((done) => setTimeout(done, 10));
 * equal(printed, "0.715 mm\n");
 * ```
 *
 * @module
 */
export type { MimeBundle } from "../display/bundle.ts";
export {
  type Channel,
  type Connection,
  createConnection,
  parseConnection,
  readConnectionFile,
  writeConnectionFile,
} from "./connection.ts";
export { type ConnectSettings, Dealer } from "./dealer.ts";
export { type Endpoint, endpoint } from "./endpoint.ts";
export type { ExecuteOptions, ExecuteResult, OutputOrigin } from "./execute.ts";
export { Inbox } from "./inbox.ts";
export {
  type ClientSettings,
  KernelClient,
  type RequestChannel,
} from "./kernel_client.ts";
export {
  describeExit,
  KernelDiedError,
  type KernelExit,
  TimeLimitError,
} from "./kernel_error.ts";
export {
  type ClearOutput,
  type DisplayDataOutput,
  type ErrorOutput,
  type ExecuteResultOutput,
  type KernelOutput,
  type NotebookOutput,
  readError,
  readOutput,
  type StreamOutput,
  type UpdateDisplayDataOutput,
} from "./kernel_output.ts";
export {
  createMessage,
  type JsonObject,
  type Message,
  type MessageHeader,
  type MessageParts,
  PROTOCOL_VERSION,
} from "./message.ts";
export {
  MessageCodec,
  MessageRejected,
  type Rejection,
} from "./message_codec.ts";
export { Publisher } from "./publisher.ts";
export { type RoutedMessage, Router } from "./router.ts";
export type { RunningKernel } from "./running_kernel.ts";
export { startKernel, type StartOptions } from "./start_kernel.ts";
export { Subscriber, type SubscribeSettings } from "./subscriber.ts";
