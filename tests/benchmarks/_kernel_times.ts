/**
 * What kernels were timed at, by what was done and by which.
 *
 * @module
 */
import { median } from "./_side_by_side.ts";

/** Times in ms by what was done and by whom. */
export class Times {
  readonly #all = new Map<string, number[]>();

  add(what: string, name: string, value: number): void {
    const key = `${what} ${name}`;
    const list = this.#all.get(key) ?? [];
    this.#all.set(key, [...list, value]);
  }

  has(what: string, name: string): boolean {
    return this.#all.has(`${what} ${name}`);
  }

  middle(what: string, name: string): number {
    return median(this.#all.get(`${what} ${name}`) ?? [NaN]);
  }
}
