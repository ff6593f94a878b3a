import { deepEqual, equal } from "node:assert/strict";
import {
  cellTags,
  isJsonMimeType,
  isJsonObject,
  isRunParameters,
  RUN_EXIT_CODES,
  RUN_PARAMETERS_TAG,
} from "sagbook/notebook/mod.ts";
import { codeNotebook } from "./_notebook.ts";

Deno.test("cellTags() lists texts alone, whatever a file holds there", () => {
  const cell = (tags: string[]) => ({
    id: "a",
    metadata: { tags },
    source: "",
  });
  deepEqual(cellTags(cell(["a", "b"])), ["a", "b"]);
  deepEqual(cellTags({ id: "a", metadata: {}, source: "" }), []);
  deepEqual(cellTags({ id: "a", metadata: { tags: "a" }, source: "" }), []);
  deepEqual(
    cellTags({ id: "a", metadata: { tags: ["a", 1, null] }, source: "" }),
    ["a"],
  );
});

Deno.test("isRunParameters() knows the cell that a run has put in", () => {
  const { cells } = codeNotebook("1", ["2", RUN_PARAMETERS_TAG]);
  deepEqual(cells.map(isRunParameters), [false, true]);
});

Deno.test("isJsonMimeType() and isJsonObject() tell JSON from text and lists", () => {
  deepEqual(
    ["application/json", "application/x.y+json", "text/html", "image/svg+xml"]
      .map(isJsonMimeType),
    [true, true, false, false],
  );
  deepEqual([{}, [], null, "a", 1].map(isJsonObject), [
    true,
    false,
    false,
    false,
    false,
  ]);
});

Deno.test("RUN_EXIT_CODES gives each ending its own code, and 0 to a complete run alone", () => {
  const codes = Object.values(RUN_EXIT_CODES);
  equal(new Set(codes).size, codes.length);
  equal(RUN_EXIT_CODES.complete, 0);
});
