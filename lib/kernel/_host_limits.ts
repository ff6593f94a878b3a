/** Ways to keep something on disk that the runtime opens to everybody. */
const STORES = ["localStorage", "sessionStorage", "caches"];

/**
 * Gives up permissions for good, and what needs none: the stores on disk, and
 * workers with permissions of their own.
 */
export async function giveUp(names: readonly string[]): Promise<void> {
  for (const name of STORES) {
    Object.defineProperty(globalThis, name, {
      get() {
        throw new Deno.errors.NotCapable(
          `the notebook was not allowed to keep anything in ${name}`,
        );
      },
      configurable: false,
    });
  }
  const Plain = globalThis.Worker;
  globalThis.Worker = class extends Plain {
    constructor(url: string | URL, options?: WorkerOptions) {
      // Asked for, the runtime ends the whole process.
      if (options && "deno" in options) {
        throw new Deno.errors.NotCapable(
          "the notebook was not allowed to give a worker permissions of its own",
        );
      }
      super(url, options);
    }
  };
  for (const name of names) {
    await Deno.permissions.revoke({ name } as Deno.PermissionDescriptor);
  }
}

/** What fails for want of a network is said to be what it is. */
export function explainMissing(error: unknown, name: string): unknown {
  const text = error instanceof Error ? error.message : "";
  return /error sending request|client error \(Connect\)/.test(text)
    ? new Deno.errors.NotCapable(
      `the notebook was not allowed to fetch ${name} (that needs --allow-import)`,
    )
    : error;
}
