/** The kernel that comes with the runtime, for Jupyter's programs to find. */

/** Its command. */
export const RUNTIME_KERNEL: readonly string[] = [
  Deno.execPath(),
  "jupyter",
  "--kernel",
  "--conn",
  "{connection_file}",
];

/** Writes its kernelspec under a folder of Jupyter's data. */
export async function writeRuntimeKernel(data: string): Promise<void> {
  const folder = `${data}/kernels/deno`;
  await Deno.mkdir(folder, { recursive: true });
  await Deno.writeTextFile(
    `${folder}/kernel.json`,
    JSON.stringify({
      argv: RUNTIME_KERNEL,
      display_name: "Deno",
      language: "typescript",
    }),
  );
}
