/**
 * Outputs of a run, each taken to the cell that it comes from.
 *
 * @module
 */
import { PROGRESS_TYPE } from "../display/tell_progress.ts";
import type { KernelOutput } from "../protocol/kernel_output.ts";
import { CellRecorder, type DisplayIndex } from "./_cell_recorder.ts";
import { type Note, NOTE_TYPE, readNote } from "./_deno_prelude.ts";
import type { ErrorOutput, JsonObject } from "./document.ts";

/** A failure that nobody awaited; its cell is an index in the notebook. */
export type UnawaitedFailure = Extract<Note, { kind: "failure" }>;

/** A stranger's words as part of one line of a terminal. */
function plainLine(words: string): string {
  return words.slice(0, 100).replace(/[\p{C}\p{Zl}\p{Zp}]/gu, " ");
}

/** Sorts outputs by cell, whenever they come. */
export class RunOutputs {
  readonly #displays: DisplayIndex = new Map();
  readonly #recorders = new Map<number, CellRecorder>();
  readonly #fences = new Map<number, () => void>();
  #failures: UnawaitedFailure[] = [];
  /** How many outputs have come. */
  heard = 0;
  /** Takes the words of a cell that tells how far it is. */
  onWords: ((index: number, words: string) => void) | undefined;

  /** Opens the record of a cell. */
  open(index: number): CellRecorder {
    const recorder = new CellRecorder(this.#displays);
    this.#recorders.set(index, recorder);
    return recorder;
  }

  /** The record of a cell, if it was run. */
  recorder(index: number): CellRecorder | undefined {
    return this.#recorders.get(index);
  }

  /** Kept when everything that the cell has given out so far is here. */
  fence(index: number): Promise<void> {
    const { promise, resolve } = Promise.withResolvers<void>();
    this.#fences.set(index, resolve);
    return promise;
  }

  /** The failures since the last call. */
  takeFailures(): UnawaitedFailure[] {
    const failures = this.#failures;
    this.#failures = [];
    return failures;
  }

  /** Takes a failure of the cell at `index` that nothing awaited. */
  addFailure(index: number, error: Omit<ErrorOutput, "output_type">): void {
    this.#failures.push({
      kind: "failure",
      cell: index,
      name: error.ename,
      message: error.evalue,
      stack: error.traceback.join("\n"),
    });
  }

  /** Takes an output that came while the cell at `index` ran, or for it. */
  hear(output: KernelOutput, index: number): void {
    this.heard++;
    const at = (cell: unknown) =>
      this.#recorders.get(Number(cell)) ?? this.#recorders.get(index);
    if (
      output.output_type !== "display_data" &&
      output.output_type !== "update_display_data"
    ) return at(index)?.hear(output);
    const told = (output.data as JsonObject)[PROGRESS_TYPE];
    if (told !== undefined) {
      const { words } = told as { readonly words?: unknown };
      if (typeof words === "string") this.onWords?.(index, plainLine(words));
      return;
    }
    const note = readNote(output.data as JsonObject);
    switch (note?.kind) {
      case "fence":
        return this.#fences.get(note.cell)?.();
      case "failure":
        this.#failures.push({
          ...note,
          cell: this.#recorders.has(note.cell) ? note.cell : index,
        });
        return;
      case "text":
        for (const [name, text] of note.parts) at(note.cell)?.write(name, text);
        return;
    }
    const { [NOTE_TYPE]: cell = index, ...metadata } = output
      .metadata as JsonObject;
    at(cell)?.hear({ ...output, metadata });
  }
}
