/**
 * `deno task doc`: the documentation of all that the library exports, as pages.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { offlineEnvironment } from "../cells/offline_environment.ts";
import { DRESS, DRESS_FILE, dressPage } from "./_doc_dress.ts";
import { type DocLayer, frontModule } from "./_doc_front.ts";
import { ROOT } from "./_root.ts";
import { displayPath, EXIT } from "./_task_words.ts";
import { complain, say } from "./_terminal.ts";
import { runTool, type ToolCall } from "./_tool.ts";

/** A page that every documentation has, and hardly anything else. */
const SIGN = "all_symbols.html";

const USAGE = `deno task doc [--out FOLDER]

Writes the documentation of all that the library exports, with its examples, as
HTML pages that need no network: FOLDER/index.html is the first. An older
documentation there is replaced; a folder that holds anything else is left as
it is.

  --out FOLDER  where to write; the folder ".doc" of the project unless told
  --help        this text

Exit codes: 0 written, 1 failed, 2 wrong call.`;

/** The exports of the package but its own, from `deno.json`. */
async function layersOf(config: {
  readonly exports: Readonly<Record<string, string>>;
}): Promise<DocLayer[]> {
  const names = Object.keys(config.exports).filter((name) => name !== ".");
  return await Promise.all(names.map(async (name) => ({
    name: name.slice(2),
    source: await Deno.readTextFile(join(ROOT, config.exports[name])),
  })));
}

/** Copies a folder, the tasks left out. */
async function copyFolder(from: string, to: string): Promise<void> {
  await Deno.mkdir(to, { recursive: true });
  for await (const { name, isDirectory } of Deno.readDir(from)) {
    if (isDirectory && name === "tasks") continue;
    const [source, target] = [join(from, name), join(to, name)];
    if (isDirectory) await copyFolder(source, target);
    else await Deno.copyFile(source, target);
  }
}

/**
 * Writes a copy of the library in which every module has the name that a user
 * imports it by: the pages show the names of files otherwise.
 */
async function namedCopy(folder: string): Promise<string[]> {
  const config = JSON.parse(await Deno.readTextFile(join(ROOT, "deno.json")));
  const layers = await layersOf(config);
  await copyFolder(join(ROOT, "lib"), join(folder, "sagbook"));
  await Deno.copyFile(join(ROOT, "deno.lock"), join(folder, "deno.lock"));
  const imports = Object.entries(config.imports as Record<string, string>)
    .map(([name, path]) => [name, path.replace("./lib/", "./sagbook/")]);
  const files = layers.map(({ name }) => `./sagbook/${name}/mod.ts`);
  await Deno.writeTextFile(
    join(folder, "deno.json"),
    JSON.stringify({
      compilerOptions: config.compilerOptions,
      imports: Object.fromEntries(imports),
      exports: {
        ".": "./mod.ts",
        ...Object.fromEntries(
          layers.map(({ name }, k) => [`./sagbook/${name}`, files[k]]),
        ),
      },
    }),
  );
  const main = await Deno.readTextFile(join(ROOT, config.exports["."]));
  await Deno.writeTextFile(join(folder, "mod.ts"), frontModule(main, layers));
  return ["mod.ts", ...files];
}

/** What a folder holds, that is no documentation; undefined if it may go. */
function strangerIn(folder: string): string | undefined {
  let names: string[];
  try {
    names = [...Deno.readDirSync(folder)].map(({ name }) => name);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  }
  return names.length === 0 || names.includes(SIGN) ? undefined : names[0];
}

/** Dresses every page in a folder. */
async function dressAll(folder: string): Promise<void> {
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    const path = join(folder, name);
    if (isDirectory) await dressAll(path);
    else if (name.endsWith(".html")) {
      await Deno.writeTextFile(path, dressPage(await Deno.readTextFile(path)));
    }
  }
}

async function writeDoc({ flags }: ToolCall): Promise<number> {
  const out = typeof flags.out === "string"
    ? resolve(flags.out)
    : join(ROOT, ".doc");
  const stranger = strangerIn(out);
  if (stranger !== undefined) {
    complain(
      `${
        displayPath(out)
      } holds ${stranger}, which is no documentation: name another folder with --out.`,
    );
    return EXIT.failed;
  }
  const copy = await Deno.makeTempDir({ prefix: "sagbook-doc-" });
  await Deno.mkdir(dirname(out), { recursive: true });
  // Beside its place, so that it can be put there in one step when it is whole.
  const made = await Deno.makeTempDir({
    dir: dirname(out),
    prefix: `${basename(out)}.`,
  });
  try {
    const modules = await namedCopy(copy);
    const { success, stdout, stderr } = await new Deno.Command(
      Deno.execPath(),
      {
        args: [
          "doc",
          "--html",
          "--name=sagbook",
          `--output=${made}`,
          ...modules,
        ],
        cwd: copy,
        env: { NO_COLOR: "1", ...offlineEnvironment() },
        stdout: "piped",
        stderr: "piped",
      },
    ).output();
    const said = new TextDecoder().decode(stdout) +
      new TextDecoder().decode(stderr);
    if (!success) {
      complain(`No documentation was made: ${said.trim()}`);
      return EXIT.failed;
    }
    await Deno.writeTextFile(join(made, DRESS_FILE), DRESS);
    await dressAll(made);
    await Deno.remove(out, { recursive: true }).catch(() => {});
    await Deno.rename(made, out);
    say(`Documentation: ${displayPath(join(out, "index.html"))}`);
    return EXIT.ok;
  } finally {
    for (const folder of [copy, made]) {
      await Deno.remove(folder, { recursive: true }).catch(() => {});
    }
  }
}

if (import.meta.main) {
  const code = await runTool(
    { usage: USAGE, flags: { out: "value" }, run: writeDoc },
    Deno.args,
  );
  Deno.exit(code);
}
