/** Disks that are full or read-only, for a program that is to meet them. */

/** What a program left on such a disk, and how it ended. */
export interface OnDisk {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** Copy of the folder as it then was; the caller removes it. */
  readonly after: string;
}

const SCRIPT = `
kind=$1; folder=$2; before=$3; after=$4; free=$5; shift 5
cp -a "$folder/." "$before" || exit 99
mount -t tmpfs -o size=64m tmpfs "$folder" || exit 99
cp -a "$before/." "$folder"
if [ "$kind" = read-only ]; then mount -o remount,ro "$folder" || exit 99
else
  dd if=/dev/zero of="$folder/.ballast" bs=4k 2>/dev/null
  truncate -s "-\${free}k" "$folder/.ballast"
fi
"$@"
code=$?
rm -f "$folder/.ballast" 2>/dev/null
cp -a "$folder/." "$after"
exit $code`;

/** How a program gets mounts of its own here, if it can. */
async function namespace(): Promise<readonly string[] | undefined> {
  for (const flags of ["-m", "-rm"]) {
    try {
      const { code } = await new Deno.Command("unshare", {
        args: [flags, "mount", "-t", "tmpfs", "tmpfs", "/mnt"],
        stdout: "null",
        stderr: "null",
      }).output();
      if (code === 0) return ["unshare", flags];
    } catch {
      // No such program.
    }
  }
  return undefined;
}

const unshare = Deno.build.os === "linux" ? await namespace() : undefined;

/** Whether such disks can be made by this user on this system. */
export const canMount: boolean = unshare !== undefined;

/**
 * Runs a program while a folder lies on a disk of its own, which holds what the
 * folder holds and is read-only or has `free` kB left. The disk is gone with
 * the program.
 */
export async function onDisk(
  kind: "full" | "read-only",
  folder: string,
  command: readonly string[],
  { free = 0, cwd, env = {} }: {
    free?: number;
    cwd?: string;
    env?: Record<string, string>;
  } = {},
): Promise<OnDisk> {
  const before = await Deno.makeTempDir({ prefix: "before-" });
  const after = await Deno.makeTempDir({ prefix: "after-" });
  const [program, ...flags] = unshare!;
  const { code, stdout, stderr } = await new Deno.Command(program, {
    args: [
      ...flags,
      ...["sh", "-c", SCRIPT, "sh", kind, folder, before, after, `${free}`],
      ...command,
    ],
    cwd,
    env: { NO_COLOR: "1", ...env },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  await Deno.remove(before, { recursive: true });
  if (code === 99) throw new Error("the disk could not be made");
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr), after };
}

/** All files below a folder with their content, by their path in it. */
export async function contents(
  folder: string,
): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    const path = `${folder}/${name}`;
    if (!isDirectory) found[name] = await Deno.readTextFile(path);
    else {
      for (const [inner, text] of Object.entries(await contents(path))) {
        found[`${name}/${inner}`] = text;
      }
    }
  }
  return found;
}
