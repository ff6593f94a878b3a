/**
 * Readings by zeroing, less the means of their zones.
 *
 * @module
 */
import type { CodedReadings } from "./_factor_codes.ts";
import { MICROMETRES } from "./_raw_figure.ts";
import type { ZeroingSummary } from "./surface_components.ts";

/** Every zeroing with its shift and its readings' departures, in mm. */
export function summariseZeroings(
  { readings, cells, cellCount }: CodedReadings,
  sags: readonly number[],
  shiftOf: readonly number[] | undefined,
): ZeroingSummary[] {
  const [sums, counts] = [
    new Float64Array(cellCount),
    new Float64Array(cellCount),
  ];
  sags.forEach((sag, index) => {
    sums[cells[index]] += sag;
    counts[cells[index]]++;
  });
  const zeroings = new Map<string, { shift: number; departures: number[] }>();
  readings.forEach(({ zeroing }, index) => {
    let entry = zeroings.get(zeroing);
    if (!entry) {
      const shift = (shiftOf?.[index] ?? 0) / MICROMETRES;
      zeroings.set(zeroing, entry = { shift, departures: [] });
    }
    const cell = cells[index];
    entry.departures.push(sags[index] - sums[cell] / counts[cell]);
  });
  return [...zeroings].map(([zeroing, entry]) => ({ zeroing, ...entry }));
}
