import { equal, match, notEqual } from "node:assert/strict";
import { basename, dirname, join } from "node:path";
import {
  makePrivateFolder,
  sweepPrivateFolders,
} from "sagbook/files/private_folder.ts";

const exists = (path: string) => Deno.stat(path).then(() => true, () => false);

Deno.test("makePrivateFolder() makes a new folder each time, for its owner alone", async () => {
  const [one, other] = [
    await makePrivateFolder("test"),
    await makePrivateFolder("test"),
  ];
  notEqual(one, other);
  match(basename(one), new RegExp(`^sagbook-test-[0-9a-f]{4}-${Deno.pid}-`));
  if (Deno.build.os !== "windows") {
    equal((await Deno.stat(one)).mode! & 0o777, 0o700);
  }
  await Deno.remove(one);
  await Deno.remove(other);
});

Deno.test("sweepPrivateFolders() takes away what a dead process left, with its content, and nothing else", async () => {
  const own = await makePrivateFolder("test");
  const child = new Deno.Command(Deno.execPath(), {
    args: ["--version"],
    stdout: "null",
  })
    .spawn();
  await child.status;
  const [start, , machine] = /^(sagbook)-(test)-([0-9a-f]{4})-/.exec(
    basename(own),
  )!.slice(1);
  const make = async (name: string) => {
    const path = join(dirname(own), name);
    await Deno.mkdir(path);
    await Deno.writeTextFile(join(path, "connection.json"), "{}");
    return path;
  };
  const mark = crypto.randomUUID().slice(0, 8);
  const dead = await make(`${start}-test-${machine}-${child.pid}-${mark}`);
  const elsewhere = await make(`${start}-test-zzzz-${child.pid}-${mark}`);
  const foreign = await make(`other-test-${machine}-${child.pid}-${mark}`);
  await sweepPrivateFolders();
  equal(await exists(dead), false);
  for (const kept of [own, elsewhere, foreign]) {
    equal(await exists(kept), true, kept);
    await Deno.remove(kept, { recursive: true });
  }
});

/** What a process with a temporary folder of its own makes, or says. */
async function madeUnder(place: string, longest?: number) {
  const module = new URL("../../lib/files/private_folder.ts", import.meta.url);
  const { stdout } = await new Deno.Command(Deno.execPath(), {
    args: [
      "eval",
      "--no-check",
      `import { makePrivateFolder, TemporaryFolderError } from "${module}";
       await makePrivateFolder("test", ${longest ?? "undefined"}).then(
         (path) => { console.log(path); Deno.removeSync(path); },
         (error) => console.log(
           error instanceof TemporaryFolderError && error.name + ": " + error.message));`,
    ],
    env: { TMPDIR: place, NO_COLOR: "1" },
    stderr: "inherit",
  }).output();
  return new TextDecoder().decode(stdout).trim();
}

Deno.test({
  name:
    "makePrivateFolder() goes elsewhere with a socket where the temporary folder's own path is too long for one",
  ignore: Deno.build.os === "windows",
  fn: async () => {
    const root = await Deno.makeTempDir();
    const place = join(root, "x".repeat(100), "y".repeat(100));
    await Deno.mkdir(place, { recursive: true });
    match(await madeUnder(place), new RegExp(`^${place}/sagbook-test-`));
    const short = await madeUnder(place, 100);
    match(short, /^\/(tmp|var\/tmp|dev\/shm)\/sagbook-test-/);
    equal(short.length <= 100, true, short);
    await Deno.remove(root, { recursive: true });
  },
});

Deno.test({
  name:
    "makePrivateFolder() says what to set where the temporary folder is missing, a file, or cannot be written",
  ignore: Deno.build.os === "windows",
  fn: async () => {
    const root = await Deno.makeTempDir();
    await Deno.writeTextFile(`${root}/file`, "");
    for (
      const [place, why] of [
        [`${root}/none`, "there is no such folder"],
        [`${root}/file`, "a part of its path is a file"],
      ]
    ) {
      match(
        await madeUnder(place),
        new RegExp(
          `^TemporaryFolderError: Cannot make a temporary folder as TMPDIR must name a folder that can be written: current value is ${place}, and ${why} \\(.*\\)\\. Set TMPDIR to a folder of yours with a short name, and run this again\\.$`,
        ),
      );
    }
    await Deno.remove(root, { recursive: true });
  },
});
