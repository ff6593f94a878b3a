/**
 * Readings of one session that cannot stand beside its others, and what each
 * slip that makes such readings would leave behind.
 *
 * @module
 */
import { meanOf, type SagLevel } from "./_sag_levels.ts";
import type { LengthUnit } from "./piece.ts";

/** Millimetres in an inch. */
export const INCH = 25.4;
/** How near a factor must come to 25.4 to be the mark of inches. */
export const NEAR_INCH = 0.15;
/** No surface changes its sag by this factor from zone to zone. */
const FAR_OFF = 3;
/** A minority of one zone this far off, as a part of the sag, stands apart. */
const APART = 0.04;
/** And by at least so many display steps. */
const APART_STEPS = 20;
/** A zone never read otherwise must differ by this part to be a slip. */
const BEYOND_SHAPE = 0.15;
/** A full turn of a dial, as far as turns are round amounts. */
const TURNS: Readonly<Record<LengthUnit, readonly number[]>> = {
  mm: [1, 2, 0.5, 0.2, 0.4, 0.1],
  in: [0.1, 0.2, 0.05, 0.04, 0.02, 0.01].map((turn) => turn * INCH),
};

/** How readings stand to the others of their session. */
export type OddKind =
  | "sign"
  | "inches"
  | "thousandths"
  | "decimal point"
  | "turn"
  | "far off"
  | "apart";

/** Readings that cannot stand beside the others. */
export interface OddReadings {
  /** What they look like. */
  readonly kind: OddKind;
  /** The readings. */
  readonly level: SagLevel;
  /** What the others read there, in mm. */
  readonly usual: number;
  /** The turn of the dial, in mm, where they look like one. */
  readonly turn?: number;
}

/** True when a ratio is within a part of a factor. */
export function near(ratio: number, factor: number, within: number): boolean {
  return Math.abs(ratio / factor - 1) <= within;
}

/** A full turn of a dial that a difference comes to, in mm. */
export function turnOf(
  difference: number,
  unit: LengthUnit,
  within: number,
): number | undefined {
  return TURNS[unit].find((turn) =>
    Math.abs(Math.abs(difference) - turn) <= within
  );
}

/** The level the others are measured by: that fits, then that has most. */
function mainLevel(
  levels: readonly SagLevel[],
  fits: (sag: number) => boolean,
): SagLevel {
  return levels.reduce((best, level) => {
    const better = Number(fits(Math.abs(meanOf(level)))) -
      Number(fits(Math.abs(meanOf(best))));
    return better > 0 || (better === 0 && level.count > best.count)
      ? level
      : best;
  });
}

function kindOfRatio(ratio: number): OddKind | undefined {
  if (ratio < 0) return "sign";
  const times = Math.max(ratio, 1 / ratio);
  if (near(times, INCH, NEAR_INCH)) return "inches";
  if (near(times, 1000 / INCH, NEAR_INCH)) return "thousandths";
  if ([10, 100, 1000].some((factor) => near(times, factor, 0.1))) {
    return "decimal point";
  }
  return times > FAR_OFF ? "far off" : undefined;
}

/** What the zones of a level read elsewhere, and how often. */
function elsewhere(
  level: SagLevel,
  plain: readonly SagLevel[],
): { mean: number; count: number } | undefined {
  let [sum, weight, count] = [0, 0, 0];
  for (const [zone, part] of level.zones) {
    const others = plain.filter((one) => one !== level)
      .flatMap(({ zones }) => zones.get(zone) ?? []);
    if (others.length === 0) continue;
    const most = others.reduce((a, b) => b.count > a.count ? b : a);
    sum += part.count * meanOf(most);
    weight += part.count;
    count += most.count;
  }
  return weight === 0 ? undefined : { mean: sum / weight, count };
}

function odd(
  level: SagLevel,
  main: SagLevel,
  plain: readonly SagLevel[],
  unit: LengthUnit,
  step: number,
): OddReadings | undefined {
  const usual = meanOf(main);
  const kind = kindOfRatio(meanOf(level) / usual);
  const known = elsewhere(level, plain);
  const there = known?.mean ?? usual;
  const difference = meanOf(level) - there;
  if (kind === undefined || kind === "far off") {
    const turn = turnOf(difference, unit, Math.max(3 * step, 0.003));
    const slip = known === undefined
      ? Math.abs(difference) > BEYOND_SHAPE * Math.abs(there)
      : level.count <= known.count;
    if (turn !== undefined && slip && level.count < main.count) {
      return { kind: "turn", level, usual: there, turn };
    }
  }
  if (kind !== undefined) return { kind, level, usual };
  const apart = known !== undefined && 2 * level.count <= known.count &&
    Math.abs(difference) > APART * Math.abs(there) &&
    Math.abs(difference) > APART_STEPS * step;
  return apart ? { kind: "apart", level, usual: there } : undefined;
}

/**
 * Finds the readings of a session that cannot stand beside its others.
 *
 * A zone that always reads so is shape, unless no surface could have it.
 *
 * @param levels The levels of one session, at least one.
 * @param unit The unit they were typed in.
 * @param step Display step in mm, above 0.
 * @param fits Whether a sag fits what the piece should have.
 * @returns What is odd; the rest can stand together.
 */
export function oddReadings(
  levels: readonly SagLevel[],
  unit: LengthUnit,
  step: number,
  fits: (sag: number) => boolean,
): readonly OddReadings[] {
  const main = mainLevel(levels, fits);
  const usual = meanOf(main);
  const plain = levels.filter((level) =>
    kindOfRatio(meanOf(level) / usual) === undefined
  );
  return levels.flatMap((level) =>
    level === main ? [] : odd(level, main, plain, unit, step) ?? []
  );
}
