/** Runs the blocks of a page from top to bottom, in a folder of its own. */
import { equal, ok } from "node:assert/strict";
import { dirname, join } from "node:path";
import { ROOT } from "../tasks/_run_task.ts";
import { commandOf, run, runCommand, type Said } from "./_commands.ts";
import { type Block, blocksOf } from "./_markdown.ts";

/** What a page's blocks came to. */
export interface PageRun {
  /** Blocks that were run, written or compared. */
  readonly done: number;
  /** Blocks that were left out, by their first line. */
  readonly leftOut: readonly string[];
  /** Everything that the blocks printed. */
  readonly printed: string;
}

/** Everything said in a block must stand, in order, in what was printed. */
function compare(wanted: readonly string[], said: string, where: string) {
  // A narrow or fixed space between number and unit is typed as any other.
  const plain = (line: string) => line.replace(/\s+/g, " ").trim();
  const lines = said.split("\n").map(plain);
  let from = 0;
  for (const line of wanted.map(plain)) {
    if (line === "" || line === "…") continue;
    const parts = line.split("…").map((part) => part.trim());
    const fits = (one: string): boolean => {
      let at = 0;
      return parts.every((part, k) => {
        const found = one.indexOf(part, at);
        at = found + part.length;
        return found >= 0 && (k > 0 || part === "" || found === 0) &&
          (k < parts.length - 1 || part === "" || at === one.length);
      });
    };
    const found = lines.findIndex((one, k) => k >= from && fits(one));
    ok(found >= 0, `${where}: “${line}” is not among\n${said}`);
    from = found + 1;
  }
}

/** Writes the programs of a page and checks their types, all at once. */
async function writePrograms(
  blocks: readonly Block[],
  folder: string,
  path: string,
) {
  const programs = blocks.filter(({ language, file }) =>
    language === "ts" && file === undefined
  );
  const files = programs.map((block) => join(folder, `block-${block.line}.ts`));
  for (const [k, file] of files.entries()) {
    await Deno.writeTextFile(file, programs[k].text);
  }
  if (files.length === 0) return;
  const said = await run(
    ["check", `--config=${ROOT}deno.json`, ...files],
    folder,
  );
  equal(said.code, 0, `${path}: ${said.text}`);
}

/** Runs a program of the page and holds its comments to what it prints. */
async function runProgram(block: Block, folder: string, where: string) {
  const args = ["run", "-A", "--no-check", `--config=${ROOT}deno.json`];
  const said = await run([...args, `block-${block.line}.ts`], folder);
  equal(said.code, 0, `${where}: ${said.text}`);
  const comments = [...block.text.matchAll(/^(?:.*\); \/\/|\/\/ →) (.+)$/gm)];
  compare(comments.map(([, text]) => text), said.text, where);
  return said;
}

async function runLines(block: Block, folder: string, where: string) {
  const said: Said[] = [];
  for (const line of block.text.replace(/\\\n\s*/g, " ").split("\n")) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    const command = commandOf(line);
    ok(command, `${where}: no task: ${line}`);
    said.push(await runCommand(command, folder));
  }
  return {
    code: Math.max(0, ...said.map(({ code }) => code)),
    text: said.map(({ text }) => text).join("\n"),
  };
}

/**
 * Runs a page's blocks: `json` and `csv` blocks with a file's name are written,
 * `sh` blocks run, `ts` blocks checked and run, and a `text` block holds what
 * the block before it printed.
 *
 * @param path The page, from the project's root.
 * @param leaveOut First lines of blocks that are not to be run.
 */
export async function runPage(
  path: string,
  leaveOut: readonly string[] = [],
): Promise<PageRun> {
  const folder = await Deno.makeTempDir({ prefix: "page-" });
  await Deno.symlink(`${ROOT}data`, join(folder, "data"));
  const skipped: string[] = [];
  const given = new Map<string, string>();
  const printed: string[] = [];
  let said: Said | undefined;
  let done = 0;
  try {
    const blocks = blocksOf(await Deno.readTextFile(ROOT + path));
    await writePrograms(blocks, folder, path);
    for (const [k, block] of blocks.entries()) {
      const where = `${path}, line ${block.line}`;
      const first = block.text.split("\n")[0];
      if (leaveOut.includes(first)) {
        skipped.push(first);
        said = undefined;
        continue;
      }
      if (block.file !== undefined) {
        const file = join(folder, block.file);
        await Deno.mkdir(dirname(file), { recursive: true });
        await Deno.writeTextFile(file, `${block.text}\n`);
        given.set(file, `${block.text}\n`);
      } else if (block.language === "ts") {
        said = await runProgram(block, folder, where);
      } else if (block.language === "sh") {
        said = await runLines(block, folder, where);
        const shown = blocks[k + 1]?.language === "text";
        ok(said.code === 0 || shown, `${where}: ${said.text}`);
      } else if (block.language === "text") {
        ok(said, `${where}: nothing was run before it`);
        compare(block.text.split("\n"), said.text, where);
      } else ok(false, `${where}: a block of ${block.language || "nothing"}`);
      if (said !== undefined && block.language !== "text") {
        printed.push(said.text);
      }
      done++;
    }
    for (const [file, text] of given) {
      equal(
        await Deno.readTextFile(file),
        text,
        `${path}: ${file} was changed`,
      );
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
  return { done, leftOut: skipped, printed: printed.join("\n") };
}
