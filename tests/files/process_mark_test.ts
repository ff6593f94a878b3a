import { equal, match } from "node:assert/strict";
import { isAbandoned, processMark } from "sagbook/files/process_mark.ts";

Deno.test("isAbandoned() knows the mark of a process that is gone, and takes no other for one", async () => {
  const script =
    'import { processMark } from "sagbook/files/process_mark.ts"; console.log(processMark());';
  const { stdout } = await new Deno.Command(Deno.execPath(), {
    args: ["eval", "--config=deno.json", script],
    env: { NO_COLOR: "1" },
  }).output();
  const gone = new TextDecoder().decode(stdout).trim();
  match(gone, /^[0-9a-f]{4}-\d+$/);
  equal(isAbandoned(gone), true);
  equal(isAbandoned(processMark()), false);
  equal(isAbandoned(`${processMark().slice(0, 5)}1`), false);
  // Another machine's process may live where it cannot be seen.
  equal(isAbandoned(gone.replace(/^..../, "zzzz")), false);
  equal(isAbandoned(""), false);
});
