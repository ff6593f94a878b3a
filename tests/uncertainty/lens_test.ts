import { equal, ok, throws } from "node:assert/strict";
import type { SurfaceForm } from "sagbook/geometry/feet.ts";
import { Random } from "sagbook/numerics/random.ts";
import type { Estimate } from "sagbook/statistics/estimate.ts";
import {
  type Lens,
  lensPower,
  type LensSurface,
  surfacePowerOf,
} from "sagbook/uncertainty/lens_power.ts";
import { radiusAgainstPlate } from "sagbook/uncertainty/test_plate.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { referenceFiles } from "./_reference_files.ts";

const near = (found: number | undefined, wanted: number, relative = 1e-12) =>
  ok(
    found !== undefined &&
      Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );
const known = (value: number, common: Estimate["common"] = {}): Estimate => ({
  value,
  own: 0,
  dof: Infinity,
  common,
});
const curved = (
  form: SurfaceForm,
  value: number,
  common: Estimate["common"] = {},
): LensSurface => ({ form, radius: known(value, common) });
const lens = (
  first: LensSurface,
  second: LensSurface,
  index: number,
  thickness: number,
): Lens => ({ first, second, index, thickness: mm(thickness) });

/** A paraxial ray at height 1 through both surfaces: where it meets the axis. */
function traced(
  { first, second, index, thickness }: Lens,
): { focalLength: number; back: number } {
  const curvature = (surface: LensSurface, sign: number) =>
    surface.form === "flat"
      ? 0
      : (surface.form === "convex" ? sign : -sign) / surface.radius.value;
  let [height, angle] = [1, 0];
  angle = (angle - height * (index - 1) * curvature(first, 1)) / index;
  height += angle * thickness;
  angle = index * angle - height * (1 - index) * curvature(second, -1);
  return { focalLength: -1 / angle, back: -height / angle };
}

Deno.test("lensPower() agrees with a paraxial ray through every kind of lens", () => {
  const random = new Random(1);
  const forms = ["convex", "concave", "flat"] as const;
  for (const one of forms) {
    for (const two of forms) {
      if (one === "flat" && two === "flat") continue;
      const make = (form: typeof one): LensSurface =>
        form === "flat" ? { form } : curved(form, 80 + 300 * random.uniform());
      const glass = lens(
        make(one),
        make(two),
        1.5 + 0.3 * random.uniform(),
        12,
      );
      const found = lensPower(glass);
      const ray = traced(glass);
      near(found.focalLength?.value, ray.focalLength, 1e-10);
      near(found.backFocalLength?.value, ray.back, 1e-10);
      near(found.power.value, 1000 / ray.focalLength, 1e-10);
    }
  }
});

Deno.test("lensPower() holds in closed form: plano-convex, ball, thin and thick biconvex", () => {
  const plano = lens(curved("convex", 103.4), { form: "flat" }, 1.517, 9);
  near(lensPower(plano).focalLength?.value, 103.4 / 0.517);
  const ball = lens(curved("convex", 10), curved("convex", 10), 1.5, 20);
  near(lensPower(ball).focalLength?.value, 15);
  const thin = lens(curved("convex", 100), curved("convex", 100), 1.5, 0);
  near(lensPower(thin).focalLength?.value, 100);
  const thick = lens(curved("convex", 100), curved("convex", 100), 1.5, 10);
  near(lensPower(thick).power.value, 10 - 1 / 6);
  // Turned round it has the same focal length, but not the same back focus.
  const turned = lens({ form: "flat" }, curved("convex", 103.4), 1.517, 9);
  near(lensPower(turned).focalLength?.value, 103.4 / 0.517);
  near(lensPower(turned).backFocalLength?.value, 103.4 / 0.517);
  near(lensPower(plano).backFocalLength?.value, 103.4 / 0.517 - 9 / 1.517);
});

for (const file of referenceFiles("surface-power")) {
  Deno.test(`surfacePowerOf() agrees with ${file.name} (${file.source})`, () => {
    ok(file.data.length > 0);
    for (const row of file.data) {
      const [n, signed] = [Number(row.n), Number(row.R_mm)];
      const form = signed > 0 ? "convex" : "concave";
      const { power, estimate } = surfacePowerOf(
        form,
        known(Math.abs(signed)),
        n,
      );
      const wanted = Number(row[file.expected.field]);
      near(power.dioptres, wanted, file.tolerance.relative);
      near(estimate.value, wanted, file.tolerance.relative);
      equal(power.index, n);
    }
  });
}

Deno.test("lensPower() lets a shared ring error add up on equal sides and cancel on a meniscus", () => {
  const ring = { "ring A radius": 0.5 };
  const equalSides = lens(
    curved("convex", 100, ring),
    curved("convex", 100, ring),
    1.5,
    0,
  );
  // f = 100: each side moves 1/f by half of 0.5 %, both together by all of it.
  near(lensPower(equalSides).focalLength?.standardUncertainty, 0.5, 1e-4);
  near(
    lensPower(equalSides).focalLength?.estimate.common["ring A radius"],
    0.5,
    1e-4,
  );
  const meniscus = lens(
    curved("convex", 100, ring),
    curved("concave", 110, { "ring A radius": 0.5 * 1.21 }),
    1.5,
    0,
  );
  ok((lensPower(meniscus).power.standardUncertainty) < 1e-6);
});

Deno.test("lensPower() counts index and thickness", () => {
  const glass = lens(curved("convex", 100), { form: "flat" }, 1.5, 10);
  const found = lensPower({ ...glass, indexUncertainty: 0.001 }).focalLength;
  near(found?.standardUncertainty, 100 / 0.25 * 0.001, 1e-6);
  const thick = lens(curved("convex", 100), curved("convex", 100), 1.5, 10);
  const { power } = lensPower({ ...thick, thicknessUncertainty: mm(0.1) });
  near(power.standardUncertainty, 0.1 / 1.5 * 0.005 ** 2 * 1000, 1e-6);
});

Deno.test("lensPower() gives no focal length where the power may be 0", () => {
  const weak = lensPower({
    ...lens(
      { form: "convex", radius: { value: 100, own: 1, dof: 9, common: {} } },
      { form: "concave", radius: { value: 101, own: 1, dof: 9, common: {} } },
      1.5,
      0,
    ),
  });
  equal(weak.focalLength, undefined);
  ok(weak.power.lower < 0 && weak.power.upper > 0);
});

Deno.test("lensPower() refuses signed radii, indices and negative thickness", () => {
  const flat: LensSurface = { form: "flat" };
  throws(() => lensPower(lens(curved("convex", -100), flat, 1.5, 1)), {
    name: "RangeError",
    message:
      "Cannot find the power of a lens as the radius of surface 1 must be above 0 mm, its form saying concave or convex: current value is -100 mm",
  });
  throws(() => lensPower(lens(curved("convex", 100), flat, 1, 1)), {
    name: "RangeError",
    message:
      "Cannot make a power as its index must be above 1: current value is 1",
  });
  throws(() => lensPower(lens(curved("convex", 100), flat, 1.5, -1)), {
    name: "RangeError",
    message:
      "Cannot find the power of a lens as its thickness must be at least 0 mm: current value is -1 mm",
  });
});

Deno.test("radiusAgainstPlate() moves R by N λ R²/a² for few fringes, with the sign of touch and form", () => {
  const plateRadius = { value: 400, own: 0.02, dof: Infinity, common: {} };
  const at = (form: SurfaceForm, touch: "centre" | "edge", fringes = 3) =>
    radiusAgainstPlate({
      form,
      plate: "P",
      plateRadius,
      diameter: mm(50),
      fringes,
      touch,
      wavelength: mm(0.000589),
    });
  const shift = 3 * 0.000589 * 400 ** 2 / 25 ** 2;
  near(at("concave", "centre").value - 400, shift, 0.005);
  near(at("concave", "edge").value - 400, -shift, 0.005);
  near(at("convex", "centre").value - 400, -shift, 0.005);
  near(at("convex", "edge").value - 400, shift, 0.005);
  const { estimate } = at("concave", "centre", 0);
  near(estimate.common["plate P radius"], 0.02, 1e-6);
  near(estimate.own, shift / 3 * 0.1, 0.005);
  throws(() => at("concave", "centre", -1), {
    name: "RangeError",
    message:
      "Cannot find a radius from fringes as their number must be at least 0, where they touch telling which is flatter: current value is -1",
  });
});
