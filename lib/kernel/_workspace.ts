import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { guardNames, writeGuardedModules } from "./_guarded_modules.ts";
import { makePrivateFolder } from "../files/private_folder.ts";
import { readOrdinaryFile } from "../files/read_ordinary_file.ts";

type Names = Readonly<Record<string, string>>;

interface DenoSettings {
  imports?: Names;
  scopes?: Record<string, Names>;
  compilerOptions?: Record<string, unknown>;
}

/** A folder with the deno.json under which a notebook's cells run. */
export interface Workspace {
  /** Folder to start the evaluator in. */
  readonly folder: string;
  /** Path of its deno.json. */
  readonly config: string;
  /** Removes it. */
  remove(): Promise<void>;
}

/**
 * Joins the import map of the package with that of the user's own folder, so
 * that a notebook anywhere imports the package by its bare name, and its own
 * names as well; the user's entries win.
 *
 * The package's own dependencies are mapped for its own files alone. For a
 * limited notebook some modules of the runtime are guarded, whatever the user's
 * settings say.
 *
 * Limits: of the user's settings `imports`, `scopes` and `compilerOptions` are
 * taken; an import map in a file of its own, workspaces, package.json and
 * node_modules are not seen.
 */
export async function createWorkspace(
  notebookFolder: string,
  packageConfig: string | undefined,
  isLimited = false,
): Promise<Workspace> {
  const folder = await makePrivateFolder("workspace");
  try {
    return await fill(folder, notebookFolder, packageConfig, isLimited);
  } catch (error) {
    await Deno.remove(folder, { recursive: true }).catch(() => {});
    throw error;
  }
}

async function fill(
  folder: string,
  notebookFolder: string,
  packageConfig: string | undefined,
  isLimited: boolean,
): Promise<Workspace> {
  const guarded = isLimited ? await writeGuardedModules(folder) : {};
  const own = packageConfig ? await readSettings(packageConfig) : {};
  const root = packageConfig &&
    pathToFileURL(`${dirname(packageConfig)}/`).href;
  const users = await findSettings(notebookFolder);
  const inside = users?.path !== undefined && packageConfig !== undefined &&
    resolve(users.path) === resolve(packageConfig);
  const ownNames = absolute(own.imports ?? {}, root);
  const local: Record<string, string> = {};
  for (const [name, target] of Object.entries(ownNames)) {
    if (inside || target.startsWith("file:")) local[name] = target;
  }
  const userRoot = users && pathToFileURL(`${dirname(users.path)}/`).href;
  const config = {
    imports: {
      ...local,
      ...guardNames(
        absolute(users?.settings.imports ?? {}, userRoot),
        guarded,
      ),
      ...guarded,
    },
    scopes: {
      ...(root && { [root]: ownNames }),
      ...(inside ? {} : guardScopes(
        absoluteScopes(users?.settings.scopes, userRoot),
        guarded,
      )),
    },
    compilerOptions: {
      strict: true,
      ...own.compilerOptions,
      ...users?.settings.compilerOptions,
    },
  };
  const path = join(folder, "deno.json");
  await Deno.writeTextFile(path, JSON.stringify(config, null, 2));
  if (packageConfig) {
    // Versions that the package was tested with; a copy, so that what the
    // notebook adds does not change the package's own file.
    await Deno.copyFile(
      join(dirname(packageConfig), "deno.lock"),
      join(folder, "deno.lock"),
    ).catch(() => {});
  }
  return {
    folder,
    config: path,
    remove: () => Deno.remove(folder, { recursive: true }).catch(() => {}),
  };
}

function guardScopes(
  scopes: Record<string, Names>,
  guarded: Names,
): Record<string, Names> {
  return Object.fromEntries(
    Object.entries(scopes).map(([scope, names]) => [
      scope,
      guardNames(names, guarded),
    ]),
  );
}

async function findSettings(folder: string) {
  for (let at = resolve(folder);; at = dirname(at)) {
    for (const name of ["deno.json", "deno.jsonc"]) {
      const path = join(at, name);
      try {
        return { path, settings: await readSettings(path) };
      } catch (error) {
        if (!(error instanceof Deno.errors.NotFound)) throw error;
      }
    }
    if (dirname(at) === at) return;
  }
}

async function readSettings(path: string): Promise<DenoSettings> {
  const text = new TextDecoder().decode(await readOrdinaryFile(path));
  try {
    return JSON.parse(text);
  } catch {
    const { default: ts } = await import("typescript");
    const { config, error } = ts.parseConfigFileTextToJson(path, text);
    if (error) {
      throw new SyntaxError(
        `Cannot start the kernel as ${path} must be JSON: ${
          ts.flattenDiagnosticMessageText(error.messageText, "\n")
        }`,
      );
    }
    return config;
  }
}

function absolute(names: Names, root: string | undefined): Names {
  return Object.fromEntries(
    Object.entries(names).map(([name, target]) => [
      name,
      root && /^\.{0,2}\//.test(target) ? new URL(target, root).href : target,
    ]),
  );
}

function absoluteScopes(
  scopes: Record<string, Names> | undefined,
  root: string | undefined,
): Record<string, Names> {
  return Object.fromEntries(
    Object.entries(scopes ?? {}).map(([scope, names]) => [
      root ? new URL(scope, root).href : scope,
      absolute(names, root),
    ]),
  );
}
