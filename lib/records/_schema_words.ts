/**
 * The findings of a schema in plain words.
 *
 * @module
 */
import { closestName } from "./closest_name.ts";
import type { Problem } from "./problem.ts";

/** One finding of a schema, as zod words it. */
export interface Issue {
  /** Its kind. */
  readonly code?: string;
  /** Where it is. */
  readonly path: readonly PropertyKey[];
  /** The words of zod. */
  readonly message: string;
  /** Names nobody knows. */
  readonly keys?: readonly string[];
  /** Words that are allowed. */
  readonly values?: readonly unknown[];
  /** The kind of value that is wanted. */
  readonly expected?: string;
  /** Findings of each branch of a union. */
  readonly errors?: readonly (readonly Issue[])[];
}

/** A part of a JSON Schema, as far as names are looked up in it. */
export interface SchemaNode {
  /** Named parts. */
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  /** The parts of a list. */
  readonly items?: SchemaNode;
  /** Branches of a union. */
  readonly anyOf?: readonly SchemaNode[];
  /** What it is, in words. */
  readonly description?: string;
}

/** A value as a message quotes it. */
export const shown = (value: unknown): string | undefined =>
  value === undefined ? undefined : JSON.stringify(value)?.slice(0, 200);

const KINDS: Readonly<Record<string, string>> = {
  string: 'text between quotes, such as "…"',
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  object: "a group in braces { … }",
  array: "a list in brackets [ … ]",
};

function isLength({ properties }: SchemaNode): boolean {
  return properties?.value !== undefined && properties.unit !== undefined;
}

/** What is wrong with a value, and what belongs there. */
export function wordsFor(
  issue: Issue,
  value: unknown,
  known: readonly SchemaNode[],
): Pick<Problem, "message" | "expected" | "mend"> {
  const about = known.find((node) => node.description)?.description;
  const expected = issue.values !== undefined
    ? issue.values.map((one) => JSON.stringify(one)).join(" or ")
    : issue.code === "invalid_union"
    ? about ?? "another kind of value"
    : KINDS[issue.expected ?? ""] ?? about;
  const as = expected === undefined ? {} : { expected };
  if (value === undefined) {
    return {
      message: "this is missing",
      ...as,
      mend: "add it",
    };
  }
  if (issue.values !== undefined) {
    const near = closestName(
      String(value),
      issue.values.map((one) => String(one)),
    );
    return {
      message: "this is not one of the words known here",
      ...as,
      ...(near === undefined ? {} : { mend: `did you mean "${near}"?` }),
    };
  }
  if (typeof value === "number" && known.some(isLength)) {
    return {
      message: "this number has no unit",
      ...as,
      mend: `write "${value} mm" or "${value} in"`,
    };
  }
  const message = {
    too_small: "this is too small, or blank",
    too_big: "this is too large, or too long",
  }[issue.code ?? ""] ?? "this is not the kind of value that belongs here";
  const mend = mendOfKind(issue.expected, value, known);
  return { message, ...as, ...(mend === undefined ? {} : { mend }) };
}

/** How a value becomes the group or list that belongs in its place. */
function mendOfKind(
  expected: string | undefined,
  value: unknown,
  known: readonly SchemaNode[],
): string | undefined {
  if (expected === "array") {
    return typeof value === "object"
      ? "put brackets around it: [ … ]"
      : undefined;
  }
  const isText = typeof value === "string" || typeof value === "number";
  if (expected !== "object" || !isText) return undefined;
  const names = new Set(
    known.flatMap(({ properties = {} }) => Object.keys(properties)),
  );
  const [first, ...others] = names;
  if (first === undefined) return undefined;
  return `say what it is, as in { "${first}": ${JSON.stringify(value)} }${
    others.length === 0 ? "" : `; known here: ${[...names].join(", ")}`
  }`;
}
