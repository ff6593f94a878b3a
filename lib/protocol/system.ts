/**
 * What differs between operating systems: processes, signals, private files,
 * folders. Nothing else in the workbench asks which system it runs on.
 *
 * @module
 */
import process from "node:process";
import { join } from "node:path";

const windows = Deno.build.os === "windows";

/**
 * Writes a new file that only its owner may read.
 *
 * On Windows the folder's own rights decide; user folders are private there.
 *
 * @param path Must not exist yet.
 * @param text Its content.
 * @throws {Deno.errors.AlreadyExists} If there is a file already.
 */
export async function writePrivateText(
  path: string,
  text: string,
): Promise<void> {
  await Deno.writeTextFile(path, text, {
    createNew: true,
    ...(!windows && { mode: 0o600 }),
  });
}

/** Reads a file of text. */
export function readPrivateText(path: string): Promise<string> {
  return Deno.readTextFile(path);
}

/** Signals by which a user or a system asks a process to end. */
const STOP_SIGNALS: readonly Deno.Signal[] = windows
  ? ["SIGBREAK"]
  : ["SIGTERM", "SIGHUP"];

/**
 * Calls a function when this process is asked to end.
 *
 * @param stop Called at each such signal.
 * @returns A function that takes the listener away.
 */
export function onStopSignal(stop: () => void): () => void {
  for (const signal of STOP_SIGNALS) Deno.addSignalListener(signal, stop);
  return () => {
    for (const signal of STOP_SIGNALS) Deno.removeSignalListener(signal, stop);
  };
}

/**
 * Calls a function when the user presses the interrupt key.
 *
 * @param interrupt Called at each such signal.
 * @returns A function that takes the listener away.
 */
export function onInterruptSignal(interrupt: () => void): () => void {
  Deno.addSignalListener("SIGINT", interrupt);
  return () => Deno.removeSignalListener("SIGINT", interrupt);
}

/** Sends a signal to a process; quietly does nothing if it has ended. */
export function signalProcess(
  child: Deno.ChildProcess,
  kind: "interrupt" | "stop" | "kill",
): void {
  const signal: Deno.Signal = kind === "interrupt"
    ? "SIGINT"
    : kind === "stop" && !windows
    ? "SIGTERM"
    : "SIGKILL";
  try {
    child.kill(signal);
  } catch {
    // It has ended already.
  }
}

/**
 * Tells whether the process that started this one has ended.
 *
 * @param parent Its id at the start.
 * @returns True once it is gone; on Windows always false.
 */
export function parentHasEnded(parent: number): boolean {
  if (windows) return false;
  return process.ppid !== parent;
}

/** Id of the process that started this one. */
export function parentId(): number {
  return process.ppid;
}

/**
 * The folder in which the current user's kernelspecs are looked for.
 *
 * @returns A folder, which may not exist yet.
 * @see Jupyter documentation, "Data files".
 */
export function userKernelFolder(): string {
  const set = Deno.env.get("JUPYTER_DATA_DIR");
  if (set) return join(set, "kernels");
  const home = Deno.env.get(windows ? "USERPROFILE" : "HOME") ?? ".";
  switch (Deno.build.os) {
    case "windows":
      return join(
        Deno.env.get("APPDATA") ?? join(home, "AppData", "Roaming"),
        "jupyter",
        "kernels",
      );
    case "darwin":
      return join(home, "Library", "Jupyter", "kernels");
    default:
      return join(
        Deno.env.get("XDG_DATA_HOME") || join(home, ".local", "share"),
        "jupyter",
        "kernels",
      );
  }
}

/** The folder for what may be made again, such as results of checks. */
export function userCacheFolder(): string {
  const home = Deno.env.get(windows ? "USERPROFILE" : "HOME") ?? ".";
  switch (Deno.build.os) {
    case "windows":
      return join(
        Deno.env.get("LOCALAPPDATA") ?? join(home, "AppData", "Local"),
        "sagbook",
      );
    case "darwin":
      return join(home, "Library", "Caches", "sagbook");
    default:
      return join(
        Deno.env.get("XDG_CACHE_HOME") || join(home, ".cache"),
        "sagbook",
      );
  }
}

/**
 * Variables that tell a child who started it, so that it can end with it.
 *
 * @returns The variable that Jupyter's own launchers set.
 */
export function parentEnvironment(): Record<string, string> {
  return { JPY_PARENT_PID: String(Deno.pid) };
}

/**
 * Shell that starts a program, and ends it once standard input is closed.
 *
 * The shell becomes the program, so that it keeps its process id. What waits
 * beside it for the end of the pipe is told by one line that the program needs
 * no more watching; without that line, the writer of the pipe has died.
 */
const GUARD = [
  "exec 3<&0 </dev/null",
  '{ read -r _ <&3 || kill -9 "$1$$"; } >/dev/null 2>&1 &',
  "shift",
  'exec 3<&- "$@"',
].join("\n");

/**
 * A command whose program cannot outlive the process that starts it, however
 * that one ends and from the first moment on: the program is killed when the
 * pipe to its standard input closes without a line before.
 *
 * On Windows it is the command itself, and the pipe is of no use.
 *
 * @param command Program and arguments.
 * @param ownGroup Whether it is started as the leader of a group; the whole
 * group is then killed.
 * @returns The command to start, with standard input as a pipe.
 */
export function guardedCommand(
  command: readonly string[],
  ownGroup = false,
): readonly string[] {
  if (windows) return command;
  return ["/bin/sh", "-c", GUARD, "sh", ownGroup ? "-" : "", ...command];
}

/**
 * Refuses a command whose program is not there.
 *
 * @param program Name, looked for on the search path, or path.
 * @throws {Deno.errors.NotFound} If there is no such program.
 */
export function expectProgram(program: string): void {
  if (windows) return; // the start itself tells
  const folders = program.includes("/")
    ? [""]
    : (Deno.env.get("PATH") ?? "").split(":").map((folder) => `${folder}/`);
  const isFile = (path: string) => {
    try {
      return Deno.statSync(path).isFile;
    } catch {
      return false;
    }
  };
  if (folders.some((folder) => isFile(folder + program))) return;
  throw new Deno.errors.NotFound(
    `Cannot start a program as it must be there: current value is ${program}`,
  );
}
