/** Users who stop at the first verdict they like. */
import type { Random } from "sagbook/numerics/random.ts";
import { compareZones } from "sagbook/zones/compare_zones.ts";
import type { Place } from "sagbook/zones/place.ts";
import {
  type Looks,
  provisionalVerdict,
} from "sagbook/zones/provisional_verdict.ts";
import type { MeasuredSet } from "sagbook/zones/set_table.ts";
import { judge } from "sagbook/zones/sphericity.ts";
import { compareEnds } from "sagbook/zones/two_ends.ts";

/** What is read, set after set; lengths in display steps. */
export interface StoppingCase {
  /** Scatter of a reading. */
  readonly scatter: number;
  /** Scatter from diameter to diameter, common to the places off centre. */
  readonly diameter: number;
  /** Diameters, read in turn. */
  readonly diameters: number;
  /** True departures of the places as parts of the tolerance. */
  readonly departures: readonly number[];
  /** Departure of the two ends of a diameter as a part of the tolerance. */
  readonly ends?: number;
  /** True where the display rounds to its step. */
  readonly rounds: boolean;
  /** The planned looks. */
  readonly looks: Looks;
}

/** How many users end with each verdict. */
export interface StoppingCounts {
  /** By the rule for stopping early: within, outside. */
  readonly within: number;
  readonly outside: number;
  /** By the 5 % verdict, looked at after every set. */
  readonly plainWithin: number;
  /** By the 5 % verdict, looked at after the last planned set only. */
  readonly plannedWithin: number;
}

const STEP = 0.001;

function setsOf(
  design: StoppingCase,
  limit: number,
  random: Random,
): MeasuredSet[] {
  const { scatter, diameter, diameters, departures, ends, rounds, looks } =
    design;
  const turns = Array.from(
    { length: diameters },
    () => diameter * random.normal(),
  );
  const truth = 0.6 + STEP * random.uniform();
  const shown = (sag: number): number =>
    rounds ? STEP * Math.round(sag / STEP) : sag;
  return Array.from({ length: looks.last }, (_, k) => {
    const turn = k % diameters;
    const radians = Math.PI * turn / diameters;
    const zero = 2 * random.normal();
    const cells = departures.map((part, place) => {
      const at = (end: number): number =>
        shown(
          truth + limit * part + STEP * (zero + scatter * random.normal() +
                (place === 0 ? 0 : turns[turn])) +
            end * limit * (ends ?? 0) * Math.cos(radians) / 2,
        );
      if (place === 0 || ends === undefined) {
        return { sag: at(0), readings: 1 };
      }
      const [plus, minus] = [at(1), at(-1)];
      return { sag: (plus + minus) / 2, readings: 2, plus, minus };
    });
    return {
      label: `${k}`,
      zeroing: `${k}`,
      diameterDegrees: 180 * turn / diameters,
      cells,
    };
  });
}

/** Lets users read sets until the first verdict, at the limit of tolerance. */
export function stoppingUsers(
  design: StoppingCase,
  users: number,
  random: Random,
): StoppingCounts {
  const { departures, looks, scatter, diameter, ends } = design;
  const step = design.rounds ? STEP : 0;
  const places = departures.map((_, k) => ({
    distance: 20 * k,
  })) as unknown as readonly Place[];
  let [within, outside, plainWithin, plannedWithin] = [0, 0, 0, 0];
  for (let user = 0; user < users; user++) {
    // Far beyond the scatter, so that "within" is decided at the limit alone.
    const tolerance = STEP *
      (12 * Math.hypot(scatter, diameter, 1) + random.uniform());
    const sets = setsOf(design, tolerance, random);
    const ground = { places, tolerance, step };
    let [stopped, plainly] = [false, false];
    for (let n = looks.first; n <= looks.last; n++) {
      const soFar = sets.slice(0, n);
      if (!stopped) {
        const { verdict } = provisionalVerdict(soFar, ground, looks);
        if (verdict === "within") within++;
        if (verdict === "outside") outside++;
        stopped = verdict !== "undecided";
      }
      if (plainly && n < looks.last) continue;
      const statements = places.length * (places.length - 1) / 2 +
        (ends === undefined ? 0 : 1);
      const found = judge(
        compareZones(
          soFar,
          places.length,
          step,
          "any diameter",
          ends === undefined ? 0 : 1,
        ),
        compareEnds(soFar, places, step, statements),
        tolerance,
      ).verdict;
      if (found === "within" && !plainly) {
        plainly = true;
        plainWithin++;
      }
      if (found === "within" && n === looks.last) plannedWithin++;
    }
  }
  return { within, outside, plainWithin, plannedWithin };
}
