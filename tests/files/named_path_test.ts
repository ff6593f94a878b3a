import { equal } from "node:assert/strict";
import { posix, win32 } from "node:path";
import fc from "fast-check";
import { namedPath } from "sagbook/files/named_path.ts";

const name = fc.stringMatching(/^[a-z0-9 _.äö-]{1,8}$/)
  .filter((text) => !/^\.*$/.test(text));
const steps = fc.array(fc.oneof(name, fc.constant("..")), {
  minLength: 1,
  maxLength: 5,
});

Deno.test("namedPath() finds the same file whichever stroke parts the folders", () => {
  fc.assert(
    fc.property(steps, name, (folders, file) => {
      const parts = [...folders, file];
      const from = posix.join("shop", "disc", "piece.json");
      const found = namedPath(from, parts.join("/"));
      equal(namedPath(from, parts.join("\\")), found);
      equal(found, posix.join("shop/disc", ...parts));
      // Windows itself would find the file of the same name there.
      equal(
        win32.join("shop\\disc", parts.join("\\")).replaceAll("\\", "/"),
        found,
      );
    }),
    { seed: 11 },
  );
});

Deno.test("namedPath() leaves whole names as they are, drive letters and servers too", () => {
  for (
    const whole of [
      "/shop/bench.json",
      "C:\\shop\\bench.json",
      "d:/shop/bench.json",
      "\\\\server\\shop\\bench.json",
    ]
  ) equal(namedPath("/any/piece.json", whole), whole);
  equal(namedPath("/any/piece.json", "\\shop\\bench.json"), "/shop/bench.json");
});
