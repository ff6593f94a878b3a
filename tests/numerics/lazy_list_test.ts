import { deepEqual, equal, throws } from "node:assert/strict";
import {
  filterItems,
  forEachItem,
  isLazy,
  itemMaker,
  lazyList,
  mapItems,
  pickItems,
} from "sagbook/numerics/lazy_list.ts";

const squares = lazyList(5, (index) => ({ square: index * index }));
const array = [0, 1, 4, 9, 16].map((square) => ({ square }));

Deno.test("lazyList() reads as the array of its items", () => {
  deepEqual([...squares], array);
  equal(squares.length, 5);
  equal(squares[3].square, 9);
  equal(squares[5], undefined);
  equal(squares.at(-1)?.square, 16);
  deepEqual(squares.slice(1, 3), array.slice(1, 3));
  deepEqual(squares.map(({ square }) => square), [0, 1, 4, 9, 16]);
  deepEqual(squares.filter(({ square }) => square > 3), array.slice(2));
  equal(squares.some(({ square }) => square === 9), true);
  equal(JSON.stringify(squares), JSON.stringify(array));
  equal(Array.isArray(squares), true);
  equal(2 in squares && !(5 in squares), true);
  deepEqual(Object.keys(squares), ["0", "1", "2", "3", "4"]);
});

Deno.test("lazyList() makes an item when it is looked at, and once for several looks in turn", () => {
  const made: number[] = [];
  const list = lazyList(1_000_000, (index) => {
    made.push(index);
    return { index };
  });
  equal(made.length, 0);
  equal(list[7].index + list[7].index, 14);
  equal(list[8].index, 8);
  deepEqual(made, [7, 8]);
});

Deno.test("lazyList() cannot be changed", () => {
  const list = squares as { square: number }[];
  throws(() => list[0] = { square: 5 }, TypeError);
  throws(() => list.push({ square: 5 }), TypeError);
  throws(() => delete list[0], TypeError);
});

Deno.test("lazyList() refuses a length that is no count", () => {
  for (const length of [-1, 1.5, NaN]) {
    throws(() => lazyList(length, () => 0), {
      name: "RangeError",
      message:
        `Cannot make a list as its length must be a whole number of at least 0: current value is ${length}`,
    });
  }
});

Deno.test("itemMaker() gives the items of lazy lists and of arrays", () => {
  for (const list of [squares, array]) equal(itemMaker(list)(4).square, 16);
});

Deno.test("forEachItem() visits every item in order", () => {
  for (const list of [squares, array]) {
    const seen: [number, number][] = [];
    forEachItem(list, ({ square }, index) => seen.push([index, square]));
    deepEqual(seen, array.map(({ square }, index) => [index, square]));
  }
});

Deno.test("filterItems(), mapItems() and pickItems() give of a lazy list what they give of an array, and make none of it", () => {
  const even = ({ square }: { square: number }) => square % 2 === 0;
  const less = ({ square }: { square: number }, index: number) =>
    square - index;
  for (const list of [squares, array]) {
    deepEqual([...filterItems(list, even)], array.filter(even));
    deepEqual([...mapItems(list, less)], array.map(less));
    deepEqual([...pickItems(list, [4, 0])], [array[4], array[0]]);
  }
  equal(isLazy(filterItems(squares, even)), true);
  equal(isLazy(mapItems(squares, less)), true);
  equal(isLazy(pickItems(squares, new Uint32Array([1]))), true);
  equal(isLazy(filterItems(array, even)), false);
});
