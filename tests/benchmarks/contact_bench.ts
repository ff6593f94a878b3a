/**
 * Readings by exact contact, beside the same equations solved with SciPy.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { coma, evenTerm } from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { contactReading } from "sagbook/geometry/contact_reading.ts";
import {
  conicSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { simulateSession } from "sagbook/geometry/simulate_session.ts";
import { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { benchProgram } from "./_program.ts";
import { median, sideBySide } from "./_side_by_side.ts";

/** The same in _peer_contact.py. */
const surface = withDepartures(
  conicSurface(3000, -0.6),
  evenTerm(6, 1e-16),
  coma(1e-9),
);
const gauge = ringGauge(60, 6.35);

/** One session of eight sets and six places, in ms: the median of many. */
function sessionTime(runs: number): number {
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    simulateSession({
      surface,
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
    }, new Random(run + 1));
    times.push(performance.now() - start);
  }
  return median(times);
}

if (import.meta.main) {
  await benchProgram({
    ours: (n) => () =>
      Array.from({ length: n }, (_, k) => {
        const place = { x: (7 * k) % 88, y: 0, footDegrees: (7 * k) % 360 };
        // In nm.
        return 1e6 * contactReading(surface, gauge, place).travel;
      }),
    run: async (size) => {
      const { row, apart } = await sideBySide({
        program: import.meta.url,
        what: "1,000 readings by exact contact",
        grows: "readings",
        sizes: size === "tiny" ? [10] : [10, 100, 1000],
        runs: (n) => size === "tiny" ? 1 : n < 1000 ? 5 : 3,
        rounds: size === "tiny" ? 1 : 2,
        agree: 1e-7,
        peer: {
          name: "SciPy",
          needs: "python3 with scipy",
          command: (n, runs) => [
            "python3",
            "-B",
            fileURLToPath(import.meta.resolve("./_peer_contact.py")),
            String(n),
            String(runs),
          ],
        },
      });
      return {
        title: "Contact simulator",
        about:
          "Three balls let down on a conic with a sixth-power term and coma, the probe's travel from tangency alone. The peer writes down the nine equations (each ball's centre lies one ball radius along the normal above its touching point) and hands them to `scipy.optimize.fsolve`.",
        rows: [row, {
          what: "A session of eight sets and six places, simulated",
          ours: sessionTime(size === "tiny" ? 1 : 200),
        }],
        ...(apart === undefined ? {} : {
          details: `The travels differ by at most ${
            apart.toExponential(0)
          } of themselves.`,
        }),
      };
    },
  });
}
