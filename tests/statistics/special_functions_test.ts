import { equal, ok } from "node:assert/strict";
import {
  bundledFunctionsFile,
  FUNCTIONS_FILE,
} from "sagbook/tasks/_functions_bundle.ts";
import { ROOT } from "../tasks/_run_task.ts";

Deno.test("bundledFunctionsFile() makes the kept functions again from their packages, byte by byte", async () => {
  let made: string;
  try {
    made = await bundledFunctionsFile();
  } catch (error) {
    const why = (error as Error).message;
    if (!/sending request|client error|registry/.test(why)) throw error;
    const skipped = `the bundle of special functions needs a network: ${why}`;
    if (Deno.env.get("SAGBOOK_ALL") === "1") throw new Error(skipped);
    console.log(`skipped: ${skipped}`);
    return;
  }
  ok(made === await Deno.readTextFile(`${ROOT}${FUNCTIONS_FILE}`));
});

Deno.test("the kept functions bear their licences", async () => {
  const folder = `${ROOT}lib/statistics/_stdlib`;
  const text = await Deno.readTextFile(`${ROOT}${FUNCTIONS_FILE}`);
  ok(text.includes("Licensed under the Apache License, Version 2.0"));
  ok(text.includes("Boost Software License, Version 1.0"));
  ok((await Deno.readTextFile(`${folder}/LICENSE`)).includes("Apache License"));
  equal(
    await Deno.readTextFile(`${folder}/NOTICE`),
    "Copyright (c) 2016-2026 The Stdlib Authors.\n",
  );
});
