import type { JsonObject } from "../protocol/message.ts";

/** Knows which comms are open, whichever side opened them. */
export class Comms {
  #targets = new Map<string, string>();

  /** Takes note of a message that opens or closes one; passes over others. */
  note(type: string, { comm_id, target_name }: JsonObject): void {
    if (type === "comm_open") {
      this.#targets.set(String(comm_id), String(target_name));
    } else if (type === "comm_close") this.#targets.delete(String(comm_id));
  }

  /** The open comms, as `comm_info_reply` lists them. */
  list(target: unknown): Record<string, { target_name: string }> {
    return Object.fromEntries(
      [...this.#targets]
        .filter(([, name]) => typeof target !== "string" || name === target)
        .map(([id, target_name]) => [id, { target_name }]),
    );
  }
}
