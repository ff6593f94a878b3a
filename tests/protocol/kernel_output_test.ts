import { deepEqual, equal } from "node:assert/strict";
import { readError, readOutput } from "sagbook/protocol/kernel_output.ts";
import { createMessage, type JsonObject } from "sagbook/protocol/message.ts";

const read = (type: string, content: JsonObject) =>
  readOutput(createMessage({ type, session: "s", content }));

Deno.test("readOutput() gives each of the six kinds in the shape a notebook keeps", () => {
  const data = { "text/plain": "1" };
  deepEqual(read("stream", { name: "stderr", text: "x" }), {
    output_type: "stream",
    name: "stderr",
    text: "x",
  });
  deepEqual(read("display_data", { data, metadata: { a: 1 } }), {
    output_type: "display_data",
    data,
    metadata: { a: 1 },
  });
  deepEqual(
    read("display_data", {
      data,
      metadata: {},
      transient: { display_id: "d" },
    }),
    {
      output_type: "display_data",
      data,
      metadata: {},
      transient: { display_id: "d" },
    },
  );
  deepEqual(
    read("execute_result", { data, metadata: {}, execution_count: 4 }),
    {
      output_type: "execute_result",
      execution_count: 4,
      data,
      metadata: {},
    },
  );
  deepEqual(
    read("update_display_data", { data, transient: { display_id: "d" } }),
    {
      output_type: "update_display_data",
      data,
      metadata: {},
      transient: { display_id: "d" },
    },
  );
  deepEqual(read("clear_output", { wait: true }), {
    output_type: "clear_output",
    wait: true,
  });
  deepEqual(read("error", { ename: "E", evalue: "v", traceback: ["t"] }), {
    output_type: "error",
    ename: "E",
    evalue: "v",
    traceback: ["t"],
  });
});

Deno.test("readOutput() passes over other messages and those that lack their content", () => {
  equal(read("status", { execution_state: "idle" }), undefined);
  equal(read("stream", { name: "stdout" }), undefined);
  for (
    const type of ["display_data", "execute_result", "update_display_data"]
  ) {
    equal(read(type, { data: [] }), undefined);
  }
});

Deno.test("readError() stands in for missing parts", () => {
  deepEqual(readError({}), { ename: "Error", evalue: "", traceback: [] });
});
