/**
 * Entries of a key, by how they look.
 *
 * @module
 */
import type { KeyItem } from "./_legend.ts";
import type { ShapeName } from "./_symbols.ts";
import type { Role } from "./_theme.ts";

/** A point: filled, outlined, or both. */
export function keyShape(
  label: string,
  shape: ShapeName,
  look: { fill?: Role; stroke?: Role; size?: number },
): KeyItem {
  return { label, sample: { kind: "shape", shape, ...look } };
}

/** A line. */
export function keyLine(
  label: string,
  stroke: Role,
  look: { width?: number; dash?: string } = {},
): KeyItem {
  return { label, sample: { kind: "line", stroke, ...look } };
}

/** An area, with or without an edge. */
export function keyArea(
  label: string,
  fill: Role,
  edge?: Role,
  dash?: string,
): KeyItem {
  return { label, sample: { kind: "area", fill, edge, dash } };
}

/** An interval with ends, and a thicker one inside it. */
export function keyInterval(
  label: string,
  stroke: Role,
  thick?: Role,
): KeyItem {
  return { label, sample: { kind: "interval", stroke, thick } };
}

/** The entries that apply: those whose condition holds. */
export function keyOf(
  ...entries: readonly (KeyItem | false | undefined)[]
): KeyItem[] {
  return entries.filter((entry) => entry !== false && entry !== undefined);
}
