import { dirname, join, resolve, sep } from "node:path";

/** What a notebook's code may do; what is not named is refused. */
export interface PermissionLimits {
  /** Paths that may be read, with all below them; true means all. */
  readonly read?: readonly string[] | true;
  /** Paths that may be written, with all below them. */
  readonly write?: readonly string[] | true;
  /** Hosts, with or without port, that may be reached. */
  readonly net?: readonly string[] | true;
  /** Hosts from which modules may be imported. */
  readonly import?: readonly string[] | true;
  /** Variables of the environment that may be read and set. */
  readonly env?: readonly string[] | true;
  /** Programs that may be run. */
  readonly run?: readonly string[] | true;
  /** Facts about the system that may be asked. */
  readonly sys?: readonly string[] | true;
  /** Native libraries that may be loaded. */
  readonly ffi?: readonly string[] | true;
}

interface BrokerRequest {
  readonly id: number;
  readonly permission: keyof PermissionLimits;
  readonly value: string | null;
}

const encoder = new TextEncoder();

/**
 * Answers each question of the evaluator whether it may do something.
 *
 * The runtime asks over a local socket before it touches a file, the network
 * or a program, for its own module loading as well. A question that is not
 * understood is answered with no.
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

  /** Listens in a new folder that only the user can enter. */
  static async start(limits: PermissionLimits): Promise<PermissionBroker> {
    if (Deno.build.os === "windows") {
      throw new Deno.errors.NotSupported(
        "Cannot limit what a notebook may do as the runtime's permission broker is used over a Unix socket here, which Windows lacks",
      );
    }
    const folder = await Deno.makeTempDir({ prefix: "broker-" });
    return new PermissionBroker(join(folder, "broker.sock"), limits);
  }

  /** Changes the limits from the next question on. */
  restrict(limits: PermissionLimits): void {
    this.#limits = limits;
  }

  /** Stops listening; every later question is then refused by the runtime. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    this.#listener.close();
    for (const connection of this.#connections) {
      try {
        connection.close();
      } catch {
        // The other side was faster.
      }
    }
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
    const decoder = new TextDecoder();
    const chunk = new Uint8Array(64 * 1024);
    let text = "";
    try {
      for (;;) {
        const count = await connection.read(chunk);
        if (count === null) break;
        text += decoder.decode(chunk.subarray(0, count), { stream: true });
        const lines = text.split("\n");
        text = lines.pop()!;
        const answers = lines.map((line) => this.#decide(line)).join("");
        const bytes = encoder.encode(answers);
        for (let at = 0; at < bytes.length;) {
          at += await connection.write(bytes.subarray(at));
        }
      }
    } catch {
      // The evaluator has ended.
    }
    this.#connections.delete(connection);
  }

  #decide(line: string): string {
    const { id, permission, value } = JSON.parse(line) as BrokerRequest;
    const answer = isAllowed(this.#limits, permission, value)
      ? { id, result: "allow" }
      : {
        id,
        result: "deny",
        reason: `the notebook was not allowed to ${
          VERBS[permission] ?? permission
        }${value === null ? "" : ` ${value}`}`,
      };
    return `${JSON.stringify(answer)}\n`;
  }
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

/** Whether limits allow one thing. */
export function isAllowed(
  limits: PermissionLimits,
  permission: keyof PermissionLimits,
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

function isWithin(path: string, folder: string): boolean {
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
