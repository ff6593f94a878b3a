/**
 * A plan as a sheet to take to the bench.
 *
 * @module
 */
import type { FootDirection } from "../geometry/feet.ts";
import { Random } from "../numerics/random.ts";
import type { PlannedZone, StudySize } from "./scatter_model.ts";

/** What a sheet is made for. */
export interface BenchSheetOrder {
  /** Name of the session, as it will stand in the file. */
  readonly session: string;
  /** Id of the ring, where the bench has several. */
  readonly ring?: string;
  /** Grade of the surface, where known. */
  readonly grade?: string;
  /** Places of every set. */
  readonly zones: readonly Pick<PlannedZone, "label" | "offset">[];
  /** Size of the study; with operators, each of them does all of it. */
  readonly size: StudySize;
  /** How foot 1 is to point; to be written down at the bench if unknown. */
  readonly foot: FootDirection;
  /** Who measures; nobody is named unless stated. */
  readonly operators?: readonly string[];
  /** Unit the display shows; `mm` unless stated. */
  readonly unit?: "mm" | "in";
  /** Seed of the order of chance. */
  readonly seed: number;
}

/** One step at the bench. */
export interface BenchSheetRow {
  /** Running number, from 1. */
  readonly number: number;
  /**
   * `zero`: wipe, note what the flat shows, press zero; `look`: read the flat
   * again without pressing; `read`: read the work.
   */
  readonly act: "zero" | "look" | "read";
  /** Label of the zeroing, unique within the session. */
  readonly zeroing: string;
  /** Who measures. */
  readonly operator?: string;
  /** Direction of the diameter in degrees, for a reading of the work. */
  readonly diameterDegrees?: number;
  /** Label of the zone; `flat` for a zero or a look. */
  readonly zone: string;
  /** Signed distance along the diameter in mm; 0 on the flat. */
  readonly offset: number;
  /** Which reading of this zone in this set it is, from 1. */
  readonly repeat: number;
}

/** A sheet to fill in. */
export interface BenchSheet extends BenchSheetOrder {
  /** The steps, in the order in which they are done. */
  readonly rows: readonly BenchSheetRow[];
}

/**
 * Writes a plan as numbered steps in an order of chance.
 *
 * Every set begins with a zero and a look at the flat and ends with a look.
 * Diameters are spread evenly over half a turn and shared out among the
 * zeroings by chance, each as often as the others or once more; the zones of
 * a set are read in an order of chance, once each before any is read again, so
 * that a repeat is a fresh lift and creep falls on all zones alike. Operators
 * take turns in an order of chance, set by set.
 *
 * @param order What the sheet is made for.
 * @returns The sheet.
 * @throws {RangeError} If a number of the size is not a whole number of at
 * least 1, or there are more diameters than zeroings.
 *
 * @see NIST/SEMATECH e-Handbook of Statistical Methods, section 5.3.3.1
 * (randomised order).
 *
 * @example
 * ```ts
 * import { writeBenchSheet } from "sagbook/repeatability/bench_sheet.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { rows } = writeBenchSheet({
 *   session: "S1",
 *   zones: [{ label: "centre", offset: 0 }],
 *   size: { zeroings: 1, diameters: 1, repeats: 2 },
 *   foot: { kind: "angle", degrees: 0 },
 *   seed: 1,
 * });
 * deepEqual(rows.map(({ act }) => act), ["zero", "look", "read", "read", "look"]);
 * ```
 */
export function writeBenchSheet(order: BenchSheetOrder): BenchSheet {
  const { zones, size, operators = [undefined], seed } = order;
  checkSize(size);
  const random = new Random(seed);
  const sets = operators.flatMap((operator) =>
    random.shuffled(
      Array.from({ length: size.zeroings }, (_, k) => k % size.diameters),
    ).map((turn) => ({ operator, turn }))
  );
  const turns = operators.length > 1 ? takeTurns(sets, random) : sets;
  const rows: BenchSheetRow[] = [];
  turns.forEach(({ operator, turn }, index) => {
    const zeroing = `${index + 1}`;
    const who = operator === undefined ? {} : { operator };
    const add = (row: Omit<BenchSheetRow, "number" | "zeroing">): void => {
      rows.push({ number: rows.length + 1, zeroing, ...who, ...row });
    };
    add({ act: "zero", zone: "flat", offset: 0, repeat: 1 });
    add({ act: "look", zone: "flat", offset: 0, repeat: 1 });
    const diameterDegrees = Number((180 * turn / size.diameters).toFixed(1));
    for (let repeat = 1; repeat <= size.repeats; repeat++) {
      for (const { label, offset } of random.shuffled(zones)) {
        add({ act: "read", diameterDegrees, zone: label, offset, repeat });
      }
    }
    add({ act: "look", zone: "flat", offset: 0, repeat: 2 });
  });
  return { ...order, rows };
}

/** Lets operators take turns, round by round in an order of chance. */
function takeTurns<Set extends { operator: string | undefined }>(
  sets: readonly Set[],
  random: Random,
): Set[] {
  const queues = new Map<string | undefined, Set[]>();
  for (const set of sets) {
    const queue = queues.get(set.operator);
    if (queue) queue.push(set);
    else queues.set(set.operator, [set]);
  }
  const ordered: Set[] = [];
  while (ordered.length < sets.length) {
    for (const queue of random.shuffled([...queues.values()])) {
      const next = queue.shift();
      if (next) ordered.push(next);
    }
  }
  return ordered;
}

function checkSize({ zeroings, diameters, repeats }: StudySize): void {
  for (
    const [name, value] of [
      ["zeroings", zeroings],
      ["diameters", diameters],
      ["repeats", repeats],
    ] as const
  ) {
    if (!(Number.isInteger(value) && value >= 1)) {
      throw new RangeError(
        `Cannot write a bench sheet as the number of ${name} must be a whole number of at least 1: current value is ${value}`,
      );
    }
  }
  if (diameters > zeroings) {
    throw new RangeError(
      `Cannot write a bench sheet as there must be a zeroing for each of ${diameters} diameters: current value is ${zeroings} zeroings`,
    );
  }
}
