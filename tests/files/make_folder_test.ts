import { deepEqual, equal, match, ok, rejects } from "node:assert/strict";
import { makeFolder } from "sagbook/files/make_folder.ts";
import { processMark } from "sagbook/files/process_mark.ts";
import { contents } from "./_disks.ts";
import { inFolder } from "./_in_folder.ts";

const names = (path: string) =>
  [...Deno.readDirSync(path)].map(({ name }) => name).sort();

Deno.test("makeFolder() gives what its filler gives, and leaves no trace of a filler that fails, not even the folders above", async () => {
  await inFolder(async (path) => {
    const given = await makeFolder(`${path}/a/b/disc`, async (at) => {
      await Deno.writeTextFile(`${at}/x`, "1");
      return 7;
    });
    equal(given, 7);
    deepEqual(await contents(path), { "a/b/disc/x": "1" });
    await rejects(
      makeFolder(`${path}/c/d/disc`, async (at) => {
        await Deno.writeTextFile(`${at}/x`, "1");
        throw new RangeError("no such disc");
      }),
      { name: "RangeError", message: "no such disc" },
    );
    deepEqual(names(path), ["a"]);
  });
});

Deno.test("makeFolder() never writes over what is there, also where it came while the folder was filled", async () => {
  await inFolder(async (path) => {
    const target = `${path}/disc`;
    for (const kind of ["file", "folder", "dangling link"]) {
      const make = async () => {
        if (kind === "file") await Deno.writeTextFile(target, "old");
        else if (kind === "folder") await Deno.mkdir(target);
        else await Deno.symlink("nowhere", target);
      };
      for (const moment of ["before", "meanwhile"]) {
        if (moment === "before") await make();
        await rejects(
          makeFolder(target, async () => {
            await make();
          }),
          (error: Error) => {
            ok(error instanceof Deno.errors.AlreadyExists, kind);
            match(error.message, /^Cannot make .*Nothing was written over/);
            return true;
          },
        );
        deepEqual(names(path), ["disc"], `${kind} ${moment}`);
        await Deno.remove(target);
      }
    }
  });
});

Deno.test("makeFolder() lets one of two with the same name win, whole", async () => {
  await inFolder(async (path) => {
    const make = (text: string) =>
      makeFolder(`${path}/disc`, async (at) => {
        for (let k = 0; k < 5; k++) {
          await Deno.writeTextFile(`${at}/${k}`, text);
        }
      });
    const ends = await Promise.allSettled(["a", "b", "c"].map(make));
    equal(ends.filter(({ status }) => status === "fulfilled").length, 1);
    deepEqual(names(path), ["disc"]);
    equal(new Set(Object.values(await contents(path))).size, 1);
    equal(names(`${path}/disc`).length, 5);
  });
});

Deno.test("makeFolder() stops when told, takes away what killed ones left, and leaves living ones alone", async () => {
  await inFolder(async (path) => {
    const child = new Deno.Command(Deno.execPath(), {
      args: ["--version"],
      stdout: "null",
    }).spawn();
    await child.status;
    const machine = processMark().split("-")[0];
    const dead = `${path}/.${machine}-${child.pid}.00000000.making`;
    const living = `.${processMark()}.00000000.making`;
    await Deno.mkdir(dead);
    await Deno.writeTextFile(`${dead}/half`, "");
    await Deno.mkdir(`${path}/${living}`);
    const stop = new AbortController();
    await rejects(
      makeFolder(`${path}/disc`, () => {
        stop.abort(new Error("stopped"));
        return Promise.resolve();
      }, stop.signal),
      { message: "stopped" },
    );
    deepEqual(names(path).filter((name) => name === "disc"), []);
    await makeFolder(`${path}/disc`, () => Promise.resolve());
    deepEqual(names(path), [living, "disc"].sort());
  });
});

Deno.test("makeFolder() says in plain words what the system refused, with the name that was asked for", async () => {
  await inFolder(async (path) => {
    await Deno.writeTextFile(`${path}/file`, "");
    await rejects(
      makeFolder(`${path}/file/disc`, () => Promise.resolve()),
      /^[^:]*: Cannot write \S+\/file\/disc as a part of its path is a file \(.*\)\. Nothing was made\. Rename that file/,
    );
    const long = "x".repeat(300);
    await rejects(
      makeFolder(`${path}/${long}`, () => Promise.resolve()),
      /longer than the system takes/,
    );
    deepEqual(names(path), ["file"]);
    await rejects(
      makeFolder(`${path}/above/disc`, async (at) => {
        await Deno.remove(`${path}/above`, { recursive: true });
        await Deno.readTextFile(`${at}/x`).catch(() => {});
        throw new RangeError("no such disc");
      }),
      /^NotFound: Cannot write \S+\/above\/disc as its folder is not there \(any more\)/,
    );
  });
});
