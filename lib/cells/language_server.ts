/**
 * Deno's language server as a child process.
 *
 * @module
 */
import { decodeRpc, encodeRpc, type RpcMessage } from "./_json_rpc.ts";
import { offlineEnvironment } from "./offline_environment.ts";

/** Where the server looks for modules and settings. */
export interface LanguageServerSettings {
  /** Folder of the notebook, as a file URL ending in a slash. */
  readonly folder: string;
  /** Path of the deno.json that maps bare names; none unless given. */
  readonly config?: string;
  /** Program to run; the current runtime unless told. */
  readonly program?: string;
  /**
   * True if the server must not fetch what the texts name, such as packages;
   * false unless told.
   */
  readonly isOffline?: boolean;
}

/** A zero-based place, as the Language Server Protocol counts. */
export interface ServerPosition {
  /** Line from 0. */
  readonly line: number;
  /** UTF-16 units from the start of the line. */
  readonly character: number;
}

interface Pending {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

/**
 * Talks to `deno lsp` over its standard streams (JSON-RPC 2.0).
 *
 * The server knows import maps, npm packages and Deno's own types, and holds
 * documents that are on no disk. It ends with this process: it is told this
 * process's id, and its input closes.
 *
 * @see Language Server Protocol 3.17.
 */
export class LanguageServer {
  /** Kept when the process has ended. */
  readonly ended: Promise<void>;
  #child: Deno.ChildProcess;
  #writer: WritableStreamDefaultWriter<Uint8Array>;
  #pending = new Map<number, Pending>();
  #nextId = 0;
  #gone = false;
  #settings: LanguageServerSettings;
  #ready: Promise<void>;

  /**
   * Starts the server; requests wait until it is ready.
   *
   * @param settings Folder, deno.json and program.
   */
  constructor(settings: LanguageServerSettings) {
    this.#settings = settings;
    const program = settings.program ?? Deno.execPath();
    this.#child = new Deno.Command(program, {
      args: ["lsp", "--quiet"],
      // A terminal's interrupt key goes to every process of a group.
      detached: true,
      stdin: "piped",
      stdout: "piped",
      stderr: "null",
      env: {
        NO_COLOR: "1",
        DENO_NO_UPDATE_CHECK: "1",
        ...(settings.isOffline && offlineEnvironment()),
      },
    }).spawn();
    this.#writer = this.#child.stdin.getWriter();
    this.ended = this.#read();
    this.#ready = this.#initialize();
    this.#ready.catch(() => {});
  }

  /** True once the process has ended or was closed. */
  get gone(): boolean {
    return this.#gone;
  }

  /** Process id of the server. */
  get pid(): number {
    return this.#child.pid;
  }

  /**
   * Asks the server.
   *
   * @param method Name of the request.
   * @param params What is asked.
   * @returns The result.
   * @throws If the server refuses or ends.
   */
  async request(method: string, params: unknown): Promise<unknown> {
    await this.#ready;
    return await this.#ask(method, params);
  }

  /** Opens a document that is on no disk. */
  async open(uri: string, text: string): Promise<void> {
    await this.#ready;
    this.#send({
      method: "textDocument/didOpen",
      params: {
        textDocument: { uri, languageId: "typescript", version: 1, text },
      },
    });
  }

  /** Closes a document. */
  async close(uri: string): Promise<void> {
    await this.#ready;
    this.#send({
      method: "textDocument/didClose",
      params: { textDocument: { uri } },
    });
  }

  /** Tells that files on disk have changed. */
  async filesChanged(uris: readonly string[]): Promise<void> {
    await this.#ready;
    this.#send({
      method: "workspace/didChangeWatchedFiles",
      params: { changes: uris.map((uri) => ({ uri, type: 2 })) },
    });
  }

  /** Ends the process: by closing its input, then by force. */
  async stop(): Promise<void> {
    this.#gone = true;
    const timer = setTimeout(() => this.#kill(), 500);
    try {
      this.#send({ method: "exit" });
      await this.#writer.close();
    } catch {
      this.#kill();
    }
    await this.#child.status;
    clearTimeout(timer);
    await this.ended;
  }

  #kill(): void {
    try {
      this.#child.kill("SIGKILL");
    } catch {
      // It has ended already.
    }
  }

  async #initialize(): Promise<void> {
    const { folder } = this.#settings;
    await this.#ask("initialize", {
      processId: Deno.pid,
      rootUri: folder,
      workspaceFolders: [{ uri: folder, name: "notebook" }],
      capabilities: {
        textDocument: {
          diagnostic: {},
          hover: { contentFormat: ["markdown"] },
          completion: { completionItem: { documentationFormat: ["markdown"] } },
        },
        workspace: { configuration: true },
      },
      initializationOptions: this.#configuration(),
    });
    this.#send({ method: "initialized", params: {} });
  }

  #configuration() {
    return {
      enable: true,
      lint: false,
      unstable: true,
      cacheOnSave: false,
      ...(this.#settings.config && { config: this.#settings.config }),
    };
  }

  #ask(method: string, params: unknown): Promise<unknown> {
    if (this.#gone) {
      return Promise.reject(new Error("the language server has ended"));
    }
    const id = ++this.#nextId;
    return new Promise((resolve, reject) => {
      this.#pending.set(id, { resolve, reject });
      this.#send({ id, method, params });
    });
  }

  #send(message: RpcMessage): void {
    this.#writer.write(encodeRpc(message)).catch(() => {});
  }

  async #read(): Promise<void> {
    try {
      for await (const message of decodeRpc(this.#child.stdout)) {
        this.#hear(message);
      }
    } catch {
      // What cannot be read is taken for the end.
    }
    this.#gone = true;
    for (const { reject } of this.#pending.values()) {
      reject(new Error("the language server has ended"));
    }
    this.#pending.clear();
    this.#kill();
    await this.#child.status;
  }

  #hear({ id, method, params, result, error }: RpcMessage): void {
    if (method !== undefined && id !== undefined) {
      const items = (params as { items?: unknown[] } | undefined)?.items ?? [];
      this.#send({
        id,
        result: method === "workspace/configuration"
          ? items.map(() => this.#configuration())
          : null,
      });
    } else if (method === undefined) {
      const pending = this.#pending.get(id as number);
      this.#pending.delete(id as number);
      if (error) pending?.reject(new Error(error.message));
      else pending?.resolve(result);
    }
  }
}
