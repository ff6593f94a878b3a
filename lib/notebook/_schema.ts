/**
 * Checks JSON against the notebook format and says in plain words what is wrong.
 *
 * @module
 */

/** One place that does not hold what the format asks for. */
export interface SchemaProblem {
  /** "cell 3, output 1, `data`". */
  readonly place: string;
  /** "must be an object". */
  readonly rule: string;
  readonly value: unknown;
}

const ORDINAL_KEYS: Readonly<Record<string, string>> = {
  cells: "cell",
  outputs: "output",
};

/** Turns `["cells", 2, "outputs", 0, "data"]` into words. */
function placeInWords(path: readonly PropertyKey[]): string {
  const words: string[] = [];
  for (let i = 0; i < path.length; i++) {
    const noun = ORDINAL_KEYS[String(path[i])];
    const next = path[i + 1];
    if (noun !== undefined && typeof next === "number") {
      words.push(`${noun} ${next + 1}`);
      i++;
    } else if (typeof path[i] === "number") {
      words.push(`item ${Number(path[i]) + 1}`);
    } else {
      words.push(`\`${String(path[i])}\``);
    }
  }
  return words.length === 0 ? "the file" : words.join(", ");
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}

async function makeCheck(): Promise<(json: unknown) => SchemaProblem[]> {
  const { z } = await import("zod");
  const object = z.looseObject({}, { error: "must be an object" });
  const lines = z.union([z.string(), z.array(z.string())], {
    error: "must be text or a list of lines",
  });
  const whole = {
    error: "must be a whole number of 0 or more, or null",
  };
  const count = z.number(whole).int(whole).min(0, whole).nullish();
  const text = z.string({ error: "must be text" });
  const output = z.discriminatedUnion("output_type", [
    z.looseObject({
      output_type: z.literal("stream"),
      name: text,
      text: lines,
    }),
    z.looseObject({
      output_type: z.enum(["display_data", "execute_result"]),
      data: object,
      metadata: object.nullish(),
      execution_count: count,
    }),
    z.looseObject({
      output_type: z.literal("error"),
      ename: text,
      evalue: text,
      traceback: z.array(z.string(), { error: "must be a list of lines" }),
    }),
  ], {
    error: "must be one of stream, display_data, execute_result, error",
  });
  const metadata = z.looseObject({
    tags: z.array(z.string(), { error: "must be a list of texts" }).optional(),
  }, { error: "must be an object" }).nullish();
  const words = { metadata, source: lines, attachments: object.nullish() };
  const cell = z.discriminatedUnion("cell_type", [
    z.looseObject({ cell_type: z.literal("markdown"), ...words }),
    z.looseObject({ cell_type: z.literal("raw"), ...words }),
    z.looseObject({
      cell_type: z.literal("code"),
      metadata,
      source: lines,
      execution_count: count,
      outputs: z.array(output, { error: "must be a list" }).nullish(),
    }),
  ], { error: "must be one of code, markdown, raw" });
  const notebook = z.looseObject({
    metadata: object.nullish(),
    cells: z.array(cell, { error: "must be a list of cells" }),
  }, { error: "must be an object" });
  return (json) => {
    const outcome = notebook.safeParse(json);
    if (outcome.success) return [];
    return outcome.error.issues.map(({ path, message }) => ({
      place: placeInWords(path),
      rule: message.startsWith("must") ? message : "must be as in format 4.5",
      value: valueAt(json, path),
    }));
  };
}

let check: Promise<(json: unknown) => SchemaProblem[]> | undefined;

/** Lists where `json` is not a notebook of format 4; empty if it is one. */
export async function schemaProblems(json: unknown): Promise<SchemaProblem[]> {
  check ??= makeCheck();
  return (await check)(json);
}
