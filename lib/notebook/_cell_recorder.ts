/**
 * What one cell gives out during a run, as it will stand in the notebook.
 *
 * @module
 */
import type { KernelOutput } from "../protocol/kernel_output.ts";
import { grouped, HeadRoom, Tail } from "./_kept_text.ts";
import { stripEscapes } from "./_terminal_text.ts";
import type {
  DataOutput,
  ErrorOutput,
  JsonObject,
  Output,
} from "./document.ts";

/** Results kept of one cell. */
const DISPLAYS = 500;

/** Displays that may change later, by their id. */
export type DisplayIndex = Map<string, Set<DisplaySlot>>;

/** A display in its place. */
export interface DisplaySlot {
  output: Output;
}

/** Colour codes in plain forms say nothing in a file. */
function quietForms(data: JsonObject): JsonObject {
  const plain = data["text/plain"];
  return typeof plain === "string"
    ? { ...data, "text/plain": stripEscapes(plain) }
    : data;
}

/** Gathers the outputs of one cell. */
export class CellRecorder {
  readonly #slots: DisplaySlot[] = [];
  readonly #tails = new Map<string, Tail>();
  readonly #index: DisplayIndex;
  #room = new HeadRoom();
  #clearNext = false;
  #surplus = 0;
  /** The number of the run that made the outputs. */
  executionCount: number | null = null;

  constructor(index: DisplayIndex) {
    this.#index = index;
  }

  /** Takes printed text. */
  write(name: string, text: string): void {
    this.#clearIfDue();
    const [head, rest] = this.#room.take(text);
    const last = this.#slots.at(-1);
    if (
      head !== "" && last?.output.output_type === "stream" &&
      last.output.name === name
    ) {
      last.output = { ...last.output, text: last.output.text + head };
    } else if (head !== "") {
      this.#slots.push({ output: { output_type: "stream", name, text: head } });
    }
    if (rest === "") return;
    let tail = this.#tails.get(name);
    if (tail === undefined) this.#tails.set(name, tail = new Tail());
    tail.add(rest);
  }

  /** Takes a failure. */
  fail(error: Omit<ErrorOutput, "output_type">): void {
    this.#clearIfDue();
    this.#slots.push({
      output: {
        output_type: "error",
        ename: error.ename,
        evalue: stripEscapes(error.evalue),
        traceback: error.traceback.map(stripEscapes),
      },
    });
  }

  /** Takes anything that a kernel sends out. */
  hear(output: KernelOutput): void {
    switch (output.output_type) {
      case "stream":
        return this.write(output.name, output.text);
      case "error":
        return this.fail(output);
      case "clear_output":
        this.#clearNext = true;
        if (!output.wait) this.#clearIfDue();
        return;
      case "update_display_data": {
        const id = output.transient.display_id ?? "";
        for (const slot of this.#index.get(id) ?? []) {
          slot.output = {
            ...slot.output as DataOutput,
            data: quietForms(output.data as JsonObject),
            metadata: output.metadata as JsonObject,
          };
        }
        return;
      }
      default:
        return this.#show(output);
    }
  }

  #show(
    shown: Extract<
      KernelOutput,
      { output_type: "display_data" | "execute_result" }
    >,
  ): void {
    this.#clearIfDue();
    if (this.#slots.length >= DISPLAYS) {
      this.#surplus++;
      return;
    }
    const common = {
      data: quietForms(shown.data as JsonObject),
      metadata: shown.metadata as JsonObject,
    };
    const slot: DisplaySlot = {
      output: shown.output_type === "execute_result"
        ? {
          output_type: "execute_result",
          ...common,
          execution_count: shown.execution_count,
        }
        : { output_type: "display_data", ...common },
    };
    this.#slots.push(slot);
    const id = shown.transient?.display_id;
    if (id === undefined) return;
    const others = this.#index.get(id) ?? new Set();
    this.#index.set(id, others.add(slot));
  }

  #clearIfDue(): void {
    if (!this.#clearNext) return;
    this.#clearNext = false;
    this.#slots.length = 0;
    this.#tails.clear();
    this.#room = new HeadRoom();
  }

  /** The failures so far. */
  get errors(): readonly ErrorOutput[] {
    return this.#slots.map((slot) => slot.output)
      .filter((output) => output.output_type === "error");
  }

  /** Takes out the last failure, which is not the cell's own. */
  withdrawError(): ErrorOutput | undefined {
    const at = this.#slots.findLastIndex(({ output }) =>
      output.output_type === "error"
    );
    return at < 0
      ? undefined
      : this.#slots.splice(at, 1)[0].output as ErrorOutput;
  }

  /** Puts a better account of the first failure in its place. */
  restateError(error: Omit<ErrorOutput, "output_type">): void {
    const slot = this.#slots.find(({ output }) =>
      output.output_type === "error"
    );
    if (slot === undefined) this.fail(error);
    else slot.output = { output_type: "error", ...error };
  }

  /** Everything, the cell's value and its failure last. */
  finish(): Output[] {
    const rank = (output: Output) =>
      output.output_type === "error"
        ? 2
        : output.output_type === "execute_result"
        ? 1
        : 0;
    const outputs = this.#slots.map((slot) => slot.output);
    for (const [name, tail] of this.#tails) {
      const text = tail.finish();
      const last = outputs.at(-1);
      if (last?.output_type === "stream" && last.name === name) {
        const between = last.text.endsWith("\n") ? "" : "\n";
        outputs[outputs.length - 1] = {
          ...last,
          text: last.text + between + text,
        };
      } else outputs.push({ output_type: "stream", name, text });
    }
    if (this.#surplus > 0) {
      outputs.push({
        output_type: "stream",
        name: "stderr",
        text: `[… ${grouped(this.#surplus)} results left out …]\n`,
      });
    }
    return outputs.sort((a, b) => rank(a) - rank(b));
  }
}
