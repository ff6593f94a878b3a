/**
 * A JSON file of the user's: read, checked against its shape, with every
 * problem at its line.
 *
 * @module
 */
import { closestName } from "./closest_name.ts";
import { decodeText } from "./_decode_text.ts";
import { type JsonMap, mapJson } from "./_json_map.ts";
import type { Problem } from "./problem.ts";
import {
  type Issue,
  type SchemaNode,
  shown,
  wordsFor,
} from "./_schema_words.ts";

/** What this file needs of a zod schema. */
interface Schema<T> {
  safeParse(
    value: unknown,
  ):
    | { success: true; data: T }
    | { success: false; error: { issues: readonly unknown[] } };
}

/** A JSON file that has been read. */
export interface JsonFile<T> {
  /** The content, if it has its shape. */
  readonly content?: T;
  /** Everything there is to say. */
  readonly problems: Problem[];
  /** Where each value stands. */
  readonly map: JsonMap;
  /**
   * What is left of the content when the wrong values are taken out and
   * stand-ins put in for what is missing: good for looking for more problems,
   * for nothing else.
   */
  readonly rest?: T;
}

function nodeAt(root: SchemaNode, path: readonly PropertyKey[]): SchemaNode[] {
  let nodes: SchemaNode[] = [root];
  const spread = (node: SchemaNode): SchemaNode[] => [
    node,
    ...(node.anyOf ?? []).flatMap(spread),
  ];
  for (const key of path) {
    nodes = nodes.flatMap(spread).flatMap((node) =>
      typeof key === "number"
        ? node.items ?? []
        : node.properties?.[String(key)] ?? []
    );
  }
  return nodes.flatMap(spread);
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === "object" && inner !== null
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

/**
 * Reads a JSON file against a schema.
 *
 * Faults of the text, names nobody knows (a warning each, with the name that
 * was likely meant) and values of the wrong kind come back as problems with
 * their line; all of them at once.
 */
export function readJsonFile<T>(
  bytes: Uint8Array,
  file: string,
  schema: Schema<T>,
  jsonSchema: SchemaNode,
  standIn: T,
): JsonFile<T> {
  const { text, problems: found } = decodeText(bytes, file);
  const problems: Problem[] = [...found];
  const map = mapJson(text);
  if (found.some((problem) => problem.severity === "refused")) {
    return { problems, map };
  }
  if (text.trim() === "") {
    problems.push({
      severity: "refused",
      code: "empty-file",
      file,
      message: "the file is empty",
      mend: "write it anew; “deno task new” makes one to start from",
    });
    return { problems, map };
  }
  if (map.fault !== undefined) {
    const { line, column, message, mend, found: value } = map.fault;
    problems.push({
      severity: "refused",
      code: "json-syntax",
      file,
      line,
      value,
      message: `column ${column} of the line: ${message}`,
      mend,
    });
    return { problems, map };
  }
  for (const [path, place] of map.repeated) {
    problems.push({
      severity: "refused",
      code: "repeated-key",
      file,
      line: place.line,
      column: path,
      message: "this name stands twice",
      mend: "keep one of the two",
    });
  }
  const value: unknown = JSON.parse(text);
  let result = schema.safeParse(value);
  const placed = (path: readonly PropertyKey[]) => {
    for (let n = path.length; n >= 0; n--) {
      const place = map.places.get(path.slice(0, n).map(String).join("."));
      if (place !== undefined) return { line: place.line };
    }
    return {};
  };
  if (!result.success) {
    const issues = result.error.issues as readonly Issue[];
    let removed = 0;
    for (const issue of issues.flatMap(unknownKeysOf)) {
      const group = at(value, issue.path);
      const names = nodeAt(jsonSchema, issue.path)
        .flatMap((node) => Object.keys(node.properties ?? {}));
      for (const key of issue.keys ?? []) {
        const near = closestName(key, names);
        problems.push({
          severity: "warning",
          code: "unknown-key",
          file,
          ...placed([...issue.path, key]),
          column: [...issue.path, key].map(String).join("."),
          message: "this name is not known and is not used",
          mend: near === undefined
            ? `known here: ${names.filter((n) => n !== "$schema").join(", ")}`
            : `did you mean "${near}"?`,
        });
        if (typeof group === "object" && group !== null) {
          delete (group as Record<string, unknown>)[key];
          removed++;
        }
      }
    }
    if (removed > 0) result = schema.safeParse(value);
  }
  if (result.success) return { content: result.data, problems, map };
  for (const issue of result.error.issues as readonly Issue[]) {
    const path = issue.path;
    const wrong = at(value, path);
    const text = shown(wrong);
    problems.push({
      severity: "refused",
      code: wrong === undefined ? "missing-key" : "wrong-value",
      file,
      ...placed(path),
      ...(path.length === 0 ? {} : { column: path.map(String).join(".") }),
      ...(text === undefined ? {} : { value: text }),
      ...wordsFor(issue, wrong, nodeAt(jsonSchema, path)),
    });
  }
  const rest = restOf(value, result.error.issues as readonly Issue[], standIn);
  const again = schema.safeParse(rest);
  return { problems, map, ...(again.success ? { rest: again.data } : {}) };
}

/** The value without what is wrong in it, over stand-ins. */
function restOf(
  value: unknown,
  issues: readonly Issue[],
  standIn: unknown,
): unknown {
  for (const { path } of issues) {
    const group = at(value, path.slice(0, -1));
    const key = path.at(-1);
    if (typeof group === "object" && group !== null && key !== undefined) {
      delete (group as Record<PropertyKey, unknown>)[key];
    }
  }
  return typeof value === "object" && value !== null
    ? Object.assign({}, standIn, value)
    : standIn;
}

/** Unknown names, also inside the branches of a union of groups. */
function unknownKeysOf(issue: Issue): Issue[] {
  if (issue.code === "unrecognized_keys") return [issue];
  return (issue.errors ?? []).flatMap((branch) =>
    branch.length > 0 && branch.every((one) => one.code === "unrecognized_keys")
      ? branch.map((one) => ({ ...one, path: [...issue.path, ...one.path] }))
      : []
  );
}
