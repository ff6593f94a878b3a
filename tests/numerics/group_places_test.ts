import { deepEqual } from "node:assert/strict";
import { groupPlaces } from "sagbook/numerics/group_places.ts";
import { Random } from "sagbook/numerics/random.ts";

Deno.test("groupPlaces() sorts as a map of lists does, in the order of first places", () => {
  const random = new Random(3);
  const keys = Array.from(
    { length: 500 },
    () => `set ${Math.floor(40 * random.uniform())}`,
  );
  const lists = new Map<string, number[]>();
  keys.forEach((key, place) => {
    lists.set(key, [...lists.get(key) ?? [], place]);
  });
  const groups = groupPlaces(keys.length, (place) => keys[place]);
  deepEqual(groups.keys, [...lists.keys()]);
  deepEqual(groups.keys.map((_, k) => groups.placesOf(k)), [...lists.values()]);
  deepEqual(Array.from(groups.groupOf, (group) => groups.keys[group]), keys);
});

Deno.test("groupPlaces() has no groups without places", () => {
  deepEqual(groupPlaces(0, () => "").keys, []);
});
