import { offlineEnvironment } from "../cells/offline_environment.ts";
import { startKernel } from "../protocol/start_kernel.ts";
import type { RunningKernel } from "../protocol/running_kernel.ts";
import { ChildLog } from "./_child_log.ts";
import { SENT_KEY } from "./_host_protocol.ts";
import { withOwnNeeds } from "./_own_needs.ts";
import { SideChannel } from "./_side_channel.ts";
import { PermissionBroker } from "./permission_broker.ts";
import {
  mayFetch,
  PERMISSION_NAMES,
  type PermissionLimits,
  type PermissionName,
} from "./permission_limits.ts";

/** What the child's process is started with. */
export interface ChildSettings {
  readonly folder: string;
  readonly workspace: string;
  readonly limits?: PermissionLimits;
  /** Takes what is written past the notebook's console. */
  readonly onWrite: (name: "stdout" | "stderr", text: string) => void;
  /** Called before the host starts, to listen from the first message on. */
  readonly onKernel: (kernel: RunningKernel) => void;
}

/** The hidden kernel with the host inside it, and the ways to it. */
export class EvaluatorChild {
  /** Why it is being ended, if it is. */
  reason: string | undefined;
  #broker: PermissionBroker | undefined;
  #log: ChildLog;

  private constructor(
    readonly kernel: RunningKernel,
    readonly side: SideChannel,
    log: ChildLog,
    broker: PermissionBroker | undefined,
  ) {
    this.#log = log;
    this.#broker = broker;
  }

  /** Whether it ended, or will, for want of memory. */
  get outOfMemory(): boolean {
    return this.#log.outOfMemory;
  }

  /** Starts the process and the host, and waits until both answer. */
  static async start(settings: ChildSettings): Promise<EvaluatorChild> {
    const { folder, workspace, limits } = settings;
    const side = new SideChannel();
    const log = new ChildLog(settings.onWrite);
    let broker: PermissionBroker | undefined;
    let kernel: RunningKernel | undefined;
    try {
      if (limits && PermissionBroker.isSupported) {
        broker = await PermissionBroker.start(
          withOwnNeeds(limits, workspace, "any", folder),
        );
      }
      kernel = await startKernel(
        [Deno.execPath(), "jupyter", "--kernel", "--conn", "{connection_file}"],
        {
          cwd: workspace,
          ownGroup: true,
          env: {
            NO_COLOR: "1",
            DENO_NO_PROMPT: "1",
            DENO_NO_UPDATE_CHECK: "1",
            DENO_V8_FLAGS: heapFlags(Deno.env.get("DENO_V8_FLAGS")),
            ...(limits && !mayFetch(limits) && offlineEnvironment()),
            ...(broker && { DENO_PERMISSION_BROKER_PATH: broker.path }),
          },
          onLog: (text, stream) => log.take(text, stream),
        },
      );
      settings.onKernel(kernel);
      kernel.client.outputListeners.add(({ metadata }) => {
        const sent = metadata[SENT_KEY];
        if (typeof sent === "number") side.taken(sent);
      });
      await startHost(kernel, side, folder, revoked(limits, broker));
      await side.connected;
      if (limits && broker) {
        const asker = broker;
        asker.restrict(withOwnNeeds(limits, workspace, [side.port]));
        side.complete.then(() =>
          asker.restrict(withOwnNeeds(limits, workspace))
        );
      }
      log.open();
      return new EvaluatorChild(kernel, side, log, broker);
    } catch (error) {
      side.close();
      await kernel?.kill();
      await broker?.close();
      throw error;
    }
  }

  /** Ends the process by force and waits until it is gone. */
  async end(): Promise<void> {
    this.side.close();
    await this.kernel.kill();
    await this.#broker?.close();
  }
}

/**
 * How the child's memory grows: it is tidied once it has grown by a third, where
 * on a large machine it would be let grow much further. A report of 10⁶ readings
 * takes a little more than half the memory so. Flags of the user's own win.
 */
function heapFlags(own: string | undefined): string {
  return ["--heap-growing-percent=30", own ?? ""].filter(Boolean).join(",");
}

/**
 * What the child gives up for good before the first cell. Where a broker is
 * asked it is everything, since the runtime asks only who has no permission of
 * his own in every case; else all that is not granted, but for reading, without
 * which no module can be loaded.
 */
function revoked(
  limits: PermissionLimits | undefined,
  broker: PermissionBroker | undefined,
): readonly PermissionName[] | undefined {
  if (!limits) return undefined;
  if (broker) return PERMISSION_NAMES;
  return PERMISSION_NAMES.filter((name) =>
    name !== "read" && (limits[name] ?? []) !== true &&
    (limits[name] as readonly string[] | undefined ?? []).length === 0
  );
}

async function startHost(
  kernel: RunningKernel,
  side: SideChannel,
  folder: string,
  revoke: readonly PermissionName[] | undefined,
): Promise<void> {
  const module = new URL("./_host_start.ts", import.meta.url).href;
  const options = JSON.stringify({
    port: side.port,
    token: side.token,
    folder,
    revoke,
  });
  const load = "(name, how) => import(name, how)";
  const { status, error } = await kernel.execute(
    `await (await import(${
      JSON.stringify(module)
    })).startHost({ ...${options}, load: ${load} })`,
    { storeHistory: false },
  );
  if (status !== "ok") {
    throw new Error(`Cannot start the evaluator: ${error?.evalue}`);
  }
}
