/**
 * A cell's error with its place in the notebook, from what each kernel says.
 *
 * @module
 */
import { placeTrace } from "./_cell_lines.ts";
import { OWN_KERNEL, renumber } from "./_own_kernel.ts";
import type { ErrorOutput, JsonObject } from "./document.ts";

/** The kernels whose ways are known. */
export type KernelKind = "deno" | "own" | "other";

/** Tells a kernel by what it says of itself. */
export function kernelKind(
  info: { readonly [key: string]: unknown },
): KernelKind {
  if (info.implementation === "Deno kernel") return "deno";
  return info.implementation === OWN_KERNEL ? "own" : "other";
}

/** True if cells of the kernel are TypeScript. */
export function isTypeScriptKernel(
  info: { readonly [key: string]: unknown },
): boolean {
  const language = info.language_info as JsonObject | undefined;
  return language?.name === "typescript";
}

/** An error and its line. */
export interface PlacedError {
  readonly error: Omit<ErrorOutput, "output_type">;
  /** Line in the cell, from 1, where it is known. */
  readonly line?: number;
  /** The message without a place at its start. */
  readonly words: string;
}

/** The cell that failed. */
export interface FailedCell {
  readonly source: string;
  /** Its number as its author counts. */
  readonly number: number;
  /** Its number in the margin. */
  readonly count: number | null;
  /** The author's number of the cell with a margin number. */
  readonly numberOf: (count: number) => number | undefined;
}

/** Finds the place of an error in its cell, and restates it so. */
export async function placeError(
  error: Omit<ErrorOutput, "output_type">,
  kind: KernelKind,
  cell: FailedCell,
): Promise<PlacedError> {
  if (kind === "own") return renumber(error, cell.count, cell.numberOf);
  if (kind === "other") return { error, words: error.evalue };
  const { traceback, line } = await placeTrace(
    error.traceback,
    cell.source,
    cell.number,
  );
  const { ename, evalue } = error;
  return {
    error: { ename, evalue, traceback },
    words: evalue,
    ...(line === undefined ? {} : { line }),
  };
}
