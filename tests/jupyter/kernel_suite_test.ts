import { deepEqual } from "node:assert/strict";
import { hasSuite, installBoth, runSuite } from "./_kernels.ts";

const NAME =
  "Kernel() passes every test of Jupyter's own suite for kernels, with a sample for each optional one";
const isThere = await hasSuite();
if (!isThere && Deno.env.get("SAGBOOK_ALL") !== "1") {
  console.log(`skipped: ${NAME} needs python3-jupyter-kernel-test`);
}

Deno.test({
  name: NAME,
  ignore: !isThere && Deno.env.get("SAGBOOK_ALL") !== "1",
  async fn() {
    if (!isThere) {
      throw new Error(
        "SAGBOOK_ALL=1 allows no skip, but python3-jupyter-kernel-test is missing",
      );
    }
    const { folder, env } = await installBoth();
    const { run, failures, skipped, text } = await runSuite(
      "sagbook",
      env,
      folder,
    );
    deepEqual(
      { run, failures, skipped },
      { run: 12, failures: 0, skipped: 0 },
      text,
    );
    await Deno.remove(folder, { recursive: true });
  },
});
