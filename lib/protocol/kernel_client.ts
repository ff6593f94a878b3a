/**
 * The client's side of a kernel's sockets.
 *
 * @module
 */
import { settled } from "./settled.ts";
import type { Connection } from "./connection.ts";
import { Dealer } from "./dealer.ts";
import { createMessage, type JsonObject, type Message } from "./message.ts";
import { MessageCodec } from "./message_codec.ts";
import { Subscriber } from "./subscriber.ts";

/** The sockets on which a client asks. */
export type RequestChannel = "shell" | "control";

/** Settings of a connection to a kernel. */
export interface ClientSettings {
  /** Time in ms to wait for the ports to open. */
  readonly timeLimit?: number;
  /** Stops the attempts to connect. */
  readonly signal?: AbortSignal;
  /** Called once the kernel has closed a socket; open requests fail unless set. */
  readonly onDisconnect?: () => void;
}

/** Time in ms for replies that are under way when a socket closes. */
const LAST_REPLY = 1_000;

interface Pending {
  resolve(reply: Message): void;
  reject(error: unknown): void;
}

/**
 * Sends requests to a kernel and hands out what comes back.
 *
 * Replies are matched to requests by id. Every message is checked by its
 * signature; one that fails is ignored and counted. Outputs and questions for
 * input go to listeners, in order.
 *
 * @example See {@linkcode startKernel}, which makes a client for its kernel
 * ```ts
 * import { startKernel } from "sagbook/protocol/start_kernel.ts";
 * import { equal } from "node:assert/strict";
 *
 * await using kernel = await startKernel(
 *   [Deno.execPath(), "jupyter", "--kernel", "--conn", "{connection_file}"],
 * );
 * const reply = await kernel.client.request("control", "kernel_info_request", {});
 * equal(reply.content.status, "ok");
 * ```
 */
export class KernelClient {
  /** Id of this client's session. */
  readonly session: string = crypto.randomUUID();
  /** Called for each message on the output channel, in order. */
  readonly outputListeners: Set<(message: Message) => void> = new Set();
  /** Called for each question for input. */
  readonly inputListeners: Set<(message: Message) => void> = new Set();
  /** Kept when the output channel has ended and been read to its end. */
  readonly outputEnded: Promise<void>;
  #codec: MessageCodec;
  #sockets: Record<RequestChannel | "stdin", Dealer>;
  #iopub: Subscriber;
  #pending = new Map<string, Pending>();
  #failure: unknown;
  #rejected = 0;

  private constructor(
    key: string,
    sockets: Record<RequestChannel | "stdin", Dealer>,
    iopub: Subscriber,
    onDisconnect?: () => void,
  ) {
    this.#codec = new MessageCodec(key);
    this.#sockets = sockets;
    this.#iopub = iopub;
    this.outputEnded = this.#pump(
      iopub.inbox,
      (message) => this.outputListeners.forEach((hear) => hear(message)),
    );
    this.#pump(
      sockets.stdin.inbox,
      (message) => this.inputListeners.forEach((hear) => hear(message)),
    );
    const ends = (["shell", "control"] as const).map((channel) =>
      this.#pump(sockets[channel].inbox, (message) => {
        const id = message.parent.msg_id;
        this.#pending.get(id)?.resolve(message);
        this.#pending.delete(id);
      })
    );
    // A reply on the one may still be under way when the other closes.
    Promise.race(ends)
      .then(() => settled(Promise.all(ends), LAST_REPLY))
      .then(
        onDisconnect ??
          (() => this.fail(new Error("the kernel closed its sockets"))),
      );
  }

  /**
   * Connects all sockets.
   *
   * @param connection Ports and key of the kernel.
   * @param settings Time limit and abort signal.
   * @returns The client; the kernel may not hear it yet.
   * @throws {Deno.errors.TimedOut} If a port does not open in time.
   */
  static async connect(
    connection: Connection,
    settings: ClientSettings = {},
  ): Promise<KernelClient> {
    const identity = new TextEncoder().encode(crypto.randomUUID());
    const { endpoints, key } = connection;
    const dealers = await Promise.allSettled(
      (["shell", "control", "stdin"] as const).map((channel) =>
        Dealer.connect(endpoints[channel], { ...settings, identity })
      ),
    );
    const opened = dealers.flatMap((d) => "value" in d ? [d.value] : []);
    try {
      const failed = dealers.find((d) => d.status === "rejected");
      if (failed) throw failed.reason;
      const iopub = await Subscriber.connect(endpoints.iopub, settings);
      const [shell, control, stdin] = opened;
      return new KernelClient(
        key,
        { shell, control, stdin },
        iopub,
        settings.onDisconnect,
      );
    } catch (error) {
      for (const socket of opened) socket.close();
      throw error;
    }
  }

  /** How many messages were ignored as malformed, forged or replayed. */
  get rejected(): number {
    return this.#rejected;
  }

  /**
   * Asks the kernel.
   *
   * @param channel Socket to ask on; `control` is served while a cell runs.
   * @param type Kind of request.
   * @param content What is asked.
   * @param id Takes the request's id before it is sent.
   * @returns The reply.
   * @throws If the kernel ends before it answers.
   */
  request(
    channel: RequestChannel,
    type: string,
    content: JsonObject,
    id?: (id: string) => void,
  ): Promise<Message> {
    if (this.#failure) return Promise.reject(this.#failure);
    const message = createMessage({ type, session: this.session, content });
    id?.(message.header.msg_id);
    return new Promise((resolve, reject) => {
      this.#pending.set(message.header.msg_id, { resolve, reject });
      this.#sockets[channel].send(this.#codec.encode(message));
    });
  }

  /**
   * Sends a message that has no reply of its own, such as a comm's.
   *
   * @param channel Socket to send on.
   * @param message The message.
   */
  send(channel: RequestChannel | "stdin", message: Message): Promise<void> {
    return this.#sockets[channel].send(this.#codec.encode(message));
  }

  /** Answers a question for input. */
  answer(question: Message, value: string): Promise<void> {
    return this.send(
      "stdin",
      createMessage({
        type: "input_reply",
        session: this.session,
        parent: question.header,
        content: { status: "ok", value },
      }),
    );
  }

  /** Rejects every open request, and those to come, with one error. */
  fail(error: unknown): void {
    this.#failure ??= error;
    for (const { reject } of this.#pending.values()) reject(this.#failure);
    this.#pending.clear();
  }

  /** Closes all sockets; open requests are rejected. */
  close(): void {
    for (const socket of Object.values(this.#sockets)) socket.close();
    this.#iopub.close();
    this.fail(new Error("the connection to the kernel was closed"));
  }

  async #pump(
    inbox: AsyncIterable<Uint8Array[]>,
    handle: (message: Message) => void,
  ): Promise<void> {
    for await (const frames of inbox) {
      let message: Message;
      try {
        message = this.#codec.decode(frames);
      } catch {
        this.#rejected++;
        continue;
      }
      handle(message);
    }
  }
}
