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
