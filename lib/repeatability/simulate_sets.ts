/**
 * Sets as a planned study would bring them home.
 *
 * @module
 */
import type { Random } from "../numerics/random.ts";
import type {
  PlannedZone,
  ScatterModel,
  SimulatedSet,
  StudySize,
} from "./scatter_model.ts";

/**
 * Simulates the sets of a study, rounding included.
 *
 * Each set has its own zeroing, read along one diameter; diameters take turns
 * and are spread evenly over half a turn. The zones of a set are read in an
 * order of chance, `repeats` times over, so that creep of the zero falls on
 * all of them alike. The display counts whole steps from wherever the zero
 * fell between two of them: readings and zero are both rounded.
 *
 * @param zones The places and the sag there, in mm.
 * @param size The size of the study.
 * @param model What makes readings differ.
 * @param random Where chance comes from.
 * @param changes Change of sag from the first occasion to each, in mm; one
 * occasion without a change unless stated.
 * @returns The sets, occasion by occasion.
 *
 * @example Without scatter every set shows the surface
 * ```ts
 * import { simulateSets } from "sagbook/repeatability/simulate_sets.ts";
 * import { Random } from "sagbook/numerics/random.ts";
 * import { equal } from "node:assert/strict";
 *
 * const zones = [{ label: "centre", offset: 0, sag: 0.715 }];
 * const size = { zeroings: 3, diameters: 3, repeats: 2 };
 * const model = { repeat: 0, zeroing: 0, step: 0.001 };
 * const sets = simulateSets(zones, size, model, new Random(1));
 * equal(sets[2].cells[0].sag.toFixed(6), "0.715000");
 * equal(sets[2].diameterDegrees, 120);
 * ```
 */
export function simulateSets(
  zones: readonly PlannedZone[],
  size: StudySize,
  model: ScatterModel,
  random: Random,
  changes: readonly number[] = [0],
): SimulatedSet[] {
  const { zeroings, diameters, repeats } = size;
  const { step } = model;
  const shifts = Array.from(
    { length: diameters },
    () => (model.diameter ?? 0) * random.normal(),
  );
  const places = Array.from(
    { length: zones.length * repeats },
    (_, k) => k % zones.length,
  );
  const { common = 0 } = model;
  const shared = common === 0 ? 0 : common * random.normal();
  return changes.flatMap((change, occasion) => {
    const day = shared + (model.occasion ?? 0) * random.normal() + change;
    return Array.from({ length: zeroings }, (_, set): SimulatedSet => {
      const turn = set % diameters;
      const zero = day + model.zeroing * random.normal();
      const start = random.uniform();
      const shown = (sag: number): number =>
        step > 0
          ? step * (Math.round(start + sag / step) - Math.round(start))
          : sag;
      const base = zones.map(({ sag, offset }) =>
        sag + zero + (offset === 0 ? 0 : shifts[turn]) +
        (model.zoneByZeroing ? model.zoneByZeroing * random.normal() : 0)
      );
      const sums = new Array<number>(zones.length).fill(0);
      const creep = model.driftPerReading ?? 0;
      const order = creep === 0 ? places : random.shuffled(places);
      order.forEach((place, k) => {
        sums[place] += shown(
          base[place] + creep * (k + 1) + model.repeat * random.normal(),
        );
      });
      const name = `${occasion + 1} / ${set + 1}`;
      return {
        label: name,
        zeroing: name,
        diameterDegrees: 180 * turn / diameters,
        occasion,
        cells: sums.map((sum) => ({ sag: sum / repeats, readings: repeats })),
      };
    });
  });
}
