/**
 * Labels up a logarithmic axis, as many as stand clear of one another.
 *
 * @module
 */

/** What is needed of the axis. */
export interface LogAxis {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  readonly label: (value: number) => string;
}

/**
 * Leaves out labels that would touch: powers of ten are kept before the others.
 *
 * @param axis The axis; its ticks stay, as lines of the grid.
 * @param height Length of the axis in px.
 * @param apart Least distance of two labels in px.
 * @returns The label of a tick, empty where it is left out.
 */
export function clearLogLabels(
  axis: LogAxis,
  height: number,
  apart: number,
): (value: number) => string {
  const [low, high] = axis.domain.map(Math.log10);
  const place = (tick: number) =>
    (Math.log10(tick) - low) / (high - low) * height;
  const isPower = (tick: number) =>
    Math.abs(Math.log10(tick) - Math.round(Math.log10(tick))) < 1e-9;
  const inOrder = [...axis.ticks].sort((a, b) =>
    Number(isPower(b)) - Number(isPower(a)) || a - b
  );
  const kept: number[] = [];
  for (const tick of inOrder) {
    const isClear = kept.every((other) =>
      Math.abs(place(tick) - place(other)) >= apart
    );
    if (isClear) kept.push(tick);
  }
  return (value) => kept.includes(value) ? axis.label(value) : "";
}
