/**
 * What kernel and host say to each other: over the evaluator's output channel
 * (outcomes) and over a side channel (interrupts), which works while a cell
 * runs.
 */

/** Settings handed to the host when it starts. */
export interface HostOptions {
  /** Port of the kernel's side channel on 127.0.0.1. */
  readonly port: number;
  /** Secret that the host shows once it is connected. */
  readonly token: string;
  /** Folder of the notebook as a path. */
  readonly folder: string;
  /** Permissions to give up before the first cell; absent where none is limited. */
  readonly revoke?: readonly string[];
  /** Loads a module as the notebook's own import would. */
  readonly load: (
    specifier: string,
    options?: ImportCallOptions,
  ) => Promise<unknown>;
}

/** From the kernel to the host, one JSON object a line. */
export type ToHost =
  | { readonly op: "interrupt"; readonly cell: number; readonly now: boolean }
  | { readonly op: "ping"; readonly number: number };

/** From the kernel to the host's watchdog, one JSON object a line. */
export interface ToWatchdog {
  readonly op: "taken";
  /** Number of the last message that the kernel has taken. */
  readonly sent: number;
}

/** From the host to the kernel, one JSON object a line. */
export type FromHost =
  | {
    readonly op: "hello";
    readonly token: string;
    readonly role: "host" | "watchdog";
  }
  | { readonly op: "heard"; readonly cell: number }
  | { readonly op: "pong"; readonly number: number };

/** MIME type of the message that carries an outcome; never shown. */
export const OUTCOME_MIME = "application/vnd.sagbook.outcome+json";

/** MIME type of the message that carries an uncaught error; never shown. */
export const UNCAUGHT_MIME = "application/vnd.sagbook.uncaught+json";

/** Key of the metadata that names the run an output belongs to. */
export const CELL_KEY = "sagbook_cell";

/** Key of the metadata that numbers the messages which the host sends. */
export const SENT_KEY = "sagbook_sent";

/** Name under which the host waits for cells in the evaluator's global scope. */
export const HOST_KEY = "sagbook.host";

/** Answers to `prompt` that stand for no answer. */
export const REFUSED_INPUT = "\u0000refused";
export const INTERRUPTED_INPUT = "\u0000interrupted";
