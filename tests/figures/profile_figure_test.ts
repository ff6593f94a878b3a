import { equal, match, ok, rejects } from "node:assert/strict";
import { profileFigure } from "sagbook/figures/profile_figure.ts";
import { countOf, textsOf } from "./_picture.ts";

const points = [0, 50, 100, 150].map((distance) => ({
  distance,
  departure: {
    value: 1e-3 * (distance / 150) ** 4,
    interval95: { low: -1e-3, high: 2e-3 },
  },
}));

Deno.test("profileFigure() greys what no foot or probe saw, and nothing when all was seen", async () => {
  const partly = await profileFigure({
    points,
    halfDiameter: 150,
    seenTo: 100,
  });
  ok(textsOf(partly).includes("no foot or probe stood here"));
  match(partly.description, /saw nothing beyond 100 mm/);
  const wholly = await profileFigure({
    points,
    halfDiameter: 150,
    seenTo: 160,
  });
  equal(countOf(wholly, "g", "f-veil"), 0);
  ok(!textsOf(wholly).includes("no foot or probe stood here"));
});

Deno.test("profileFigure() draws both halves alike", async () => {
  const { svg } = await profileFigure({
    points,
    halfDiameter: 150,
    seenTo: 150,
  });
  const lines = [...svg.matchAll(/ d="(M[\d.,L-]+)"/g)].map(([, d]) =>
    d.slice(1).split("L").map((pair) => pair.split(",").map(Number))
  );
  const curve = lines.find((line) => line.length === 7)!;
  const middle = curve[3][0];
  curve.forEach(([x, y], i) => {
    const [mx, my] = curve[6 - i];
    ok(Math.abs(x - middle + (mx - middle)) < 0.03 && Math.abs(y - my) < 0.02);
  });
});

Deno.test("profileFigure() leaves the band out where there is no interval", async () => {
  const bare = points.map(({ distance, departure: { value } }) => ({
    distance,
    departure: { value },
  }));
  const figure = await profileFigure({
    points: bare,
    halfDiameter: 150,
    seenTo: 100,
  });
  ok(!textsOf(figure).includes("95 % band"));
  ok(
    textsOf(await profileFigure({ points, halfDiameter: 150, seenTo: 100 }))
      .includes("95 % band"),
  );
});

Deno.test("profileFigure() refuses no points and a departure that is no number", async () => {
  await rejects(profileFigure({ points: [], halfDiameter: 150, seenTo: 100 }), {
    name: "RangeError",
    message:
      "Cannot draw the profile as there must be at least one point: current value is 0 of them",
  });
  const broken = [{ distance: 0, departure: { value: NaN } }];
  await rejects(
    profileFigure({ points: broken, halfDiameter: 150, seenTo: 100 }),
    {
      name: "RangeError",
      message:
        "Cannot draw the profile as the departure at 0 mm must be a finite number: current value is NaN mm",
    },
  );
});
