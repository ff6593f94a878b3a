/**
 * What a cell could have said in the host's name, taken only in its right
 * shape: the code of a notebook shares a process with the host.
 */
import type { MimeBundle } from "../display/bundle.ts";
import type { JsonObject } from "../protocol/message.ts";
import type { ExpressionValue, Outcome, ThrownError } from "./evaluator.ts";

/** Whether a value is a JSON object. */
export function isObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

const textOr = (value: unknown, other: string): string =>
  typeof value === "string" ? value : other;

/** Reads an error; what is missing is left blank. */
export function readThrown(value: unknown): ThrownError {
  const { name, message, stack } = isObject(value) ? value : {};
  return {
    name: textOr(name, "Error"),
    message: textOr(message, ""),
    stack: textOr(stack, ""),
  };
}

function readExpressions(value: unknown): Record<string, ExpressionValue> {
  const found: Record<string, ExpressionValue> = {};
  for (const [name, one] of Object.entries(isObject(value) ? value : {})) {
    if (!isObject(one)) continue;
    const { status, data, error } = one;
    found[name] = status === "ok" && isObject(data)
      ? { status, data: data as MimeBundle }
      : { status: "error", error: readThrown(error) };
  }
  return found;
}

/** Reads an outcome; undefined if it is none. */
export function readOutcome(value: unknown): Outcome | undefined {
  if (!isObject(value)) return undefined;
  const { status, assigned, pages, data, error } = value;
  const all = {
    assigned: (Array.isArray(assigned) ? assigned : [])
      .filter((name): name is string => typeof name === "string"),
    pages: (Array.isArray(pages) ? pages : [])
      .filter(isObject) as readonly MimeBundle[],
    expressions: readExpressions(value.expressions),
  };
  switch (status) {
    case "ok":
      return isObject(data)
        ? { status, data: data as MimeBundle, ...all }
        : { status, ...all };
    case "error":
      return { status, error: readThrown(error), ...all };
    case "interrupted":
      return { status, ...all };
    default:
      return undefined;
  }
}

/** Whether an output holds what its kind must have. */
export function isWellFormed(type: string, content: JsonObject): boolean {
  switch (type) {
    case "stream":
      return typeof content.text === "string" &&
        (content.name === "stdout" || content.name === "stderr");
    case "display_data":
    case "update_display_data":
      return isObject(content.data);
    case "comm_open":
    case "comm_msg":
    case "comm_close":
      return typeof content.comm_id === "string";
    default:
      return true;
  }
}
