/** Waits for a promise up to a limit in ms; tells whether it was kept by then. */
export async function within(
  promise: Promise<unknown>,
  limit: number,
): Promise<boolean> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<boolean>((done) =>
    timer = setTimeout(() => done(false), limit)
  );
  const kept = await Promise.race([promise.then(() => true), late]);
  clearTimeout(timer);
  return kept;
}
