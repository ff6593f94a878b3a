/**
 * Files written whole or not at all, and temporary folders that do not pile up.
 *
 * @example
 * ```ts
 * import { makePrivateFolder, writeAtomically } from "sagbook/files/mod.ts";
 * import { equal } from "node:assert/strict";
 *
 * const folder = await makePrivateFolder("example");
 * await writeAtomically(`${folder}/radius.txt`, "R 3000 mm");
 * equal(await Deno.readTextFile(`${folder}/radius.txt`), "R 3000 mm");
 * await Deno.remove(folder, { recursive: true });
 * ```
 *
 * @module
 */
export { describeFault, type Fault } from "./describe_fault.ts";
export { expectWritable } from "./expect_writable.ts";
export { makeFolder } from "./make_folder.ts";
export {
  makePrivateFolder,
  sweepPrivateFolders,
  TemporaryFolderError,
} from "./private_folder.ts";
export { namedPath } from "./named_path.ts";
export { isAbandoned, processMark } from "./process_mark.ts";
export {
  readOrdinaryFile,
  readOrdinaryFileSync,
} from "./read_ordinary_file.ts";
export {
  type FileToWrite,
  writeAllAtomically,
  writeAtomically,
} from "./write_atomically.ts";
