type StreamName = "stdout" | "stderr";

/** Lines that the runtime writes about itself. */
const ABOUT_ITSELF = [
  /"deno jupyter" is unstable/,
  /CDP response has null result/,
  /Permission broker is an experimental feature/,
];

/** The engine's last words where a heap is full; no place in a notebook. */
const OUT_OF_MEMORY =
  /<--- Last few GCs --->|JavaScript heap out of memory|Fatal JavaScript out of memory/;

/**
 * Takes what the evaluator's process writes past the notebook's console
 * (`Deno.stdout`, programs that it runs), without the runtime's words about
 * itself.
 */
export class ChildLog {
  #show: (name: StreamName, text: string) => void;
  #rest = "";
  #open = false;
  /** True once the engine has said that it has no memory left. */
  outOfMemory = false;

  constructor(show: (name: StreamName, text: string) => void) {
    this.#show = show;
  }

  /** Begins to show; before, the process speaks of its own start. */
  open(): void {
    this.#open = true;
  }

  /** Takes a piece of text. */
  take(text: string, name: StreamName): void {
    if (!this.#open) return;
    if (name === "stdout") return this.#show(name, text);
    this.outOfMemory ||= OUT_OF_MEMORY.test(text);
    if (this.outOfMemory) return;
    const lines = (this.#rest + text).split("\n");
    this.#rest = lines.pop()!;
    if (this.#rest && !ABOUT_ITSELF.some((own) => own.test(this.#rest))) {
      // Not a whole line yet: shown at once, as a terminal would.
      lines.push(this.#rest);
      this.#rest = "";
      const shown = lines.filter((line) => !isOwn(line)).join("\n");
      if (shown) this.#show(name, shown);
      return;
    }
    const shown = lines.filter((line) => !isOwn(line))
      .map((line) => `${line}\n`).join("");
    if (shown) this.#show(name, shown);
  }
}

function isOwn(line: string): boolean {
  return ABOUT_ITSELF.some((own) => own.test(line));
}
