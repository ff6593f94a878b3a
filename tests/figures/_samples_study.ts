/**
 * Invented inputs for the figures of gauge, uncertainty and choice of ring.
 *
 * @module
 */
import { budgetFigure } from "sagbook/figures/budget_figure.ts";
import { canTellApartFigure } from "sagbook/figures/can_tell_apart_figure.ts";
import { componentIntervalsFigure } from "sagbook/figures/component_intervals_figure.ts";
import { componentsFigure } from "sagbook/figures/components_figure.ts";
import { controlChartFigure } from "sagbook/figures/control_chart_figure.ts";
import { densityFigure } from "sagbook/figures/density_figure.ts";
import { powerFigure } from "sagbook/figures/power_figure.ts";
import { ringChoiceFigure } from "sagbook/figures/ring_choice_figure.ts";
import type { Sample } from "./_sample.ts";

const bell = (x: number) => Math.exp(-x * x / 2);
const bins = (
  low: number,
  high: number,
  count: number,
  shape: (x: number) => number,
) => {
  const width = (high - low) / count;
  const all = Array.from({ length: count }, (_, i) => {
    const x = low + (i + 0.5) * width;
    return {
      low: low + i * width,
      high: low + (i + 1) * width,
      share: shape(x),
    };
  });
  const sum = all.reduce((total, { share }) => total + share, 0);
  return all.map((bin) => ({ ...bin, share: bin.share / sum }));
};

/** Zero of a gauge in warm hands: it creeps, then is put right. */
const zeros = Array.from(
  { length: 24 },
  (_, i) =>
    0.0004 * Math.sin(2.3 * i) + (i > 13 && i < 19 ? 0.0006 * (i - 13) : 0),
);

export const studySamples: readonly Sample[] = [
  {
    name: "components-plain",
    draw: () =>
      componentsFigure({
        zeroings: Array.from({ length: 8 }, (_, i) => {
          const level = 0.0014 * Math.sin(2.1 * i + 1);
          return {
            label: `${i + 1}`,
            level: 0.9 * level,
            readings: [0, 1, 2, 3].map((n) =>
              level + 0.0006 * Math.sin(3 * i + 2 * n)
            ),
          };
        }),
        repeat: 0.0004,
        zeroing: 0.0011,
      }),
  },
  {
    name: "components-one-zeroing-inch",
    draw: () =>
      componentsFigure({
        zeroings: [{ label: "morning", level: 0, readings: [0, 0, 0] }],
        repeat: 0,
      }, { unit: "in" }),
  },
  {
    name: "component-intervals-plain",
    draw: () =>
      componentIntervalsFigure({
        components: [
          {
            label: "repeat",
            deviation: 0.0004,
            interval95: { low: 0.00033, high: 0.00052 },
          },
          {
            label: "zeroing",
            deviation: 0.0011,
            interval95: { low: 0.0007, high: 0.0024 },
          },
          {
            label: "operator",
            deviation: 0.0006,
            interval95: { low: 0, high: 0.031 },
          },
          {
            label: "drift between two looks at the flat",
            deviation: 0,
            interval95: { low: 0, high: 0.0004 },
          },
          { label: "zone × zeroing" },
        ],
        radiusPerSag: -4977,
      }),
  },
  {
    name: "component-intervals-none-inch",
    draw: () =>
      componentIntervalsFigure({
        components: [{ label: "repeat" }, { label: "zeroing" }],
        radiusPerSag: -4977,
      }, { unit: "in" }),
  },
  {
    name: "control-chart-drift",
    draw: () => {
      const ranges = zeros.slice(1).map((zero, i) => Math.abs(zero - zeros[i]));
      return controlChartFigure({
        labels: zeros.slice(1).map((_, i) => `${i + 2}`),
        labelled: "Zeroing",
        charts: [
          {
            quantity: "Zero before pressing",
            values: zeros.slice(1),
            centre: 0.0001,
            lower: -0.0014,
            upper: 0.0016,
            signals: [15, 16, 17],
          },
          {
            quantity: "Moving range",
            values: ranges,
            centre: 0.0006,
            upper: 0.0018,
            signals: [18],
          },
        ],
      });
    },
  },
  {
    name: "control-chart-many-inch",
    draw: () => {
      const values = Array.from(
        { length: 300 },
        (_, i) => 0.001 * Math.sin(7 * i),
      );
      return controlChartFigure({
        labels: values.map((_, i) =>
          `2025-03-${String(i % 28 + 1).padStart(2, "0")}`
        ),
        labelled: "Session",
        charts: [{
          quantity: "Zero",
          values,
          centre: 0,
          lower: -0.002,
          upper: 0.002,
        }],
      }, { unit: "in" });
    },
  },
  {
    name: "power-three-plans",
    draw: () =>
      powerFigure({
        plans: [["1 diameter, 1 reading", 0.16], [
          "2 diameters, 1 reading",
          0.24,
        ], ["2 diameters, 2 readings", 0.28]]
          .map(([label, rate]) => ({
            label: label as string,
            points: [3, 4, 5, 6, 8, 10, 12].map((zeroings) => ({
              zeroings,
              power: 1 - Math.exp(-(rate as number) * (zeroings - 2)),
              error: 0.02,
            })),
          })),
        wanted: 0.8,
        chosen: 8,
      }),
  },
  {
    name: "power-one-point",
    draw: () =>
      powerFigure({
        plans: [{
          label: "as planned",
          points: [{ zeroings: 5, power: 0.31 }],
        }],
        wanted: 0.8,
      }),
  },
  {
    name: "can-tell-apart-plain",
    draw: () =>
      canTellApartFigure({
        bars: [
          { label: "display step", amount: 0.001, kind: "gauge" },
          {
            label: "one reading against another",
            amount: 0.0017,
            kind: "gauge",
          },
          {
            label: "one zeroing against another",
            amount: 0.0042,
            kind: "gauge",
          },
          { label: "tolerance of the radius", amount: 0.002, kind: "question" },
          { label: "one stretch of work", amount: 0.0068, kind: "question" },
        ],
        smallest: 0.0025,
        radiusPerSag: -4977,
      }),
  },
  {
    name: "can-tell-apart-inch",
    draw: () =>
      canTellApartFigure({
        bars: [
          { label: "display step", amount: 0.00127, kind: "gauge" },
          {
            label: "roughing with the coarsest grade",
            amount: 0.4,
            kind: "question",
          },
        ],
        smallest: 0.003,
      }, { unit: "in" }),
  },
  {
    name: "budget-ranked",
    draw: () =>
      budgetFigure({
        lines: [
          { source: "ring radius", contribution: 2.0, common: true },
          { source: "repeat", contribution: 1.1 },
          { source: "zeroing", contribution: 2.6 },
          { source: "display step", contribution: 1.44 },
          { source: "display step of the zero", contribution: 1.44 },
          { source: "scale of the gauge", contribution: 0.9, common: true },
          { source: "ball radius", contribution: 0.002, common: true },
          {
            source: "flatness of the reference flat",
            contribution: 0.75,
            common: true,
          },
          { source: "gradient through the work", contribution: 0.37 },
          { source: "centring", contribution: 0.01 },
          { source: "tilt", contribution: 0.02 },
          { source: "ring expansion", contribution: 0.35, common: true },
        ],
        standardUncertainty: 4.34,
      }),
  },
  {
    name: "budget-one-inch",
    draw: () =>
      budgetFigure({
        lines: [{ source: "ring radius", contribution: 2, common: true }],
        standardUncertainty: 2,
      }, { unit: "in" }),
  },
  {
    name: "density-plain",
    draw: () =>
      densityFigure({
        bins: bins(2985, 3015, 40, (x) => bell((x - 3000) / 4.2)),
        value: 3000,
        interval: { low: 2991.8, high: 3008.3 },
        firstOrder: { low: 2991.6, high: 3008.4 },
      }),
  },
  {
    name: "density-heavy-tail-inch",
    draw: () =>
      densityFigure({
        bins: bins(40_000, 400_000, 60, (x) =>
          bell((6e6 / x - 60) / 14) / (x * x)),
        value: 100_000,
        interval: { low: 71_000, high: 180_000 },
      }, { unit: "in" }),
  },
  {
    name: "ring-choice-plain",
    draw: () => {
      const radii = Array.from({ length: 24 }, (_, i) => 20 + 5 * i);
      const curve = (amount: (r: number) => number) =>
        radii.map((ringRadius) => ({
          ringRadius,
          detectable: amount(ringRadius),
        }));
      const conic = (r: number) => 0.0008 * 31.6e6 / (r * r * (150 - r) ** 2);
      const radius = (r: number) => 12 * (60 / r) ** 2 + 2;
      const edge = (r: number) => 0.004 * Math.exp(r / 60);
      const owned = (amount: (r: number) => number) =>
        [40, 60, 110].map((ringRadius, ring) => ({
          ring,
          ringRadius,
          detectable: amount(ringRadius),
        }));
      return ringChoiceFigure({
        rings: ["small ring", "middle ring", "large ring"],
        questions: [
          {
            label: "radius",
            scale: "radius",
            curve: curve(radius),
            owned: owned(radius),
          },
          {
            label: "departure from a sphere",
            scale: "surface",
            curve: curve(conic),
            owned: owned(conic),
            best: { ringRadius: 75, detectable: conic(75) },
          },
          {
            label: "edge fault 15 mm wide",
            scale: "surface",
            curve: curve(edge),
            owned: owned(edge),
          },
          { label: "astigmatism", scale: "surface", curve: [], owned: [] },
        ],
      });
    },
  },
  {
    name: "ring-choice-one-inch",
    draw: () =>
      ringChoiceFigure({
        rings: ["A"],
        questions: [{
          label: "radius",
          scale: "radius",
          curve: [],
          owned: [{ ring: 0, ringRadius: 60, detectable: 12 }],
        }],
      }, { unit: "in" }),
  },
];
