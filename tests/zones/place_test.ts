import { deepEqual, equal } from "node:assert/strict";
import type { FootDirection } from "sagbook/geometry/feet.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { footClass, placesOf } from "sagbook/zones/place.ts";
import { near } from "./_session.ts";

const at = (
  offset: number,
  foot: FootDirection,
  label = "edge",
  diameterDegrees: number | undefined = 30,
) => ({
  offset: mm(offset),
  foot,
  ...(diameterDegrees === undefined ? {} : { diameterDegrees }),
  zone: { label, distance: mm(Math.abs(offset)) },
});
const angle = (degrees: number): FootDirection => ({ kind: "angle", degrees });
const out: FootDirection = { kind: "foot out" };

Deno.test("footClass() counts directions within 15 degrees as straight, for any of three feet", () => {
  // On the diameter at 30 degrees: one foot out at 30, 150 and 270 degrees.
  const classes = [30, 45, 46, 74, 75, 90, 150, 285, 286].map((degrees) =>
    footClass(at(60, angle(degrees)), "balls")
  );
  deepEqual(classes, [
    "foot out",
    "foot out",
    "turned",
    "turned",
    "feet out",
    "feet out",
    "foot out",
    "foot out",
    "turned",
  ]);
});

Deno.test("footClass() sees a bar along or across the radius, the same from both ends", () => {
  const classes = [30, 210, 120, 75].map((degrees) =>
    footClass(at(-60, angle(degrees)), "bar")
  );
  deepEqual(classes, ["foot out", "foot out", "across", "turned"]);
});

Deno.test("footClass() says any where it does not matter and unknown where nobody wrote it down", () => {
  equal(footClass(at(0, { kind: "unknown" }), "balls"), "any");
  equal(footClass(at(60, { kind: "unknown" }), "edge"), "any");
  equal(footClass(at(60, { kind: "unknown" }), "balls"), "unknown");
  const nowhere = { offset: mm(60), foot: angle(30) };
  equal(footClass(nowhere, "balls"), "unknown");
});

Deno.test("placesOf() gathers both ends, and distances within half a millimetre, under the first label", () => {
  const { places, placeOf } = placesOf([
    at(60.3, out, "outside"),
    at(0, out, "centre"),
    at(-60, out, "edge"),
    at(60.8, out, "rim"),
  ], "balls");
  deepEqual(places.map(({ label }) => label), ["centre", "outside", "rim"]);
  deepEqual(placeOf, [1, 0, 1, 2]);
  near(places[1].distance, 60, 1e-12);
});

Deno.test("placesOf() sets ways of standing apart and names them where they meet at one distance", () => {
  const { places } = placesOf([
    at(60, out),
    at(60, { kind: "feet out" }),
    at(30, out, "50%"),
  ], "balls");
  deepEqual(places.map(({ label }) => label), [
    "50%",
    "edge (feet out)",
    "edge (foot out)",
  ]);
});

Deno.test("placesOf() averages the feet's direction as the surface sees it", () => {
  const { places } = placesOf([
    at(60, angle(30)),
    at(60, angle(40)),
    at(40, { kind: "unknown" }, "half"),
  ], "balls");
  // cos 0 = 1 and cos 30 degrees.
  near(places[1].threefold, (1 + Math.sqrt(0.75)) / 2, 1e-12);
  equal(places[0].threefold, undefined);
});
