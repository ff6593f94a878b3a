import { equal, rejects, throws } from "node:assert/strict";
import {
  readOrdinaryFile,
  readOrdinaryFileSync,
} from "sagbook/files/read_ordinary_file.ts";

Deno.test({
  name:
    "readOrdinaryFile() reads files and links to them, and refuses at once a folder, a pipe and a device without an end",
  ignore: Deno.build.os === "windows",
  fn: async () => {
    const folder = await Deno.makeTempDir();
    await Deno.writeTextFile(`${folder}/file`, "0.715");
    await Deno.symlink("file", `${folder}/link`);
    await new Deno.Command("mkfifo", { args: [`${folder}/pipe`] }).output();
    await Deno.symlink("/dev/zero", `${folder}/endless`);
    for (const name of ["file", "link"]) {
      const path = `${folder}/${name}`;
      const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
      equal(text(await readOrdinaryFile(path)), "0.715");
      equal(text(readOrdinaryFileSync(path)), "0.715");
    }
    const refused = [["", "a folder"], ["pipe", "a pipe"], [
      "endless",
      "a device",
    ]];
    for (const [name, kind] of refused) {
      const path = `${folder}/${name}`;
      const error = {
        name: "TypeError",
        message:
          `Cannot read ${path} as it must be an ordinary file: it is ${kind}`,
      };
      await rejects(readOrdinaryFile(path), error);
      throws(() => readOrdinaryFileSync(path), error);
    }
    await rejects(readOrdinaryFile(`${folder}/none`), Deno.errors.NotFound);
    await Deno.remove(folder, { recursive: true });
  },
});
