import type { KernelExit } from "./kernel_error.ts";
import { settled } from "./settled.ts";
import {
  expectProgram,
  guardedCommand,
  parentEnvironment,
  signalProcess,
} from "./system.ts";

/** What the caller may set on a kernel's process. */
export interface ProcessSettings {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly ownGroup?: boolean;
  readonly onLog?: (text: string, stream: "stdout" | "stderr") => void;
}

const LOG_KEPT = 8_192;

/**
 * A kernel's process: its own log is kept, and it never outlives this one, not
 * even where this one is killed.
 */
export class KernelProcess {
  readonly exited: Promise<KernelExit>;
  /** True once the process was asked to end. */
  expected = false;
  #child: Deno.ChildProcess;
  #log = "";
  #ended = false;

  constructor(command: readonly string[], settings: ProcessSettings) {
    expectProgram(command[0]);
    const [program, ...args] = guardedCommand(command, settings.ownGroup);
    this.#child = new Deno.Command(program, {
      args,
      cwd: settings.cwd,
      detached: settings.ownGroup,
      env: { ...settings.env, ...parentEnvironment() },
      stdin: "piped",
      stdout: "piped",
      stderr: "piped",
    }).spawn();
    const drained = (["stdout", "stderr"] as const).map((name) =>
      this.#drain(this.#child[name], (text) => settings.onLog?.(text, name))
    );
    const kill = () => this.kill();
    globalThis.addEventListener("unload", kill);
    this.exited = this.#child.status.then(async ({ code, signal }) => {
      this.#ended = true;
      await this.#letGo(settings.ownGroup);
      globalThis.removeEventListener("unload", kill);
      // A grandchild may hold the pipe open; do not wait for it.
      await settled(Promise.all(drained), 200);
      for (const cancel of this.#readers) cancel();
      return { code, signal, expected: this.expected, log: this.#log };
    });
  }

  #readers: (() => void)[] = [];

  get pid(): number {
    return this.#child.pid;
  }

  get log(): string {
    return this.#log;
  }

  interrupt(): void {
    if (!this.#ended) signalProcess(this.#child, "interrupt");
  }

  stop(): void {
    this.expected = true;
    if (!this.#ended) signalProcess(this.#child, "stop");
  }

  kill(): void {
    if (!this.#ended) signalProcess(this.#child, "kill");
  }

  /** Ends the watch over it; what it left behind in its own group ends too. */
  async #letGo(ownGroup = false): Promise<void> {
    const guard = this.#child.stdin.getWriter();
    try {
      if (!ownGroup) await guard.write(new TextEncoder().encode("\n"));
      await guard.close();
    } catch {
      // The watch has ended already.
    }
  }

  async #drain(
    stream: ReadableStream<Uint8Array>,
    onLog: (text: string) => void,
  ): Promise<void> {
    const reader = stream.getReader();
    this.#readers.push(() => reader.cancel().catch(() => {}));
    const decoder = new TextDecoder();
    try {
      for (;;) {
        const { done, value } = await reader.read();
        if (done) return;
        const text = decoder.decode(value, { stream: true });
        this.#log = (this.#log + text).slice(-LOG_KEPT);
        onLog(text);
      }
    } catch {
      // The pipe was given up.
    }
  }
}
