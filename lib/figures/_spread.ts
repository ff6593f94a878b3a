/**
 * Places that must not stand on top of one another.
 *
 * @module
 */

/**
 * Moves places apart until neighbours keep their distance, and no further.
 *
 * @param places Wanted places, ascending, in px from 0 to `room`.
 * @param gaps Smallest distance of each place from the one before it; the
 * first is ignored. Squeezed alike where they do not fit.
 * @param room Length to stay in, in px.
 * @returns The places, ascending.
 */
export function spread(
  places: readonly number[],
  gaps: readonly number[],
  room: number,
): number[] {
  const needed = gaps.slice(1).reduce((sum, gap) => sum + gap, 0);
  const squeeze = needed > room ? room / needed : 1;
  const moved = [...places];
  for (let i = 1; i < moved.length; i++) {
    moved[i] = Math.max(moved[i], moved[i - 1] + gaps[i] * squeeze);
  }
  let limit = room;
  for (let i = moved.length - 1; i >= 0; i--) {
    moved[i] = Math.min(moved[i], limit);
    limit = moved[i] - gaps[i] * squeeze;
  }
  return moved;
}

/**
 * A sideways shift between −1 and 1 that looks irregular and is always the
 * same for the same number (steps of the golden section).
 */
export function jitter(index: number): number {
  return 2 * ((index * 0.6180339887498949 + 0.5) % 1) - 1;
}
