/** Lends a temporary folder to a test, and takes it away whatever happens. */
export async function inFolder<T>(
  use: (path: string) => Promise<T>,
): Promise<T> {
  const path = await Deno.makeTempDir();
  try {
    return await use(path);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
}
