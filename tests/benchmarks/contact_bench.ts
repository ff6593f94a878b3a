import {
  coma,
  evenTerm,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { contactReading } from "sagbook/geometry/contact_reading.ts";
import {
  conicSurface,
  toricSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { simulateSession } from "sagbook/geometry/simulate_session.ts";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const gauge = ringGauge(60, 6.35);
const surfaces = {
  sphere: conicSurface(3000, 0),
  toric: toricSurface(3000, 2990),
  "worn surface": withDepartures(
    conicSurface(3000, -0.6),
    evenTerm(6, 1e-16),
    coma(1e-9, 30),
    turnedEdge({ halfDiameter: 150, width: 15, depth: 0.006 }),
  ),
};

for (const [name, surface] of Object.entries(surfaces)) {
  let turn = 0;
  Deno.bench(
    `one reading by exact contact, ${name}`,
    { group: "contact" },
    () => {
      turn += 7;
      contactReading(surface, gauge, { x: turn % 88, y: 0, footDegrees: turn });
    },
  );
}

Deno.bench(
  "one session of eight sets and six places",
  { group: "session" },
  () => {
    simulateSession({
      surface: surfaces["worn surface"],
      form: "concave",
      gauge,
      diameters: [0, 22, 45, 67, 90, 112, 135, 157],
      places: [0, 40, -40, 80, -80, 0].map((offset, i) => ({
        zone: i === 5 ? "flat" : `${offset} mm`,
        offset: mm(offset),
      })),
      foot: "foot out",
      scatter: { repeat: mm(5e-4), zeroing: mm(1e-3), diameter: mm(3e-4) },
      step: mm(1e-3),
    }, new Random(1));
  },
);
