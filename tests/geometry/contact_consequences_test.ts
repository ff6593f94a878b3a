import { equal, ok } from "node:assert/strict";
import {
  astigmatism,
  coma,
  evenTerm,
  trefoil,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { contactReading } from "sagbook/geometry/contact_reading.ts";
import { contactSag } from "sagbook/geometry/contact_sag.ts";
import {
  conicSurface,
  type ContactSurface,
  insideOut,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import {
  evenTermResponse,
  threeFootMean,
} from "sagbook/geometry/three_foot_mean.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

// The derived scenario: a 300 mm disc of R = 3000 mm, feet on r = 60 mm, balls
// of 6.35 mm. Every departure stands 1 µm high at the rim.
const [R, a, r] = [3000, 150, 60];
const MICROMETRE = 1e-3;
const sphere = conicSurface(R, 0);
const gauge = ringGauge(r, 6.35);

/** Change of the reading by exact contact, in mm. */
function change(
  departure: ContactSurface,
  offset: number,
  diameterDegrees: number,
  footDegrees: number,
  form: "concave" | "convex" = "concave",
): number {
  const along = diameterDegrees * Math.PI / 180;
  const place = {
    x: offset * Math.cos(along),
    y: offset * Math.sin(along),
    footDegrees,
  };
  const sag = (surface: ContactSurface) =>
    contactSag(
      form === "concave" ? surface : insideOut(surface),
      form,
      gauge,
      place,
    );
  return sag(withDepartures(sphere, departure)) - sag(sphere);
}

/** The order at which first-order theory holds: 1e-3 of the amplitude. */
const near = (found: number, wanted: number, within = MICROMETRE * 1e-3) =>
  ok(Math.abs(found - wanted) <= within, `${found} is not ${wanted}`);

function everywhere(
  visit: (offset: number, diameter: number, foot: number) => void,
) {
  for (const offset of [-85, 0, 40, 85]) {
    for (const diameter of [0, 45, 77]) {
      for (const foot of [0, 33, 180]) visit(offset, diameter, foot);
    }
  }
}

Deno.test("exact contact does not see astigmatism at any offset and rotation", () => {
  everywhere((offset, diameter, foot) =>
    near(
      change(astigmatism(MICROMETRE / a ** 2), offset, diameter, foot),
      0,
    )
  );
});

Deno.test("exact contact sees coma-like wear as 2 C c r² cos θ, opposite at the two ends", () => {
  const C = MICROMETRE / a ** 3;
  everywhere((offset, diameter, foot) =>
    near(
      change(coma(C), offset, diameter, foot),
      2 * C * offset * r * r * Math.cos(diameter * Math.PI / 180),
    )
  );
});

Deno.test("exact contact sees trefoil as T r³ cos 3ψ at every offset", () => {
  const T = MICROMETRE / a ** 3;
  everywhere((offset, diameter, foot) =>
    near(
      change(trefoil(T), offset, diameter, foot),
      T * r ** 3 * Math.cos(3 * foot * Math.PI / 180),
    )
  );
});

Deno.test("exact contact sees a4 ρ⁴ as 4 a4 c² r² against the centre, whatever the rotation", () => {
  const a4 = MICROMETRE / a ** 4;
  // The balls touch 0.127 mm outside their circle, or inside it on convex work.
  for (
    const [form, touch] of [["concave", 60.127], ["convex", 59.873]] as const
  ) {
    everywhere((offset, diameter, foot) =>
      near(
        change(evenTerm(4, a4), offset, diameter, foot, form) -
          change(evenTerm(4, a4), 0, 0, foot, form),
        4 * a4 * offset * offset * touch * touch,
      )
    );
  }
});

Deno.test("exact contact sees a6 ρ⁶ as the three-foot mean, 0.251 or 0.204 µm at 85 mm by direction", () => {
  const a6 = MICROMETRE / a ** 6;
  everywhere((offset, diameter, foot) =>
    near(
      change(evenTerm(6, a6), offset, diameter, foot),
      a6 *
        evenTermResponse(
          6,
          mm(r),
          mm(offset),
          foot - diameter + (offset < 0 ? 180 : 0),
        ),
    )
  );
  const [out, feetOut] = [0, 180].map((foot) =>
    change(evenTerm(6, a6), 85, 0, foot) * 1000
  );
  equal(out.toFixed(3), "0.251");
  equal(feetOut.toFixed(3), "0.204");
});

Deno.test("exact contact sees −0.27 of a turned edge with one foot out and nothing with two", () => {
  for (const power of [2, 3] as const) {
    const edge = turnedEdge({ halfDiameter: a, width: 20, depth: 1e-3, power });
    const out = change(edge, 88, 0, 0) / 1e-3;
    if (power === 2) equal(out.toFixed(2), "-0.27");
    const theory = threeFootMean((x, y) => edge(x, y).height, {
      circleRadius: mm(60.127),
      offset: mm(88),
      diameterDegrees: 0,
      footDegrees: 0,
    }) / 1e-3;
    // On the sphere the foot stands c r (c + r)/(2R²) = 0.044 mm farther in than
    // in the plane, which at a slope of 3 t²/20 per mm is 2e-3 of the depth.
    near(out, theory, 3e-3);
    near(change(edge, 88, 0, 180) / 1e-3, 0, 1e-9);
  }
});

Deno.test("exact contact reads a paraboloid longer by c²/R: 1.6324 mm one foot out, 1.6328 two", () => {
  const paraboloid = conicSurface(R, -1);
  const radius = (offset: number, footDegrees: number) =>
    radiusFromSag(
      mm(
        contactReading(paraboloid, gauge, { x: offset, y: 0, footDegrees })
          .travel,
      ),
      { circleRadius: mm(r), ballRadius: mm(6.35) },
      "concave",
    );
  equal((radius(70, 0) - radius(0, 0)).toFixed(4), "1.6324");
  equal((radius(70, 180) - radius(0, 180)).toFixed(4), "1.6328");
});
