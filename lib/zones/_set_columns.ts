/**
 * Sets kept in columns, for sessions of very many.
 *
 * @module
 */
import { GrowingNumbers } from "../numerics/growing_numbers.ts";
import { lazyList } from "../numerics/lazy_list.ts";
import type { Cell, MeasuredSet } from "./set_table.ts";

/** Fields of a cell that only some cells have. */
const OPTIONAL = ["plus", "minus", "progress", "lag"] as const;

/** The cells of one place in columns. */
class CellColumn {
  readonly #sag = new GrowingNumbers(Float64Array);
  readonly #readings = new GrowingNumbers(Uint32Array);
  readonly #optional = new Map<typeof OPTIONAL[number], GrowingNumbers>();

  add(cell: Cell | undefined): void {
    const before = this.#sag.length;
    this.#sag.push(cell?.sag ?? NaN);
    this.#readings.push(cell?.readings ?? 0);
    for (const name of OPTIONAL) {
      const value = cell?.[name];
      let column = this.#optional.get(name);
      if (column === undefined) {
        if (value === undefined) continue;
        column = new GrowingNumbers(Float64Array);
        for (let i = 0; i < before; i++) column.push(NaN);
        this.#optional.set(name, column);
      }
      column.push(value ?? NaN);
    }
  }

  at(set: number): Cell | undefined {
    const readings = this.#readings.at(set);
    if (readings === 0) return undefined;
    const cell: { -readonly [K in keyof Cell]: Cell[K] } = {
      sag: this.#sag.at(set),
      readings,
    };
    for (const [name, column] of this.#optional) {
      const value = column.at(set);
      if (!Number.isNaN(value)) cell[name] = value;
    }
    return cell;
  }
}

/** Takes sets one by one and gives them all as one list. */
export class SetColumns {
  readonly #cells: readonly CellColumn[];
  readonly #zeroings: string[] = [];
  readonly #degrees = new GrowingNumbers(Float64Array);
  readonly #labels = new Map<number, string>();

  /** Sets how many places there are. */
  constructor(places: number) {
    this.#cells = Array.from({ length: places }, () => new CellColumn());
  }

  /** Adds a set. */
  push({ label, zeroing, diameterDegrees, cells }: MeasuredSet): void {
    const set = this.#zeroings.push(zeroing) - 1;
    this.#degrees.push(diameterDegrees ?? NaN);
    if (label !== zeroing) this.#labels.set(set, label);
    cells.forEach((cell, place) => this.#cells[place].add(cell));
  }

  #at(set: number): MeasuredSet {
    const zeroing = this.#zeroings[set];
    const degrees = this.#degrees.at(set);
    return {
      label: this.#labels.get(set) ?? zeroing,
      zeroing,
      ...(Number.isNaN(degrees) ? {} : { diameterDegrees: degrees }),
      cells: this.#cells.map((column) => column.at(set)),
    };
  }

  /** All of them, in the order they came. */
  list(): readonly MeasuredSet[] {
    return lazyList(this.#zeroings.length, (set) => this.#at(set));
  }
}
