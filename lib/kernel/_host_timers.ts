type Callback = (...given: unknown[]) => unknown;

/**
 * Catches what a timer's callback throws, while it is still known which cell
 * set the timer; the runtime's own report has lost it.
 */
export function guardTimers(report: (thrown: unknown) => void): void {
  const guard = (callback: unknown) =>
    typeof callback !== "function" ? callback : (...given: unknown[]) => {
      try {
        return (callback as Callback)(...given);
      } catch (thrown) {
        report(thrown);
      }
    };
  const scope = globalThis as unknown as Record<string, Callback>;
  for (const name of ["setTimeout", "setInterval", "queueMicrotask"]) {
    const original = scope[name];
    scope[name] = (callback, ...rest) => original(guard(callback), ...rest);
  }
}
