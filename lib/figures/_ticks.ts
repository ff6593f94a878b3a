/**
 * Where an axis has its ticks, and how its numbers are written.
 *
 * @module
 */

/** Ticks of an axis and the decimals that tell them apart. */
export interface Ticks {
  /** Ends of the axis. */
  readonly domain: readonly [number, number];
  /** Values of the ticks, ascending. */
  readonly values: readonly number[];
  /** Distance between ticks. */
  readonly step: number;
  /** Decimals that the ticks need. */
  readonly decimals: number;
}

/** The nearest 1, 2 or 5 times a power of ten that is at least `least`. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const found = [1, 2, 5, 10].find((n) => n * power >= least * (1 - 1e-9));
  return (found ?? 10) * power;
}

/** Decimals needed to write multiples of a 1-2-5 step. */
export function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}

/**
 * Lays out a linear axis.
 *
 * A range of no width is widened: around the value by `least`, so that
 * identical readings still make a picture.
 *
 * @param low Smallest value to show, finite.
 * @param high Largest value to show, finite.
 * @param count About how many ticks.
 * @param least Smallest width of the axis, above 0.
 */
export function linearTicks(
  low: number,
  high: number,
  count = 5,
  least = 1e-9,
): Ticks {
  const floor = Math.max(
    least,
    Math.max(Math.abs(low), Math.abs(high)) * 1e-12,
  );
  let [from, to] = [low, high];
  if (to - from < floor) {
    const middle = (from + to) / 2;
    [from, to] = [middle - floor / 2, middle + floor / 2];
  }
  const step = niceStep((to - from) / count);
  const first = Math.floor(from / step + 1e-9);
  const last = Math.ceil(to / step - 1e-9);
  const decimals = decimalsOf(step);
  const values = [];
  for (let i = first; i <= last; i++) {
    values.push(Number((i * step).toFixed(decimals)));
  }
  return { domain: [values[0], values.at(-1)!], values, step, decimals };
}

/** Writes a number with fixed decimals and a true minus sign. */
export function written(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** The same with a plus sign on what is above zero. */
export function signed(value: number, decimals: number): string {
  const text = written(value, decimals);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** Writes a number with about so many figures, without needless zeros. */
export function figuresOf(value: number, figures = 2): string {
  if (value === 0) return "0";
  const decimals = Math.max(
    0,
    figures - 1 - Math.floor(Math.log10(Math.abs(value)) + 1e-9),
  );
  return written(value, Math.min(decimals, 12));
}

/**
 * Ticks of a logarithmic axis: 1, 2, 5 of each power of ten, or the powers
 * alone where those would be many.
 *
 * @param low Smallest value to show, above 0.
 * @param high Largest value to show, above 0.
 */
export function logTicks(low: number, high: number): Ticks {
  const wide = high / low > 2000;
  const steps = wide ? [1] : [1, 2, 5];
  const all: number[] = [];
  const first = Math.floor(Math.log10(low)) - 1;
  for (let power = first; power <= Math.ceil(Math.log10(high)) + 1; power++) {
    for (const n of steps) all.push(Number(`${n}e${power}`));
  }
  const start = all.findLastIndex((v) => v <= low * (1 + 1e-9));
  const end = all.findIndex((v) => v >= high * (1 - 1e-9));
  const values = all.slice(start, Math.max(end, start + 1) + 1);
  return {
    domain: [values[0], values.at(-1)!],
    values,
    step: values[0],
    decimals: decimalsOf(values[0]),
  };
}

/** Decimals that keep two figures of an uncertainty. */
export function decimalsFor(uncertainty: number): number {
  if (!(uncertainty > 0)) return 0;
  return Math.min(
    12,
    Math.max(0, 1 - Math.floor(Math.log10(uncertainty) + 1e-9)),
  );
}
