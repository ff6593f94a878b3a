/**
 * The one who answers what a notebook's code may do.
 *
 * @module
 */
import { dirname, join, resolve, sep } from "node:path";
import { makePrivateFolder } from "../files/private_folder.ts";
import { closeQuietly, linesOf } from "./_lines.ts";
import type { PermissionLimits, PermissionName } from "./permission_limits.ts";

interface BrokerRequest {
  readonly id: number;
  readonly permission: PermissionName;
  readonly value: string | null;
}

/** Bytes of the longest path of a local socket, on any system. */
const LONGEST_PATH = 103;

const encoder = new TextEncoder();

/**
 * Answers each question of the evaluator whether it may do something.
 *
 * The runtime asks over a local socket before it touches a file, the network
 * or a program, for its own module loading as well. A question that is not
 * understood is answered with no.
 *
 * The runtime does not ask where it has been told that all is allowed and takes
 * a short way (`require` of a file), nor when it fetches an npm package: what
 * starts it must take its own permissions away and close its way out
 * ({@linkcode offlineEnvironment}).
 */
export class PermissionBroker {
  /** Path of the socket, for DENO_PERMISSION_BROKER_PATH. */
  readonly path: string;
  #listener: Deno.UnixListener;
  #limits: PermissionLimits;
  #closed = false;
  #connections = new Set<Deno.UnixConn>();

  private constructor(
    path: string,
    limits: PermissionLimits,
  ) {
    this.path = path;
    this.#limits = limits;
    this.#listener = Deno.listen({ transport: "unix", path });
    this.#accept();
  }

  /** True where the runtime asks over a socket that this class can open. */
  static get isSupported(): boolean {
    return Deno.build.os !== "windows";
  }

  /**
   * Listens in a new folder that only the user can enter.
   *
   * @param limits What is granted.
   * @returns It, listening.
   * @throws {Error} If no temporary folder can be made for its socket.
   */
  static async start(limits: PermissionLimits): Promise<PermissionBroker> {
    const folder = await makePrivateFolder("broker", LONGEST_PATH - 2);
    return new PermissionBroker(join(folder, "s"), limits);
  }

  /**
   * Changes the limits from the next question on.
   *
   * @param limits What is granted from then on.
   */
  restrict(limits: PermissionLimits): void {
    this.#limits = limits;
  }

  /** Stops listening; every later question is then refused by the runtime. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    this.#listener.close();
    for (const connection of this.#connections) closeQuietly(connection);
    await Deno.remove(dirname(this.path), { recursive: true }).catch(() => {});
  }

  async #accept(): Promise<void> {
    try {
      for await (const connection of this.#listener) this.#answer(connection);
    } catch {
      // Closed.
    }
  }

  async #answer(connection: Deno.UnixConn): Promise<void> {
    this.#connections.add(connection);
    try {
      for await (const lines of linesOf(connection)) {
        const answers = lines.map((line) => this.#decide(line)).join("");
        const bytes = encoder.encode(answers);
        for (let at = 0; at < bytes.length;) {
          at += await connection.write(bytes.subarray(at));
        }
      }
    } catch {
      // The evaluator has ended, or asked what is no question.
    }
    this.#connections.delete(connection);
    closeQuietly(connection);
  }

  #decide(line: string): string {
    const { id, permission, value } = JSON.parse(line) as BrokerRequest;
    const answer = isAllowed(this.#limits, permission, value)
      ? { id, result: "allow" }
      : { id, result: "deny", reason: describeRefusal(permission, value) };
    return `${JSON.stringify(answer)}\n`;
  }
}

/** Says what was refused, and which flag would grant it. */
function describeRefusal(
  permission: PermissionName,
  value: string | null,
): string {
  const what = VERBS[permission] ?? permission;
  const named = value === null ? "" : ` ${value}`;
  return `the notebook was not allowed to ${what}${named} (that needs --allow-${permission})`;
}

const VERBS: Partial<Record<string, string>> = {
  read: "read",
  write: "write",
  net: "reach",
  import: "import from",
  env: "use the variable",
  run: "run",
  sys: "ask the system for",
  ffi: "load",
};

/**
 * Whether limits allow one thing.
 *
 * @param limits What is granted.
 * @param permission Which kind is asked for.
 * @param value Path, host, name; null asks for all of the kind.
 * @returns True if it is granted. What the runtime would look up for itself
 * under another name than this process, such as files of `/proc`, is granted
 * only where that folder is named.
 */
export function isAllowed(
  limits: PermissionLimits,
  permission: PermissionName,
  value: string | null,
): boolean {
  const allowed = limits[permission];
  if (allowed === true) return true;
  if (!allowed || value === null) return false;
  switch (permission) {
    case "read":
    case "write":
    case "ffi":
      return allowed.some((path) => isWithin(value, path));
    case "net":
    case "import":
      return allowed.some((host) =>
        value === host || value.replace(/:\d+$/, "") === host
      );
    default:
      return allowed.includes(value);
  }
}

/** Folders whose content depends on the process that looks. */
const OWN_TO_EACH = /^\/(proc|dev)(\/|$)/;

function isWithin(path: string, folder: string): boolean {
  if (OWN_TO_EACH.test(resolve(path)) && !OWN_TO_EACH.test(resolve(folder))) {
    return false;
  }
  const inner = realPath(resolve(path));
  const outer = realPath(resolve(folder));
  return inner === outer || inner.startsWith(outer.replace(/[\\/]*$/, sep));
}

/** Follows links, so that a link cannot lead out of an allowed folder. */
function realPath(path: string): string {
  const missing: string[] = [];
  for (let at = path;;) {
    try {
      return join(Deno.realPathSync(at), ...missing);
    } catch {
      const parent = resolve(at, "..");
      if (parent === at) return path;
      missing.unshift(at.slice(parent.length).replace(/^[\\/]/, ""));
      at = parent;
    }
  }
}
