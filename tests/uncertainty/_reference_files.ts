/** Reference files by the beginning of their names, and how to hold to them. */
import { ok } from "node:assert/strict";

/** A reference file as written; `expected` differs from kind to kind. */
export interface ReferenceFile {
  readonly file: string;
  readonly name: string;
  readonly source: string;
  readonly data: readonly Record<string, number | string | null>[];
  // deno-lint-ignore no-explicit-any
  readonly expected: any;
  // deno-lint-ignore no-explicit-any
  readonly tolerance: any;
}

const FOLDER = new URL("../references/", import.meta.url);

/** Reads every reference file whose name begins with `prefix`. */
export function referenceFiles(prefix: string): ReferenceFile[] {
  return [...Deno.readDirSync(FOLDER)]
    .filter(({ name }) => name.startsWith(prefix) && name.endsWith(".json"))
    .map(({ name }) => ({
      file: name,
      ...JSON.parse(Deno.readTextFileSync(new URL(name, FOLDER))),
    }))
    .toSorted((a, b) => a.file < b.file ? -1 : 1);
}

/** Demands every expected key, each within its absolute tolerance. */
export function withinAbsolute(
  found: Record<string, number>,
  expected: Record<string, number>,
  tolerance: Record<string, number>,
): void {
  for (const [key, value] of Object.entries(expected)) {
    const distance = Math.abs(found[key] - value);
    // Half a unit of a printed figure may sit exactly on a rounding boundary.
    ok(
      distance <= tolerance[key] * (1 + 1e-9) + 1e-12 * Math.abs(value),
      `${key}: ${found[key]} is not ${value}`,
    );
  }
}

/** Demands every expected key within one relative tolerance. */
export function withinRelative(
  found: Record<string, number>,
  expected: Record<string, number>,
  tolerance: number,
): void {
  for (const [key, value] of Object.entries(expected)) {
    const distance = Math.abs(found[key] - value);
    ok(
      distance <= tolerance * Math.abs(value),
      `${key}: ${found[key]} is not ${value}`,
    );
  }
}
