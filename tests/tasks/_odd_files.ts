/** Things that stand where a file of readings should, and users with few rights. */

/** What may stand in a file's place, and how it comes there. */
export const ODD_KINDS = [
  "pipe",
  "device",
  "folder",
  "loop",
  "dead link",
] as const;

/** One of them. */
export type OddKind = typeof ODD_KINDS[number];

/** Puts one in the place of a path, whatever stood there. */
export async function makeOdd(kind: OddKind, path: string): Promise<void> {
  await Deno.remove(path, { recursive: true }).catch(() => {});
  switch (kind) {
    case "pipe":
      await new Deno.Command("mkfifo", { args: [path] }).output();
      return;
    case "device":
      return await Deno.symlink("/dev/zero", path);
    case "folder":
      return await Deno.mkdir(path);
    case "loop":
      return await Deno.symlink(path, path);
    case "dead link":
      return await Deno.symlink("/nowhere/at/all.csv", path);
  }
}

/** Takes from a superuser the right to pass by what a file's mode says. */
const WITHOUT_RIGHTS = [
  "setpriv",
  "--bounding-set=-dac_override,-dac_read_search",
  "--inh-caps=-all",
];

async function ends(command: readonly string[]): Promise<boolean> {
  const [program, ...args] = command;
  try {
    const { success } = await new Deno.Command(program, {
      args,
      stdout: "null",
      stderr: "null",
    }).output();
    return success;
  } catch {
    return false; // no such program
  }
}

async function findPrefix(): Promise<readonly string[] | undefined> {
  if (Deno.build.os === "windows") return undefined;
  if (Deno.uid() !== 0) return [];
  return await ends([...WITHOUT_RIGHTS, "true"]) ? WITHOUT_RIGHTS : undefined;
}

/**
 * Words before a command, under which the modes of files count also for a
 * superuser; undefined where there is no way.
 */
export const asUser: readonly string[] | undefined = await findPrefix();
