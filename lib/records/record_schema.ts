/**
 * The JSON Schemas of the settings files, for editors.
 *
 * @module
 */

/** A settings file that has a schema. */
export type RecordSchemaName = "piece" | "bench";

const TITLES: Readonly<Record<RecordSchemaName, string>> = {
  piece: "A piece of glass that is being made (piece.json)",
  bench: "Gauge, rings and reference flat (bench.json)",
};

/**
 * Makes the JSON Schema of `piece.json` or `bench.json`.
 *
 * An editor that finds it under the key `$schema` of the file completes and
 * checks what is typed. It is made from the schema that the reader itself
 * uses; the copies in `lib/records/schemas/` are tested to be current.
 *
 * What one file says about another, and what depends on two values at once
 * (a target stated twice, spacings that make no triangle), is checked by the
 * reader alone.
 *
 * @param name Which file.
 * @returns The schema as JSON text, draft 2020-12, with a final line end.
 *
 * @example
 * ```ts
 * import { recordSchema } from "sagbook/records/record_schema.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const schema = JSON.parse(await recordSchema("piece"));
 * deepEqual(schema.required, ["name", "form", "diameter"]);
 * ```
 */
export async function recordSchema(name: RecordSchemaName): Promise<string> {
  const { pieceSchema, benchSchema } = await import("./_file_schema.ts");
  const { toJSONSchema } = await import("zod");
  const schema = name === "piece" ? pieceSchema : benchSchema;
  const { $schema, ...rest } = toJSONSchema(schema, { io: "input" });
  return `${
    JSON.stringify({ $schema, title: TITLES[name], ...rest }, null, 2)
  }\n`;
}
