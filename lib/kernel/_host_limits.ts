import process from "node:process";

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
  process.env = withoutNames(process.env);
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

type Environment = typeof process.env;

/** Libraries list the environment when they load: for them it has no names. */
function withoutNames(environment: Environment): Environment {
  return new Proxy({}, {
    ownKeys() {
      try {
        return Reflect.ownKeys(environment);
      } catch {
        return [];
      }
    },
    has: (_, name) => Reflect.has(environment, name),
    get: (_, name) => Reflect.get(environment, name),
    set: (_, name, value) => Reflect.set(environment, name, value),
    deleteProperty: (_, name) => Reflect.deleteProperty(environment, name),
    getOwnPropertyDescriptor: (_, name) =>
      Reflect.getOwnPropertyDescriptor(environment, name),
  });
}
