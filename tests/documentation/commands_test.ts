import { equal, match, notEqual, ok } from "node:assert/strict";
import { LIMIT_WORDS } from "../../lib/tasks/_notebook_limits.ts";
import { ROOT } from "../tasks/_run_task.ts";
import {
  type Command,
  commandOf,
  fileOfTask,
  run,
  runCommand,
  TASKS,
  wordsOf,
} from "./_commands.ts";
import { DOCUMENTS, textOf } from "./_documents.ts";
import { blocksOf, codeSpansOf } from "./_markdown.ts";

/** Every command that a document shows, in a block or in a line. */
function commandsIn(path: string): { where: string; command: Command }[] {
  const page = textOf(path);
  const lines = blocksOf(page)
    .filter(({ language }) => language === "sh")
    .flatMap(({ text }) => text.replace(/\\\n\s*/g, " ").split("\n"))
    .filter((line) => line.trim() !== "");
  const spans = codeSpansOf(page).filter((code) =>
    code.startsWith("deno task ")
  );
  return [...lines, ...spans].flatMap((where) => {
    const command = commandOf(where);
    return command === undefined
      ? []
      : [{ where: `${path}: ${where}`, command }];
  });
}

/** Flags that are none, where a page tells how a slip is answered. */
const SLIPS = ["--notebok", "--hlep"];

Deno.test("every command in the documents names a task and flags that its help names", async () => {
  const helps = new Map<string, string>();
  const found = DOCUMENTS.flatMap(commandsIn);
  ok(found.length >= 40, `${found.length} commands`);
  for (const { where, command: { task, args } } of found) {
    ok(TASKS.has(task), where);
    if (fileOfTask(task) === undefined) {
      equal(args.length, 0, where);
      continue;
    }
    if (!helps.has(task)) {
      const { text } = await runCommand({ task, args: ["--help"] }, ROOT);
      helps.set(task, text);
    }
    for (const flag of args.filter((word) => word.startsWith("--"))) {
      const name = flag.replace(/=.*/, "");
      const known = new RegExp(`(?<![\\w-])${name}(?![\\w-])`);
      ok(SLIPS.includes(name) || known.test(helps.get(task)!), where);
    }
  }
});

Deno.test("deno task lists every task with what it does, also after a slip in its name", async () => {
  const { tasks } = JSON.parse(textOf("deno.json"));
  for (const args of [["task"], ["task", "reprot"]]) {
    const { code, text } = await run(args, ROOT);
    equal(code === 0, args.length === 1);
    if (args.length === 2) match(text, /Task not found: reprot/);
    for (const name of TASKS.keys()) {
      const { description } = tasks[name];
      match(description ?? "", /^\S.{15,90}[^.]$/, name);
      ok(text.includes(`- ${name}\n`), name);
      ok(text.includes(`// ${description}\n`), name);
    }
  }
});

Deno.test("every task says what to do about a folder that is not there, and about a slip in a flag", async () => {
  const folders = [...TASKS.keys()].filter((name) =>
    ["report", "gauge", "plan", "history", "check", "record"].includes(name)
  );
  equal(folders.length, 6);
  for (const task of folders) {
    const said = await runCommand({ task, args: ["/nowhere/at-all"] }, ROOT);
    notEqual(said.code, 0, task);
    match(said.text, /there is no such folder/, task);
    match(said.text, /deno task new FOLDER/, task);
  }
  const empty = await Deno.makeTempDir({ prefix: "empty-" });
  for (const task of folders) {
    const said = await runCommand({ task, args: [empty] }, ROOT);
    notEqual(said.code, 0, task);
    match(
      said.text,
      /piece\.json: the file is missing|there is no piece/,
      task,
    );
  }
  await Deno.remove(empty);
});

Deno.test("README.md and DEVELOPERS.md say what a notebook may read in the words of the tasks' help", () => {
  const words =
    "this project's lib, notebooks and data, and the runtime's own cache, and";
  const plain = (text: string) => text.replace(/\s+/g, " ");
  for (
    const text of [LIMIT_WORDS, textOf("README.md"), textOf("DEVELOPERS.md")]
  ) {
    ok(plain(text).includes(words));
  }
});

Deno.test("wordsOf() takes quoted words and comments, and refuses the rest of a shell", () => {
  equal(
    wordsOf('deno task radius "0.715 mm" # a comment').join("|"),
    "deno|task|radius|0.715 mm",
  );
  for (const line of ["a | b", "a > b", "a && b", "$HOME", "`a`", '"$a"']) {
    let refused = false;
    try {
      wordsOf(line);
    } catch (error) {
      refused = error instanceof SyntaxError;
    }
    ok(refused, line);
  }
});
