import { equal, ok, throws } from "node:assert/strict";
import {
  capVolume,
  radiusFromSurfaceSag,
  surfaceSag,
  volumeBetweenRadii,
} from "sagbook/geometry/surface_sag.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

Deno.test("surfaceSag() gives the derived check value and is undone", () => {
  const deeper = surfaceSag(mm(3000), mm(150)) - surfaceSag(mm(3100), mm(150));
  equal(deeper.toFixed(6), "0.121188");
  const sag = surfaceSag(mm(2400), mm(100));
  ok(Math.abs(radiusFromSurfaceSag(sag, mm(100)) / 2400 - 1) < 1e-15);
  throws(() => surfaceSag(mm(99), mm(100)), RangeError);
});

Deno.test("capVolume() agrees with π S² (3R − S)/3, a half sphere and a sum of discs", () => {
  const [R, a] = [3000, 150];
  const S = surfaceSag(mm(R), mm(a));
  const volume = capVolume(mm(R), mm(a));
  ok(Math.abs(volume / (Math.PI * S * S * (3 * R - S) / 3) - 1) < 1e-12);
  equal(capVolume(mm(2), mm(2)), 16 * Math.PI / 3);
  // Midpoint sum over heights: the squared disc radius is linear but for z².
  let sum = 0;
  const slices = 20_000;
  for (let i = 0; i < slices; i++) {
    const z = S * (i + 0.5) / slices;
    sum += Math.PI * z * (2 * R - z) * S / slices;
  }
  ok(Math.abs(volume / sum - 1) < 1e-9);
});

Deno.test("volumeBetweenRadii() gives the derived check value and keeps its digits", () => {
  const volume = volumeBetweenRadii(mm(3100), mm(3000), mm(150));
  equal((volume / 1000).toFixed(3), "4.286");
  const caps = capVolume(mm(3000), mm(150)) - capVolume(mm(3100), mm(150));
  ok(Math.abs(volume / caps - 1) < 1e-12);
  equal(volumeBetweenRadii(mm(3000), mm(3100), mm(150)), -volume);
  equal(volumeBetweenRadii(mm(150), mm(150), mm(150)), 0);
  // dV/dR at a tiny step: π a⁴ / (4 R²) to leading order in a²/R².
  const tiny = volumeBetweenRadii(mm(3e6), mm(3e6 - 1e-3), mm(150));
  ok(Math.abs(tiny / (Math.PI * 150 ** 4 / (4 * 9e12) * 1e-3) - 1) < 1e-6);
});
