/**
 * Invented inputs of every figure, used for the goldens and the browser.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { figure } from "sagbook/figures/figure.ts";
import { planFigure } from "sagbook/figures/plan_figure.ts";
import { profileFigure } from "sagbook/figures/profile_figure.ts";
import { readingsFigure } from "sagbook/figures/readings_figure.ts";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";
import type { Sample } from "./_sample.ts";
import { historySamples } from "./_samples_history.ts";
import { studySamples } from "./_samples_study.ts";

const setsAround = (mean: number, spread: number, count: number) =>
  Array.from({ length: count }, (_, i) => ({
    difference: mean + spread * Math.sin(2.4 * i + 1),
  }));

/** Readings of an invented session: sets of three zones and a look at the flat. */
const session = (sets: number, spread: number, wild = 0) =>
  Array.from({ length: sets }, (_, set) => {
    const zero = spread * Math.sin(1.7 * set);
    const read = (zone: string, sag: number, n: number) => ({
      set: `${set + 1}`,
      zone,
      on: "work" as const,
      sag: sag + zero + spread / 2 * Math.sin(3.1 * set + 2 * n),
    });
    const wildly = set === 2 && wild > 0;
    return [
      read("centre", 0.6013, 0),
      read("50 %", 0.6015, 1),
      {
        ...read("edge", 0.599 + (wildly ? wild : 0), 2),
        flagged: wildly,
      },
      {
        set: `${set + 1}`,
        zone: "flat",
        on: "flat" as const,
        sag: spread / 3 * Math.sin(2.2 * set),
      },
    ];
  }).flat();

const footOut = { kind: "foot out" } as const;

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
  {
    name: "readings-plain",
    draw: () => readingsFigure({ readings: session(6, 0.001, 0.003) }),
  },
  {
    name: "readings-wild-inch",
    draw: () =>
      readingsFigure({ readings: session(8, 0.001, 0.4) }, { unit: "in" }),
  },
  {
    name: "readings-one",
    draw: () =>
      readingsFigure({
        readings: [{ set: "1", zone: "centre", on: "work", sag: 0.601 }],
      }),
  },
  {
    name: "readings-many",
    draw: () => readingsFigure({ readings: session(25_000, 0.001) }),
  },
  {
    name: "plan-foot-out",
    draw: () =>
      planFigure({
        halfDiameter: 150,
        bevel: 2,
        contactRadius: 60,
        feet: "balls",
        readings: [0, 60, 120].flatMap((diameterDegrees) =>
          [-88, -45, 0, 45, 88].map((offset) => ({
            offset,
            diameterDegrees,
            foot: footOut,
            departure: offset === 88 && diameterDegrees === 60
              ? -0.0024
              : 0.0008 * Math.sin(offset + diameterDegrees) -
                0.0012 * (offset / 88) ** 2,
          }))
        ),
      }),
  },
  {
    name: "plan-unknown-inch",
    draw: () =>
      planFigure({
        halfDiameter: 101.6,
        bevel: 1.5,
        contactRadius: 40,
        feet: "balls",
        readings: [-55, 0, 55].map((offset) => ({
          offset,
          foot: { kind: "unknown" },
          departure: 0.00002 * offset,
        })),
      }, { unit: "in" }),
  },
  {
    name: "profile-turned-edge",
    draw: () =>
      profileFigure({
        points: Array.from({ length: 41 }, (_, i) => {
          const u = i / 40;
          const value = 0.0012 * (u ** 6 - 0.9 * u * u + 0.2);
          const wide = 0.00015 + 0.0008 * u ** 8;
          return {
            distance: 150 * u,
            departure: {
              value,
              interval95: { low: value - wide, high: value + wide },
            },
          };
        }),
        halfDiameter: 150,
        seenTo: 126,
        zones: [
          { label: "centre", distance: 0 },
          { label: "50 %", distance: 75 },
          { label: "edge", distance: 85 },
        ],
      }),
  },
  {
    name: "profile-no-band-inch",
    draw: () =>
      profileFigure({
        points: [0, 50, 100].map((distance) => ({
          distance,
          departure: { value: 0 },
        })),
        halfDiameter: 100,
        seenTo: 100,
      }, { unit: "in" }),
  },
  {
    name: "cell-legend",
    draw: () =>
      figure({
        title: "A plot of the user's own",
        description: "Invented sags of three zones in ten sets.",
        subtitle: "Ten invented sets",
        caption: "Each dot is one reading; 0.600 < 0.601.",
        color: { legend: true },
        symbol: { legend: true },
        x: { label: "set" },
        y: { label: "sag (mm)", grid: true },
        marks: [
          Plot.dot(session(10, 0.001).filter(({ on }) => on === "work"), {
            x: (reading: { set: string }) => Number(reading.set),
            y: "sag",
            stroke: "zone",
            symbol: "zone",
            clip: true,
          }),
        ],
      }),
  },
  ...studySamples,
  ...historySamples,
];
