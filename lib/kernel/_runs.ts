import type { Request } from "./_kernel_sockets.ts";
import type { ThrownError } from "./evaluator.ts";

/** A run of a cell as its outputs need it. */
export interface Run {
  readonly id: number;
  readonly request: Request;
  /** What it is called in messages, such as "cell 3". */
  readonly name: string;
  /** An error of this run that nothing awaited, while it went on. */
  uncaught?: ThrownError;
}

const REMEMBERED = 10_000;

/** Knows to which request an output belongs, also a late one. */
export class Runs {
  #runs = new Map<number, Run>();
  #latest: Run | undefined;
  #count = 0;

  /** Begins a run. */
  begin(request: Request, name: string): Run {
    const run: Run = { id: ++this.#count, request, name };
    this.#runs.set(run.id, run);
    if (this.#runs.size > REMEMBERED) {
      this.#runs.delete(this.#runs.keys().next().value!);
    }
    return this.#latest = run;
  }

  /** The run that began last. */
  get latest(): Run | undefined {
    return this.#latest;
  }

  /** The run with a number; the last one where there is no such run. */
  find(id: number | undefined): Run | undefined {
    return this.#runs.get(id ?? -1) ?? this.#latest;
  }
}
