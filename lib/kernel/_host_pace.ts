/**
 * How fast the host may send: no faster than the kernel takes.
 */
import { SENT_KEY } from "./_host_protocol.ts";

// Taken now: a cell may change these for itself.
const { load, wait } = Atomics;

/** Size of all messages that may be on their way, in characters. */
const MOST = 512 * 1024;

/** The same while nobody has yet said what was taken. */
const MOST_UNHEARD = 8 * MOST;

/** What each costs beside its text, in characters. */
const EACH = 4096;

/** Time in ms to wait for one to be taken; so often before none is expected. */
const STEP = 100;
const STEPS = 50;

type Content = Record<string, unknown>;

interface Extra {
  readonly metadata?: Record<string, unknown>;
  readonly buffers?: Uint8Array[];
}

/** Sends a message to the kernel. */
export type Send = (type: string, content: Content, extra?: Extra) => void;

/** About how many characters a message takes. */
function sizeOf({ text, data }: Content, buffers: readonly Uint8Array[]) {
  const pieces = [text, ...Object.values(data ?? {})];
  const characters = pieces.reduce<number>(
    (sum, one) => sum + (typeof one === "string" ? one.length : 0),
    EACH,
  );
  return buffers.reduce((sum, one) => sum + one.byteLength, characters);
}

/**
 * Numbers the messages of the host, and keeps a cell that shows more than the
 * kernel can take waiting until enough was taken.
 *
 * Without it a loop that prints for ever leaves so many messages behind when it
 * is stopped that the evaluator answers nothing for a long time, and would be
 * taken for dead. The wait is one that the engine can end, as it can any loop.
 *
 * The thread that hears what was taken starts about a second after the host, and
 * not while a cell is busy: one that shows much in that second waits in vain.
 */
export class HostPace {
  /** Number of the message taken last; another thread writes it. */
  readonly taken = new Int32Array(new SharedArrayBuffer(4));
  #sent = 0;
  #size = 0;
  /** Sizes of the messages on their way, from the number after `#counted`. */
  #sizes: number[] = [];
  #counted = 0;
  #deaf = false;

  /** Sends with a number on each message. */
  numbered(send: Send): Send {
    return (type, content, extra) => {
      const size = sizeOf(content, extra?.buffers ?? []);
      this.#sizes.push(size);
      this.#size += size;
      const metadata = { ...extra?.metadata, [SENT_KEY]: ++this.#sent };
      return send(type, content, { ...extra, metadata });
    };
  }

  /** Waits until more may be sent; for seconds at most where nothing moves. */
  wait(): void {
    for (let idle = 0; this.#isFull(); idle++) {
      if (this.#deaf || idle === STEPS) {
        this.#deaf = true;
        return;
      }
      const before = load(this.taken, 0);
      wait(this.taken, 0, before, STEP);
      if (load(this.taken, 0) !== before) idle = 0;
    }
    this.#deaf = false;
  }

  #isFull(): boolean {
    const gone = Math.min(load(this.taken, 0), this.#sent) - this.#counted;
    if (gone > 0) {
      for (const size of this.#sizes.splice(0, gone)) this.#size -= size;
      this.#counted += gone;
    }
    return this.#size > (this.#counted > 0 ? MOST : MOST_UNHEARD);
  }
}
