import { deepEqual, equal, ok } from "node:assert/strict";
import type { z } from "zod";
import type { BenchFile } from "sagbook/records/bench_file.ts";
import type { PieceFile } from "sagbook/records/piece_file.ts";
import { recordSchema } from "sagbook/records/record_schema.ts";
import type {
  benchSchema,
  pieceSchema,
} from "../../lib/records/_file_schema.ts";

type DeepReadonly<T> = T extends readonly (infer E)[]
  ? readonly DeepReadonly<E>[]
  : T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T;
type Equal<A, B> = (<T>() => T extends A ? 1 : 2) extends
  (<T>() => T extends B ? 1 : 2) ? true : false;
type Plain<T> = DeepReadonly<T>;

Deno.test("recordSchema() comes from schemas that equal the public types", () => {
  // A difference in any key, optional mark or type makes these lines an error.
  const piece: Equal<
    Plain<z.output<typeof pieceSchema>>,
    Plain<PieceFile>
  > = true;
  const bench: Equal<
    Plain<z.output<typeof benchSchema>>,
    Plain<BenchFile>
  > = true;
  // @ts-expect-error the comparison does see a missing key
  const other: Equal<Plain<PieceFile>, Plain<Omit<PieceFile, "bevel">>> = true;
  ok(piece && bench && other);
});

Deno.test("recordSchema() equals the published copies", async () => {
  for (const name of ["piece", "bench"] as const) {
    const path = `../../lib/records/schemas/${name}.schema.json`;
    equal(
      await Deno.readTextFile(new URL(path, import.meta.url)),
      await recordSchema(name),
    );
  }
});

Deno.test("recordSchema() knows every key of the file and allows no other", async () => {
  const schema = JSON.parse(await recordSchema("bench"));
  equal(schema.$schema, "https://json-schema.org/draft/2020-12/schema");
  equal(schema.additionalProperties, false);
  deepEqual(Object.keys(schema.properties), [
    "$schema",
    "gauge",
    "rings",
    "flat",
    "work",
    "decimal_mark",
    "note",
  ]);
});
