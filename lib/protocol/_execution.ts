import type { ExecuteOptions, ExecuteResult } from "./execute.ts";
import type { KernelClient } from "./kernel_client.ts";
import { readError, readOutput } from "./kernel_output.ts";
import type { Message } from "./message.ts";

/** Time in ms to wait for "idle" once the reply is there. */
const IDLE_LIMIT = 10_000;

/** Keeps track of one request until its reply and its "idle" have come. */
export class Execution {
  id = "";
  #client: KernelClient;
  #options: ExecuteOptions;
  #idle = Promise.withResolvers<void>();
  #finished = false;
  #failure: { readonly error: unknown } | undefined;

  constructor(client: KernelClient, options: ExecuteOptions) {
    this.#client = client;
    this.#options = options;
  }

  /** Sends the request and waits for all that belongs to it. */
  async run(code: string): Promise<ExecuteResult> {
    const { silent = false, onInput } = this.#options;
    try {
      const reply = await this.#client.request("shell", "execute_request", {
        code,
        silent,
        store_history: this.#options.storeHistory ?? !silent,
        user_expressions: this.#options.userExpressions ?? {},
        allow_stdin: onInput !== undefined,
        stop_on_error: this.#options.stopOnError ?? true,
      }, (id) => this.id = id);
      let timer: ReturnType<typeof setTimeout> | undefined;
      await Promise.race([
        this.#idle.promise,
        this.#client.outputEnded,
        new Promise<void>((done) => timer = setTimeout(done, IDLE_LIMIT)),
      ]);
      clearTimeout(timer);
      if (this.#failure) throw this.#failure.error;
      return result(this.id, reply);
    } finally {
      this.#finished = true;
    }
  }

  /** Takes a message of the output channel that names this request. */
  hear(message: Message): void {
    if (
      message.header.msg_type === "status" &&
      message.content.execution_state === "idle"
    ) return this.#idle.resolve();
    const output = readOutput(message);
    if (!output) return;
    this.#guard(() =>
      this.#options.onOutput?.(output, {
        parentId: this.id,
        late: this.#finished,
      })
    );
  }

  /** Takes a question for input. */
  async ask(question: Message): Promise<void> {
    const { prompt, password } = question.content;
    let answer = "";
    try {
      answer = await this.#options.onInput?.(
        typeof prompt === "string" ? prompt : "",
        password === true,
      ) ?? "";
    } catch (error) {
      this.#failure ??= { error };
    }
    await this.#client.answer(question, answer);
  }

  #guard(act: () => void): void {
    try {
      act();
    } catch (error) {
      this.#failure ??= { error };
    }
  }
}

function result(id: string, reply: Message): ExecuteResult {
  const { content } = reply;
  const status = content.status === "ok"
    ? "ok"
    : content.status === "error"
    ? "error"
    : "aborted";
  return {
    status,
    executionCount: typeof content.execution_count === "number"
      ? content.execution_count
      : null,
    ...(status === "error" && { error: readError(content) }),
    content,
    id,
    reply,
  };
}
