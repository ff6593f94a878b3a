import type { ThrownError } from "./evaluator.ts";

/** Describes whatever was thrown, with causes, so that it can be sent. */
export function describeThrown(thrown: unknown): ThrownError {
  if (!(thrown instanceof Error)) {
    return {
      name: typeof thrown === "object" && thrown !== null
        ? thrown.constructor?.name ?? "Object"
        : typeof thrown,
      message: typeof thrown === "string" ? thrown : Deno.inspect(thrown),
      stack: "",
    };
  }
  return {
    name: String(thrown.name || "Error"),
    message: String(thrown.message),
    stack: stackOf(thrown, new Set()),
  };
}

function stackOf(error: Error, seen: Set<unknown>): string {
  seen.add(error);
  let text = typeof error.stack === "string"
    ? error.stack
    : `${error.name}: ${error.message}`;
  const inner: [string, unknown][] = [];
  if (error instanceof AggregateError) {
    for (const one of error.errors) inner.push(["Of several: ", one]);
  }
  if (error.cause !== undefined) inner.push(["Caused by: ", error.cause]);
  for (const [words, one] of inner) {
    if (seen.has(one)) continue;
    text += `\n${words}${
      one instanceof Error ? stackOf(one, seen) : Deno.inspect(one)
    }`;
  }
  return text;
}
