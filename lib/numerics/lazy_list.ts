/**
 * Lists that make their items when they are looked at.
 *
 * @module
 */

import { GrowingNumbers } from "./growing_numbers.ts";

/** Makes the item at a place. */
export type ItemMaker<T> = (index: number) => T;

/** The makers of the lists made here. */
const MAKERS = new WeakMap<object, ItemMaker<unknown>>();

/** A place in a list as a property's name; -1 for any other name. */
function placeOf(key: string | symbol): number {
  if (typeof key !== "string") return -1;
  const code = key.charCodeAt(0);
  if (!(code >= 48 && code <= 57)) return -1;
  const place = Number(key);
  return Number.isInteger(place) && String(place) === key ? place : -1;
}

/**
 * Makes a list of items that are made anew whenever they are looked at.
 *
 * A million objects of twenty fields take 350 MB; the same values in columns of
 * numbers take a tenth. Such a list lets columns be read as if they were the
 * objects: it is an array to whoever reads it (indices, `length`, iteration, the
 * methods that change nothing), cannot be changed, and holds nothing itself. An
 * item asked for twice is two equal objects, not one; the last one made is
 * kept, so that reading several fields of an item in turn costs one making.
 * `filter` and `map` give ordinary arrays of what they keep; {@linkcode
 * pickItems} gives a part without making it.
 *
 * @param length How many items there are, a whole number of at least 0.
 * @param make Makes the item at an index from 0 to below `length`.
 * @returns The list.
 * @throws {RangeError} If `length` is not a whole number of at least 0.
 *
 * @example
 * ```ts
 * import { lazyList } from "sagbook/numerics/lazy_list.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const sags = new Float64Array([0.715, 0.712]);
 * const readings = lazyList(sags.length, (line) => ({ line, sag: sags[line] }));
 * equal(readings[1].sag, 0.712);
 * deepEqual(readings.map(({ line }) => line), [0, 1]);
 * ```
 */
export function lazyList<T>(length: number, make: ItemMaker<T>): readonly T[] {
  if (!Number.isInteger(length) || length < 0) {
    throw new RangeError(
      `Cannot make a list as its length must be a whole number of at least 0: current value is ${length}`,
    );
  }
  let lastPlace = -1;
  let last: T;
  const at = (place: number): T => {
    if (place === lastPlace) return last;
    last = make(place);
    lastPlace = place;
    return last;
  };
  const list = new Proxy<T[]>([], {
    get: (target, key) => {
      if (key === "length") return length;
      const place = placeOf(key);
      if (place < 0) return Reflect.get(target, key);
      return place < length ? at(place) : undefined;
    },
    has: (target, key) => {
      const place = placeOf(key);
      return place < 0 ? Reflect.has(target, key) : place < length;
    },
    set: () => false,
    defineProperty: () => false,
    deleteProperty: () => false,
    getOwnPropertyDescriptor: (target, key) => {
      const place = placeOf(key);
      if (place >= 0 && place < length) {
        return {
          value: at(place),
          enumerable: true,
          configurable: true,
          writable: true,
        };
      }
      const found = Reflect.getOwnPropertyDescriptor(target, key);
      return key === "length" ? { ...found, value: length } : found;
    },
    ownKeys: () => [...Array.from({ length }, (_, i) => String(i)), "length"],
  });
  MAKERS.set(list, at);
  return list;
}

/**
 * Finds the quickest way to the items of a list.
 *
 * @param list Any list; one made by {@linkcode lazyList} or an array.
 * @returns A function from an index to the item there.
 *
 * @example
 * ```ts
 * import { itemMaker, lazyList } from "sagbook/numerics/lazy_list.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(itemMaker(lazyList(3, (index) => 2 * index))(2), 4);
 * equal(itemMaker(["centre", "edge"])(1), "edge");
 * ```
 */
export function itemMaker<T>(list: readonly T[]): ItemMaker<T> {
  const make = MAKERS.get(list) as ItemMaker<T> | undefined;
  return make ?? ((index) => list[index]);
}

/**
 * Visits the items of a list in order, by the quickest way to them.
 *
 * @param list Any list; walking a lazy one by `for … of` takes some times longer.
 * @param visit Called with each item and its index.
 *
 * @example
 * ```ts
 * import { forEachItem, lazyList } from "sagbook/numerics/lazy_list.ts";
 * import { equal } from "node:assert/strict";
 *
 * let sum = 0;
 * forEachItem(lazyList(4, (index) => index * index), (square) => sum += square);
 * equal(sum, 14);
 * ```
 */
export function forEachItem<T>(
  list: readonly T[],
  visit: (item: T, index: number) => void,
): void {
  const make = itemMaker(list);
  for (let index = 0; index < list.length; index++) visit(make(index), index);
}

/**
 * Says whether a list makes its items when they are looked at.
 *
 * @param list Any list.
 * @returns True for one made by {@linkcode lazyList} or a part of one.
 *
 * @example
 * ```ts
 * import { isLazy, lazyList } from "sagbook/numerics/lazy_list.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(isLazy(lazyList(1, () => 0)), true);
 * equal(isLazy([0]), false);
 * ```
 */
export function isLazy(list: readonly unknown[]): boolean {
  return MAKERS.has(list);
}

/**
 * Turns every item of a list into another, without keeping any.
 *
 * @param list Any list.
 * @param change What becomes of an item; called again whenever an item of a
 * lazy list is looked at.
 * @returns An array of them for an array, a list like its own for any other.
 *
 * @example
 * ```ts
 * import { lazyList, mapItems } from "sagbook/numerics/lazy_list.ts";
 * import { equal } from "node:assert/strict";
 *
 * const squares = lazyList(5, (index) => index * index);
 * equal(mapItems(squares, (square, index) => square - index)[4], 12);
 * ```
 */
export function mapItems<T, R>(
  list: readonly T[],
  change: (item: T, index: number) => R,
): readonly R[] {
  if (!isLazy(list)) return list.map(change);
  const make = itemMaker(list);
  return lazyList(list.length, (index) => change(make(index), index));
}

/**
 * Takes the items of a list that pass a test, without keeping them.
 *
 * @param list Any list.
 * @param test What an item must pass.
 * @returns An array of them for an array, a list like its own for any other.
 *
 * @example
 * ```ts
 * import { filterItems, lazyList } from "sagbook/numerics/lazy_list.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const squares = lazyList(5, (index) => index * index);
 * deepEqual([...filterItems(squares, (square) => square % 2 === 0)], [0, 4, 16]);
 * ```
 */
export function filterItems<T>(
  list: readonly T[],
  test: (item: T) => boolean,
): readonly T[] {
  if (!isLazy(list)) return list.filter(test);
  const make = itemMaker(list);
  const places = new GrowingNumbers(Uint32Array);
  for (let place = 0; place < list.length; place++) {
    if (test(make(place))) places.push(place);
  }
  return lazyList(places.length, (index) => make(places.at(index)));
}

/**
 * Takes some items of a list, in a given order, without making them.
 *
 * @param list Any list.
 * @param places Which, from 0 to below the length of the list.
 * @returns An array of them for an array, a list like its own for any other.
 *
 * @example
 * ```ts
 * import { isLazy, lazyList, pickItems } from "sagbook/numerics/lazy_list.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const squares = lazyList(10, (index) => index * index);
 * const even = pickItems(squares, [0, 2, 4]);
 * deepEqual([...even], [0, 4, 16]);
 * equal(isLazy(even), true);
 * ```
 */
export function pickItems<T>(
  list: readonly T[],
  places: ArrayLike<number>,
): readonly T[] {
  if (!isLazy(list)) return Array.from(places, (place) => list[place]);
  const make = itemMaker(list);
  return lazyList(places.length, (index) => make(places[index]));
}
