import { deepEqual, equal, match, rejects } from "node:assert/strict";
import { processMark } from "sagbook/files/process_mark.ts";
import {
  writeAllAtomically,
  writeAtomically,
} from "sagbook/files/write_atomically.ts";
import { canMount, contents, onDisk } from "./_disks.ts";
import { inFolder } from "./_in_folder.ts";

const names = (path: string) =>
  [...Deno.readDirSync(path)].map((entry) => entry.name).sort();

Deno.test("writeAtomically() writes text and bytes and leaves nothing beside them", async () => {
  await inFolder(async (path) => {
    await writeAtomically(`${path}/a.txt`, "µ");
    await writeAtomically(`${path}/b.bin`, new Uint8Array([1, 2, 3]));
    equal(await Deno.readTextFile(`${path}/a.txt`), "µ");
    deepEqual(await Deno.readFile(`${path}/b.bin`), new Uint8Array([1, 2, 3]));
    deepEqual(names(path), ["a.txt", "b.bin"]);
  });
});

Deno.test("writeAtomically() keeps the old file's permissions", async () => {
  await inFolder(async (path) => {
    const file = `${path}/a.txt`;
    await Deno.writeTextFile(file, "old");
    await Deno.chmod(file, 0o640);
    await writeAtomically(file, "new");
    equal((await Deno.stat(file)).mode! & 0o777, 0o640);
  });
});

Deno.test("writeAtomically() leaves the old file whole when the last step fails", async () => {
  await inFolder(async (path) => {
    // A folder that is not empty cannot be replaced by a file.
    await Deno.mkdir(`${path}/target`);
    await Deno.writeTextFile(`${path}/target/old`, "old");
    await rejects(writeAtomically(`${path}/target`, "new"));
    deepEqual(names(path), ["target"]);
    equal(await Deno.readTextFile(`${path}/target/old`), "old");
  });
});

Deno.test("writeAtomically() fails without a trace where the folder is missing", async () => {
  await inFolder(async (path) => {
    await rejects(writeAtomically(`${path}/missing/a.txt`, "x"), (error) => {
      equal(error instanceof Deno.errors.NotFound, true);
      match(
        (error as Error).message,
        /^Cannot write .*missing\/a\.txt as its folder is not there \(any more\) \(.*\)\. What stood there before is unchanged\. Bring the folder back/,
      );
      return true;
    });
    deepEqual(names(path), []);
  });
});

Deno.test("writeAtomically() shows a reader the old file or the new one, never a part", async () => {
  await inFolder(async (path) => {
    const file = `${path}/a.txt`;
    const [old, young] = ["a".repeat(200_000), "b".repeat(300_000)];
    await writeAtomically(file, old);
    let writing = true;
    const writer = (async () => {
      for (let i = 0; i < 20; i++) {
        await writeAtomically(file, i % 2 === 0 ? young : old);
      }
      writing = false;
    })();
    while (writing) {
      const seen = await Deno.readTextFile(file);
      equal(seen === old || seen === young, true);
    }
    await writer;
  });
});

Deno.test("writeAllAtomically() writes and removes all files, or leaves all as they were", async () => {
  await inFolder(async (path) => {
    await writeAllAtomically([
      { path: `${path}/page`, content: "1" },
      { path: `${path}/data`, content: "1" },
      { path: `${path}/none`, content: undefined },
    ]);
    deepEqual(await contents(path), { page: "1", data: "1" });
    await rejects(
      writeAllAtomically([
        { path: `${path}/page`, content: "2" },
        { path: `${path}/data`, content: undefined },
        { path: `${path}/missing/other`, content: "2" },
      ]),
      Deno.errors.NotFound,
    );
    deepEqual(await contents(path), { page: "1", data: "1" });
    await writeAllAtomically([
      { path: `${path}/page`, content: "2" },
      { path: `${path}/data`, content: undefined },
    ]);
    deepEqual(await contents(path), { page: "2" });
  });
});

Deno.test("writeAllAtomically() refuses a folder in a file's place before it touches any other, even an empty one that was to go", async () => {
  await inFolder(async (path) => {
    await Deno.writeTextFile(`${path}/page`, "1");
    await Deno.mkdir(`${path}/data`);
    for (const content of ["2", undefined]) {
      await rejects(
        writeAllAtomically([
          { path: `${path}/page`, content: "2" },
          { path: `${path}/data`, content },
        ]),
        /Cannot write \S+\/data as there is a folder of that name \(.*\)\. What stood there before is unchanged\. Rename that folder/,
      );
      deepEqual(names(path), ["data", "page"]);
      equal(await Deno.readTextFile(`${path}/page`), "1");
    }
  });
});

Deno.test("writeAtomically() writes over a link, a dead link and a pipe without following or waiting", async () => {
  if (Deno.build.os === "windows") return;
  await inFolder(async (path) => {
    await Deno.writeTextFile(`${path}/other`, "other");
    await Deno.symlink("other", `${path}/link`);
    await Deno.symlink("dead", `${path}/dead`);
    await new Deno.Command("mkfifo", { args: [`${path}/pipe`] }).output();
    for (const name of ["link", "dead", "pipe"]) {
      await writeAtomically(`${path}/${name}`, "new");
      equal((await Deno.lstat(`${path}/${name}`)).isFile, true, name);
    }
    equal(await Deno.readTextFile(`${path}/other`), "other");
  });
});

Deno.test("writeAtomically() takes a name as long as the system does", async () => {
  await inFolder(async (path) => {
    const name = "µ".repeat(120);
    await writeAtomically(`${path}/${name}`, "x");
    deepEqual(names(path), [name]);
  });
});

Deno.test("writeAtomically() takes away what a killed process left of the same file, and nothing of a living one", async () => {
  await inFolder(async (path) => {
    const child = new Deno.Command(Deno.execPath(), {
      args: ["--version"],
      stdout: "null",
    }).spawn();
    await child.status;
    const machine = processMark().split("-")[0];
    const kept = [
      `.page.${processMark()}.00000000.part`,
      `.page.0000x-${child.pid}.00000000.part`,
      `.other.${machine}-${child.pid}.00000000.part`,
    ];
    for (
      const name of [...kept, `.page.${machine}-${child.pid}.00000000.part`]
    ) await Deno.writeTextFile(`${path}/${name}`, "half");
    await writeAtomically(`${path}/page`, "whole");
    deepEqual(names(path), [...kept, "page"].sort());
  });
});

for (
  const { kind, free, words } of [
    {
      kind: "full",
      free: 64,
      words:
        /^Cannot write \S+\/data as there is no space left on its disk \(.*os error 28.*\)\. What stood there before is unchanged\. Free some space and run this again\.\n$/,
    },
    {
      kind: "read-only",
      free: 0,
      words:
        /^Cannot write \S+\/page as its disk is read-only \(.*\)\. What stood there before is unchanged\. Copy the folder/,
    },
  ] as const
) {
  Deno.test({
    name:
      `writeAllAtomically() leaves all old files on a ${kind} disk, no part of a new one, and says what to do`,
    ignore: !canMount,
    fn: async () => {
      await inFolder(async (path) => {
        await Deno.writeTextFile(`${path}/page`, "old page");
        await Deno.writeTextFile(`${path}/data`, "old data");
        const code = `
          import { writeAllAtomically } from "sagbook/files/write_atomically.ts";
          const [path] = Deno.args;
          try {
            await writeAllAtomically([
              { path: path + "/page", content: "new" },
              { path: path + "/data", content: "x".repeat(1e6) },
            ]);
          } catch (error) {
            console.log(error.message);
          }`;
        const command = [Deno.execPath(), "eval", "--config=deno.json", code];
        const { out, err, after } = await onDisk(
          kind,
          path,
          [...command, path],
          { free },
        );
        match(out, words, err);
        deepEqual(await contents(after), {
          page: "old page",
          data: "old data",
        });
        await Deno.remove(after, { recursive: true });
      });
    },
  });
}
