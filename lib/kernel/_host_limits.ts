import process from "node:process";
import { fileURLToPath } from "node:url";

/** Ways to keep something on disk that the runtime opens to everybody. */
const STORES = ["localStorage", "sessionStorage", "caches"];

/** Classes through which one comes to the same stores. */
const STORE_CLASSES = ["Storage", "CacheStorage", "Cache"];

/** Functions that change a file which was opened only to be read. */
const BY_NUMBER = ["fchmod", "fchown", "futimes"];

/** Methods of an opened file that do the same. */
const BY_HANDLE = ["chmod", "chown", "utimes"];

function refuse(what: string, flag = ""): never {
  throw new Deno.errors.NotCapable(
    `the notebook was not allowed to ${what}${flag && ` (that needs ${flag})`}`,
  );
}

/**
 * Gives up permissions for good, and what needs none: the stores on disk, the
 * rights and times of files, and workers, whose world would be a new one.
 */
export async function giveUp(names: readonly string[]): Promise<void> {
  refuseStores();
  refuseWorkers();
  await refuseFileChanges();
  process.env = withoutNames(process.env);
  for (const name of names) {
    await Deno.permissions.revoke({ name } as Deno.PermissionDescriptor);
  }
}

function refuseStores(): void {
  for (const name of STORES) {
    Object.defineProperty(globalThis, name, {
      get: () => refuse(`keep anything in ${name}`),
      configurable: false,
    });
  }
  for (const name of STORE_CLASSES) Reflect.deleteProperty(globalThis, name);
}

function refuseWorkers(): void {
  // It does not extend the runtime's own, to which that would be a way.
  class RefusedWorker {
    constructor() {
      refuse("start a worker", "--allow-all");
    }
  }
  Object.assign(globalThis, { Worker: RefusedWorker });
  const threads = process.getBuiltinModule("node:worker_threads");
  Object.assign(threads, { Worker: RefusedWorker });
}

async function refuseFileChanges(): Promise<void> {
  const change = () =>
    refuse("change the rights or times of a file", "--allow-all");
  const files = process.getBuiltinModule("node:fs");
  for (const name of BY_NUMBER) {
    Object.assign(files, { [name]: change, [`${name}Sync`]: change });
  }
  const here = fileURLToPath(import.meta.url);
  const handle = await files.promises.open(here);
  const methods = Object.getPrototypeOf(handle);
  await handle.close();
  for (const name of BY_HANDLE) methods[name] = change;
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
