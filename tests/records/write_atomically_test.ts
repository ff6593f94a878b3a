import { deepEqual, equal, rejects } from "node:assert/strict";
import { writeAtomically } from "sagbook/records/write_atomically.ts";

async function inFolder(use: (path: string) => Promise<void>): Promise<void> {
  const path = await Deno.makeTempDir();
  try {
    await use(path);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
}

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
    await rejects(
      writeAtomically(`${path}/missing/a.txt`, "x"),
      Deno.errors.NotFound,
    );
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
