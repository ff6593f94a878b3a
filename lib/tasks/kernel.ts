/**
 * `deno task kernel`: installs the notebook kernel, or is it.
 *
 * @module
 */
import { explainUnitMixUp } from "../units/explain_unit_mix_up.ts";
import { parseKernelArguments } from "../kernel/kernel_arguments.ts";

if (import.meta.main) {
  const given = parseKernelArguments(Deno.args);
  if (given.action === "serve") {
    const { serveKernel } = await import("../kernel/serve_kernel.ts");
    await serveKernel(given.connectionFile, {
      folder: Deno.cwd(),
      packageConfig: given.config,
      check: given.check,
      limits: given.limits,
      explainers: [explainUnitMixUp],
      version: "0.1.0",
    });
    Deno.exit(0);
  }
}
