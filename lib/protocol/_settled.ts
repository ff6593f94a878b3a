/** Waits for a promise, but no longer than the limit in ms; tells if it came. */
export async function settled(
  promise: Promise<unknown>,
  limit: number,
): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((resolve) =>
    timer = setTimeout(() => resolve(false), limit)
  );
  try {
    return await Promise.race([promise.then(() => true, () => true), late]);
  } finally {
    clearTimeout(timer);
  }
}
