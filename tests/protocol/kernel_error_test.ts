import { equal } from "node:assert/strict";
import {
  describeExit,
  KernelDiedError,
  TimeLimitError,
} from "sagbook/protocol/kernel_error.ts";

Deno.test("describeExit() names the code, or the signal where one ended the process", () => {
  equal(describeExit({ code: 3, signal: null }), "exit code 3");
  equal(describeExit({ code: 137, signal: "SIGKILL" }), "signal SIGKILL");
});

Deno.test("KernelDiedError() and TimeLimitError() say what happened in one sentence", () => {
  const exit = { code: 3, signal: null, expected: false, log: "" };
  equal(new KernelDiedError(exit).message, "the kernel ended (exit code 3)");
  equal(
    new TimeLimitError(2_000, true).message,
    "the cell ran longer than 2 s and was stopped",
  );
});
