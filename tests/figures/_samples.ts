/**
 * Invented inputs of every figure, used for the goldens and the browser.
 *
 * @module
 */
import type { Figure } from "sagbook/figures/figure.ts";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";

/** One picture to keep. */
export interface Sample {
  readonly name: string;
  readonly draw: () => Promise<Figure>;
}

const setsAround = (mean: number, spread: number, count: number) =>
  Array.from({ length: count }, (_, i) => ({
    difference: mean + spread * Math.sin(2.4 * i + 1),
  }));

/** Every picture of the goldens, in mm and inches, plain and awkward. */
export const samples: readonly Sample[] = [
  {
    name: "zones-within",
    draw: () =>
      zonesFigure({
        reference: { label: "centre", distance: 0 },
        zones: [
          {
            label: "50 %",
            distance: 75,
            difference: 0.0001,
            interval90: { low: -0.0003, high: 0.0005 },
            interval95: { low: -0.00041, high: 0.00061 },
            sets: setsAround(0.0001, 0.0006, 5),
          },
          {
            label: "edge (feet out)",
            distance: 88,
            difference: -0.0002,
            interval90: { low: -0.0006, high: 0.0002 },
            interval95: { low: -0.00072, high: 0.00032 },
            sets: setsAround(-0.0002, 0.0006, 5),
          },
        ],
        tolerance: 0.001,
      }, { title: "The zones agree within the tolerance" }),
  },
  {
    name: "zones-outside-inch",
    draw: () =>
      zonesFigure({
        reference: { label: "centre", distance: 0 },
        zones: [
          {
            label: "−edge",
            distance: 88,
            difference: -0.0052,
            interval90: { low: -0.0059, high: -0.0045 },
            interval95: { low: -0.0061, high: -0.0043 },
            sets: [
              ...setsAround(-0.0052, 0.0008, 7),
              { difference: -0.011, flagged: true },
            ],
          },
          {
            label: "+edge",
            distance: 88,
            difference: -0.0048,
            interval90: { low: -0.0054, high: -0.0042 },
            interval95: { low: -0.0056, high: -0.004 },
            sets: setsAround(-0.0048, 0.0008, 8),
          },
          {
            label: "50 %",
            distance: 75,
            difference: -0.0004,
            interval90: { low: -0.001, high: 0.0002 },
            interval95: { low: -0.0012, high: 0.0004 },
            sets: setsAround(-0.0004, 0.0008, 8),
          },
        ],
        tolerance: 0.001,
      }, {
        unit: "in",
        title: "Not a sphere: the edge differs by more than the tolerance",
      }),
  },
  {
    name: "zones-one-set",
    draw: () =>
      zonesFigure({
        reference: { label: "centre", distance: 0 },
        zones: [{ label: "edge", distance: 88, difference: 0 }],
      }),
  },
];
