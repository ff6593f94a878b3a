/**
 * Departures in five steps, told apart by shape and size, then by colour.
 *
 * @module
 */
import type { ShapeName } from "./_symbols.ts";
import type { Role } from "./_theme.ts";
import { decimalsOf, niceStep, signed, written } from "./_ticks.ts";

/** One step. */
export interface DepartureClass {
  readonly label: string;
  readonly look: {
    readonly shape: ShapeName;
    readonly fill: Role;
    readonly size: number;
  };
}

/** The steps, from well below to well above. */
export interface DepartureSteps {
  readonly classes: readonly DepartureClass[];
  levelOf(value: number): number;
}

/**
 * Makes steps of a 1-2-5 width that hold all values, labelled in `unit`.
 *
 * No step is finer than `finest`: colours finer than the gauge shows would
 * picture the rounding of sums.
 */
export function departureSteps(
  values: readonly number[],
  unit: string,
  finest: number,
): DepartureSteps {
  const most = values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const step = niceStep(Math.max(most / 2.5, finest));
  const decimals = decimalsOf(step);
  const edge = (n: number) => signed(n * step, decimals);
  const classes: DepartureClass[] = [
    {
      label: `below ${edge(-2)} ${unit}`,
      look: { shape: "triangleDown", fill: "lowest", size: 7 },
    },
    {
      label: `${edge(-2)} to ${edge(-1)} ${unit}`,
      look: { shape: "triangleDown", fill: "low", size: 5 },
    },
    {
      label: `within ±${written(step, decimals)} ${unit}`,
      look: { shape: "circle", fill: "middle", size: 4 },
    },
    {
      label: `${edge(1)} to ${edge(2)} ${unit}`,
      look: { shape: "triangle", fill: "high", size: 5 },
    },
    {
      label: `above ${edge(2)} ${unit}`,
      look: { shape: "triangle", fill: "highest", size: 7 },
    },
  ];
  return {
    classes,
    levelOf(value) {
      const size = Math.abs(value) / step * (1 + 1e-9);
      const steps = size > 2 ? 2 : size > 1 ? 1 : 0;
      return 2 + Math.sign(value) * steps;
    },
  };
}
