/**
 * Reads the outside values that tests compare with.
 *
 * A test names a kind of file by its prefix and runs on every file of it, so
 * that a new file of the kind is checked by being there.
 *
 * @module
 */
import { ok } from "node:assert/strict";

/** One reference file; its shape is known by its kind. */
// deno-lint-ignore no-explicit-any
export type Reference = Record<string, any>;

const folder = new URL("../references/", import.meta.url);

/** Every reference file whose name starts with a prefix, by name. */
export function references(prefix: string): [string, Reference][] {
  const names = [...Deno.readDirSync(folder)].map((entry) => entry.name)
    .filter((name) => name.startsWith(prefix) && name.endsWith(".json")).sort();
  ok(names.length > 0, `no reference file starts with ${prefix}`);
  return names.map((name) => [name, reference(name)]);
}

/** One reference file by its name. */
export function reference(name: string): Reference {
  return JSON.parse(Deno.readTextFileSync(new URL(name, folder)));
}

/** Fails unless two numbers agree to a relative tolerance. */
export function near(
  found: number,
  expected: number,
  relative: number,
  what: string,
): void {
  ok(
    Math.abs(found - expected) <= relative * Math.abs(expected),
    `${what}: found ${found}, expected ${expected} within ${relative} of it`,
  );
}

/** Fails unless two numbers agree to an absolute tolerance. */
export function close(
  found: number,
  expected: number,
  absolute: number,
  what: string,
): void {
  ok(
    Math.abs(found - expected) <= absolute,
    `${what}: found ${found}, expected ${expected} within ${absolute}`,
  );
}
