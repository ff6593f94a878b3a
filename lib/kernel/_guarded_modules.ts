import { join } from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";

type Names = Readonly<Record<string, string>>;

/** Modules of the runtime that a limited notebook gets with parts refused. */
const GUARDED = ["fs", "worker_threads"] as const;

/**
 * Writes modules that stand for parts of the runtime.
 *
 * A module's named exports cannot be changed, its default export can: the host
 * takes away there what is refused, and these modules export what is left.
 *
 * @returns Their addresses by every name that the runtime's own have.
 */
export async function writeGuardedModules(folder: string): Promise<Names> {
  const addresses: Record<string, string> = {};
  for (const name of GUARDED) {
    const real = process.getBuiltinModule(`node:${name}`);
    const names = Object.keys(real).filter((one) => /^[\w$]+$/.test(one));
    const path = join(folder, `${name}.ts`);
    await Deno.writeTextFile(
      path,
      [
        'import process from "node:process";',
        `const real = process.getBuiltinModule("node:${name}");`,
        "export default real;",
        `export const { ${names.join(", ")} } = real;\n`,
      ].join("\n"),
    );
    addresses[name] = addresses[`node:${name}`] = pathToFileURL(path).href;
  }
  return addresses;
}

/**
 * Puts guarded modules in the place of the runtime's own in an import map,
 * also where the map has another name for one.
 */
export function guardNames(names: Names, guarded: Names): Names {
  return Object.fromEntries(
    Object.entries(names)
      .filter(([name]) => !Object.hasOwn(guarded, name))
      .map(([name, target]) => [
        name,
        Object.hasOwn(guarded, target) ? guarded[target] : target,
      ]),
  );
}
