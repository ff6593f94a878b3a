/**
 * Running cells in a hidden kernel of the runtime's own.
 *
 * @module
 */
import type { KernelClient } from "../protocol/kernel_client.ts";
import { describeExit, type KernelExit } from "../protocol/kernel_error.ts";
import { createMessage, type Message } from "../protocol/message.ts";
import { settled } from "../protocol/settled.ts";
import { readChildMessage } from "./_child_message.ts";
import { EvaluatorChild } from "./_evaluator_child.ts";
import { describeThrown } from "./_host_errors.ts";
import {
  HOST_KEY,
  INTERRUPTED_INPUT,
  REFUSED_INPUT,
} from "./_host_protocol.ts";
import { climbInterruptLadder } from "./_interrupt_ladder.ts";
import type { PermissionLimits } from "./permission_limits.ts";
import { asStopped } from "./_stopped_outcome.ts";
import { RunningCell } from "./_running_cell.ts";
import type {
  Evaluator,
  EvaluatorCell,
  EvaluatorEvents,
  Outcome,
} from "./evaluator.ts";

/** Settings of the evaluator. */
export interface ChildEvaluatorSettings {
  /** Folder of the notebook, which becomes the working folder. */
  readonly folder: string;
  /** Folder with the deno.json under which modules are found. */
  readonly workspace: string;
  /** What the code may do; anything unless given. */
  readonly limits?: PermissionLimits;
}

const NOTHING = { assigned: [], pages: [], expressions: {} };

const OUT_OF_MEMORY = "the cell took more memory than there is";

/** Time in ms that the child has to become free after a cell. */
const FREE_LIMIT = 2_000;

/** Time in ms for an outcome that overtakes nothing to arrive. */
const OUTCOME_LIMIT = 1_000;

/**
 * Runs cells in a hidden `deno jupyter` child process.
 *
 * That child can end any running code, also a loop inside a library, without
 * losing variables; what it lacks is added by a host module inside it, which
 * runs the cells, orders their outputs and names the cell of each.
 *
 * The interrupt ladder: (1) every await of the cell is ended; (2) after 50 ms
 * without an answer the engine ends the code that runs; (3) after 2.5 s the
 * child is replaced and its variables are lost.
 *
 * Limits: code ended in the middle of a library leaves that library as it was
 * at that moment. A library's own awaits go on in the background after the
 * cell that waited for them was stopped.
 */
export class ChildEvaluator implements Evaluator {
  #settings: ChildEvaluatorSettings;
  #events: EvaluatorEvents;
  #child: Promise<EvaluatorChild>;
  #running: RunningCell | undefined;
  #stopping = false;

  /**
   * Starts the child.
   *
   * @param settings Folders and limits.
   * @param events Takes outputs and questions.
   */
  constructor(settings: ChildEvaluatorSettings, events: EvaluatorEvents) {
    this.#settings = settings;
    this.#events = events;
    this.#child = this.#start();
  }

  /** Kept when cells can be run. */
  get ready(): Promise<void> {
    return this.#child.then(() => {});
  }

  /** Process id of the child, once it runs. */
  async pid(): Promise<number> {
    return (await this.#child).kernel.pid;
  }

  /** Runs a cell; never rejects. */
  async run(cell: EvaluatorCell): Promise<Outcome> {
    const running = new RunningCell(cell);
    this.#running = running;
    try {
      const child = await this.#child;
      if (running.interrupted) {
        running.finish({ status: "interrupted", ...NOTHING });
        return await running.outcome;
      }
      const replied = this.#send(child, cell);
      replied.then((reply) => this.#withoutOutcome(running, reply));
      const outcome = await running.outcome;
      if (outcome.status !== "lost") await this.#settle(child, replied);
      return outcome;
    } catch (error) {
      this.#child = this.#start(); // perhaps the next try goes better
      return { status: "error", error: describeThrown(error), ...NOTHING };
    } finally {
      this.#running = undefined;
    }
  }

  /** Stops the running cell; does nothing if none runs. */
  async interrupt(): Promise<void> {
    const running = this.#running;
    if (!running || running.interrupted) return;
    running.interrupted = true;
    for (const dismiss of running.dismissals) dismiss();
    const child = await this.#child.catch(() => undefined);
    if (!child || running.done) return;
    if (!await climbInterruptLadder(child, running)) {
      await this.#replace(child, "it did not stop when asked");
    }
  }

  /** Passes a message on, such as a comm's, and gives the reply if it has one. */
  async forward(message: Message): Promise<Message | undefined> {
    const { kernel: { client } } = await this.#child;
    const { header: { msg_type: type }, content, metadata, buffers } = message;
    if (type.endsWith("_request")) {
      return await client.request("shell", type, content);
    }
    const { session } = client;
    await client.send(
      "shell",
      createMessage({ type, session, content, metadata, buffers }),
    );
  }

  /** Ends it and all its processes. */
  async stop(): Promise<void> {
    this.#stopping = true;
    const child = await this.#child.catch(() => undefined);
    await child?.end();
  }

  #start(): Promise<EvaluatorChild> {
    const starting = EvaluatorChild.start({
      ...this.#settings,
      onWrite: (name, text) => {
        const cell = this.#running?.cell.id;
        this.#events.output("stream", { name, text }, cell, []);
      },
      onKernel: ({ client }) => {
        client.outputListeners.add((message) => this.#hear(message));
        client.inputListeners.add((question) => this.#ask(client, question));
      },
    });
    starting.then((child) =>
      child.kernel.exited.then((exit) => this.#exited(child, exit))
    ).catch(() => {}); // who asks for the child hears of it
    return starting;
  }

  /** Hands a cell to the host inside the child. */
  #send(
    { kernel: { client } }: EvaluatorChild,
    { id, code, expressions }: EvaluatorCell,
  ): Promise<Message | undefined> {
    const host = `globalThis[Symbol.for(${JSON.stringify(HOST_KEY)})]`;
    const call = [id, code, expressions].map((one) => JSON.stringify(one));
    return client.request("shell", "execute_request", {
      code: `await ${host}(${call.join(", ")})`,
      silent: false,
      store_history: false,
      user_expressions: {},
      allow_stdin: true,
      stop_on_error: false,
    }).catch(() => undefined);
  }

  /** Makes sure that the next cell finds a child that listens. */
  async #settle(
    child: EvaluatorChild,
    replied: Promise<unknown>,
  ): Promise<void> {
    const free = await settled(replied, FREE_LIMIT);
    const interrupted = this.#running?.interrupted ?? false;
    if (free && (!interrupted || await child.side.ping(FREE_LIMIT))) return;
    await this.#replace(child, "it did not come back after an interrupt");
  }

  /** Ends a child; the next is started when it is gone. */
  async #replace(child: EvaluatorChild, reason: string): Promise<void> {
    child.reason = reason;
    await child.end();
  }

  /** Starts another child where one has ended, and says what that means. */
  async #exited(child: EvaluatorChild, exit: KernelExit): Promise<void> {
    const reason = child.reason ??
      (child.outOfMemory ? OUT_OF_MEMORY : describeExit(exit));
    if (!this.#stopping) this.#child = this.#start();
    const running = this.#running;
    if (running && !running.done) {
      running.finish({ status: "lost", reason, ...NOTHING });
    } else if (!this.#stopping) this.#events.lost(reason);
    await child.end();
  }

  /** The child answered though no outcome came: its code was ended. */
  async #withoutOutcome(running: RunningCell, reply?: Message): Promise<void> {
    if (!reply || await running.doneWithin(OUTCOME_LIMIT)) return;
    if (running.interrupted) {
      return running.finish({ status: "interrupted", ...NOTHING });
    }
    const name = String(reply.content.ename ?? "Error");
    const message = String(reply.content.evalue || "the cell was broken off");
    const error = { name, message, stack: "" };
    running.finish({ status: "error", error, ...NOTHING });
  }

  #hear(message: Message): void {
    const said = readChildMessage(message);
    const running = this.#running;
    if (said?.kind === "outcome") {
      const { outcome } = said;
      if (running?.cell.id === said.cell) {
        running.finish(running.interrupted ? asStopped(outcome) : outcome);
      }
    } else if (said?.kind === "uncaught") {
      this.#events.uncaught(said.error, said.cell);
    } else if (said) {
      const { type, content, buffers } = said;
      this.#events.output(
        type,
        content,
        said.cell ?? running?.cell.id,
        buffers,
      );
    }
  }

  /** Brings a question of the child to the user. */
  async #ask(client: KernelClient, question: Message): Promise<void> {
    const { prompt, password } = question.content;
    const running = this.#running;
    const dismissed = Promise.withResolvers<string>();
    const dismiss = () => dismissed.resolve(INTERRUPTED_INPUT);
    running?.dismissals.add(dismiss);
    if (running?.interrupted) dismiss();
    const answer = await Promise.race([
      dismissed.promise,
      this.#events.question(String(prompt ?? ""), password === true)
        .then((value) => value ?? REFUSED_INPUT),
    ]);
    running?.dismissals.delete(dismiss);
    await client.answer(question, answer);
  }
}
