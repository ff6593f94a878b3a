import type { Connection } from "../protocol/connection.ts";
import { Inbox } from "../protocol/inbox.ts";
import {
  createMessage,
  type JsonObject,
  type Message,
  type MessageHeader,
} from "../protocol/message.ts";
import { MessageCodec } from "../protocol/message_codec.ts";
import { Publisher } from "../protocol/publisher.ts";
import { Router } from "../protocol/router.ts";

/** One request, and where its reply goes. */
export interface Request {
  readonly channel: "shell" | "control";
  readonly identity: Uint8Array;
  readonly message: Message;
}

/** What `publish` may carry beside its content. */
export interface PublishExtra {
  readonly metadata?: JsonObject;
  readonly buffers?: readonly Uint8Array[];
}

/** The five sockets of a kernel; what is forged or broken never comes through. */
export class KernelSockets {
  /** Requests of both channels, in the order of arrival. */
  readonly requests: Inbox<Request> = new Inbox();
  readonly session: string = crypto.randomUUID();
  #codec: MessageCodec;
  #shell: Router;
  #control: Router;
  #stdin: Router;
  #heartbeat: Router;
  #iopub: Publisher;
  #answer: ((answer: string) => void) | undefined;
  #rejected = 0;

  constructor({ endpoints, key }: Connection) {
    this.#codec = new MessageCodec(key);
    const opened: (Router | Publisher)[] = [];
    const open = <T extends Router | Publisher>(socket: T): T => {
      opened.push(socket);
      return socket;
    };
    try {
      this.#shell = open(new Router(endpoints.shell));
      this.#control = open(new Router(endpoints.control));
      this.#stdin = open(new Router(endpoints.stdin));
      this.#heartbeat = open(new Router(endpoints.hb));
      this.#iopub = open(new Publisher(endpoints.iopub));
    } catch (error) {
      for (const socket of opened) socket.close();
      throw error;
    }
    this.#listen("shell", this.#shell);
    this.#listen("control", this.#control);
    this.#hearAnswers();
    this.#echo();
  }

  /** How many messages were ignored as malformed, forged or replayed. */
  get rejected(): number {
    return this.#rejected;
  }

  /** Sends to everybody who listens. */
  publish(
    type: string,
    content: JsonObject,
    parent: MessageHeader | undefined,
    extra: PublishExtra = {},
  ): void {
    const message = createMessage({
      type,
      session: this.session,
      content,
      parent: parent ?? {},
      identities: [new TextEncoder().encode(`kernel.${this.session}.${type}`)],
      ...extra,
    });
    this.#iopub.send(this.#codec.encode(message));
  }

  /** Answers a request. */
  reply(to: Request, type: string, content: JsonObject): void {
    const message = createMessage({
      type,
      session: this.session,
      content,
      parent: to.message.header,
    });
    const socket = to.channel === "shell" ? this.#shell : this.#control;
    socket.send(to.identity, this.#codec.encode(message));
  }

  /** Asks the client that sent a request; undefined once it cannot answer. */
  async ask(
    of: Request,
    prompt: string,
    password: boolean,
  ): Promise<string | undefined> {
    const question = createMessage({
      type: "input_request",
      session: this.session,
      content: { prompt, password },
      parent: of.message.header,
    });
    const answer = Promise.withResolvers<string>();
    this.#answer = answer.resolve; // one at a time; an older one is stale
    const frames = this.#codec.encode(question);
    if (!await this.#stdin.send(of.identity, frames)) return undefined;
    return await answer.promise;
  }

  /** Writes what is queued and closes all ports. */
  async close(): Promise<void> {
    await Promise.all([
      this.#shell.close(),
      this.#control.close(),
      this.#stdin.close(),
      this.#heartbeat.close(),
      this.#iopub.close(),
    ]);
    this.requests.close();
  }

  async #listen(channel: "shell" | "control", socket: Router): Promise<void> {
    for await (const { identity, frames } of socket.inbox) {
      const message = this.#decode(frames);
      if (message) this.requests.push({ channel, identity, message });
    }
  }

  async #hearAnswers(): Promise<void> {
    for await (const { frames } of this.#stdin.inbox) {
      const message = this.#decode(frames);
      if (message?.header.msg_type !== "input_reply") continue;
      // Jupyter's own clients answer without naming the question.
      const resolve = this.#answer;
      this.#answer = undefined;
      resolve?.(String(message.content.value ?? ""));
    }
  }

  async #echo(): Promise<void> {
    for await (const { identity, frames } of this.#heartbeat.inbox) {
      this.#heartbeat.send(identity, frames);
    }
  }

  #decode(frames: readonly Uint8Array[]): Message | undefined {
    try {
      return this.#codec.decode(frames);
    } catch {
      this.#rejected++;
    }
  }
}
