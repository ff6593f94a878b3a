import { equal, match, ok } from "node:assert/strict";
import { describeFault } from "sagbook/files/describe_fault.ts";

async function faultOf(act: () => Promise<unknown>): Promise<unknown> {
  try {
    await act();
  } catch (error) {
    return error;
  }
  throw new Error("nothing was refused");
}

Deno.test({
  name:
    "describeFault() tells the system's real refusals apart, each with something to do",
  ignore: Deno.build.os === "windows",
  fn: async () => {
    const folder = await Deno.makeTempDir();
    await Deno.writeTextFile(`${folder}/file`, "");
    await Deno.symlink("loop", `${folder}/loop`);
    const write = (path: string) => () =>
      Deno.writeTextFile(`${folder}/${path}`, "x");
    const cases: [() => Promise<unknown>, RegExp][] = [
      [write("x".repeat(400)), /longer than the system takes/],
      [write("a/".repeat(3000) + "x"), /longer than the system takes/],
      [write("loop"), /leads back to itself/],
      [write("missing/x"), /its folder is not there/],
      [write("file/x"), /a part of its path is a file/],
      [write("."), /there is a folder of that name/],
      [() => Deno.mkdir(`${folder}/file`), /something of that name already/],
      [() => Deno.remove(folder), /something of that name already/],
    ];
    for (const [act, why] of cases) {
      const error = await faultOf(act);
      const found = describeFault(error);
      match(found.why, why, String(error));
      ok(/\.$/.test(found.remedy), found.remedy);
    }
    await Deno.remove(folder, { recursive: true });
  },
});

Deno.test("describeFault() knows what the system says of disks, rights and open files, and owns to the rest", () => {
  const cases = [
    ["No space left on device (os error 28)", /no space left/],
    ["There is not enough space on the disk. (os error 112)", /no space left/],
    ["Disk quota exceeded (os error 122)", /share of its disk/],
    ["Read-only file system (os error 30)", /read-only/],
    ["File too large (os error 27)", /larger than a file may be/],
    ["Input/output error (os error 5)", /input or output error/],
    [
      "The process cannot access the file because it is being used by another process. (os error 32)",
      /another program holds it/,
    ],
    ["Too many open files (os error 24)", /too many files are open/],
    ["Something never seen (os error 999)", /the system refused it/],
  ] as const;
  for (const [text, why] of cases) {
    match(describeFault(new Error(text)).why, why);
  }
  equal(
    describeFault(new Deno.errors.PermissionDenied("x")).why,
    "you may not write there",
  );
  equal(describeFault("no error at all").why, "the system refused it");
});
