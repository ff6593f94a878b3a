/**
 * Invented inputs for the figures of a piece's history.
 *
 * @module
 */
import { focalLengthFigure } from "sagbook/figures/focal_length_figure.ts";
import { gradesTimelineFigure } from "sagbook/figures/grades_timeline_figure.ts";
import { progressFigure } from "sagbook/figures/progress_figure.ts";
import { rateFigure } from "sagbook/figures/rate_figure.ts";
import { zonesOverTimeFigure } from "sagbook/figures/zones_over_time_figure.ts";
import type { Sample } from "./_sample.ts";

const predicted = (radius: number) => {
  const focalLength = radius * 0.49955;
  const half = 2 + 0.003 * Math.abs(radius - 2300);
  return {
    radius,
    focalLength,
    low: focalLength - half,
    high: focalLength + half,
  };
};

export const historySamples: readonly Sample[] = [
  {
    name: "progress-forecast",
    draw: () =>
      progressFigure({
        quantity: "radius",
        workUnit: "wets",
        sessions: [0, 6, 12, 15, 22, 28].map((work, i) => {
          const value = 3160 - 4 * work + 3 * Math.sin(2 * i) +
            (i === 3 ? 22 : 0);
          return {
            work,
            value,
            interval95: { low: value - 7, high: value + 7 },
            wrongWay: i === 3,
          };
        }),
        fit: [{ work: 0, value: 3161 }, { work: 28, value: 3049 }],
        forecast: [28, 34, 40, 46].map((work) => ({
          work,
          value: 3161 - 4 * work,
          low: 3161 - 4 * work - 9 - 0.6 * (work - 28),
          high: 3161 - 4 * work + 9 + 0.6 * (work - 28),
        })),
        target: 3000,
        tolerance: 10,
        stop: { work: 37, risk: 0.05 },
      }),
  },
  {
    name: "progress-one-session-inch",
    draw: () =>
      progressFigure({
        quantity: "sag",
        workUnit: "minutes",
        sessions: [{ work: 30, value: 0.55 }],
        target: 0.6013,
      }, { unit: "in" }),
  },
  {
    name: "progress-thousand",
    draw: () =>
      progressFigure({
        quantity: "radius",
        workUnit: "minutes",
        sessions: Array.from({ length: 1000 }, (_, i) => ({
          work: 5 * i,
          value: 3160 - 0.15 * i + 3 * Math.sin(2 * i),
        })),
      }),
  },
  {
    name: "rate-grades",
    draw: () =>
      rateFigure({
        workUnit: "wet",
        stretches: [
          {
            label: "80",
            rate: 0.0062,
            interval95: { low: 0.0051, high: 0.0073 },
            expected: 0.007,
          },
          {
            label: "80, second day",
            rate: -0.0021,
            interval95: { low: -0.0034, high: -0.0008 },
            expected: 0.007,
          },
          {
            label: "120",
            rate: 0.0035,
            interval95: { low: 0.0028, high: 0.0042 },
            expected: 0.003,
          },
          {
            label: "220",
            rate: 0.0009,
            interval95: { low: 0.0002, high: 0.0016 },
          },
        ],
      }),
  },
  {
    name: "rate-one-inch",
    draw: () =>
      rateFigure({
        workUnit: "minute",
        stretches: [{ label: "320", rate: 0 }],
      }, { unit: "in" }),
  },
  {
    name: "zones-over-time-plain",
    draw: () =>
      zonesOverTimeFigure({
        sessions: ["1 Mar", "2 Mar", "4 Mar", "5 Mar", "8 Mar", "9 Mar"],
        reference: "centre",
        zones: [
          {
            label: "50 %",
            differences: [-3, -2.4, undefined, -1.2, -0.4, 0.1].map((um) =>
              um === undefined ? undefined : {
                value: um / 1000,
                interval95: { low: (um - 0.9) / 1000, high: (um + 0.9) / 1000 },
              }
            ),
          },
          {
            label: "edge",
            differences: [-9, -7, -5.5, -3, -1.1, -0.3].map((um) => ({
              value: um / 1000,
              interval95: { low: (um - 1.1) / 1000, high: (um + 1.1) / 1000 },
            })),
          },
        ],
        tolerance: 0.001,
      }),
  },
  {
    name: "zones-over-time-one-inch",
    draw: () =>
      zonesOverTimeFigure({
        sessions: ["first"],
        reference: "centre",
        zones: [{ label: "edge", differences: [{ value: -0.002 }] }],
      }, { unit: "in" }),
  },
  {
    name: "focal-length-dozen",
    draw: () =>
      focalLengthFigure({
        pieces: Array.from({ length: 12 }, (_, i) => {
          const radius = 1300 + 180 * i;
          return {
            radius,
            radiusUncertainty: 4 + radius / 800,
            focalLength: radius * 0.49955 + 1.4 * Math.sin(3 * i),
            focalLengthUncertainty: 1.5,
          };
        }),
        band: Array.from({ length: 21 }, (_, i) => predicted(1300 + 99 * i)),
        thisPiece: predicted(3000),
      }),
  },
  {
    name: "focal-length-none-inch",
    draw: () =>
      focalLengthFigure({
        pieces: [],
        band: [],
        thisPiece: { radius: 3000, focalLength: 1499, low: 1480, high: 1518 },
      }, { unit: "in" }),
  },
  {
    name: "grades-timeline-plain",
    draw: () =>
      gradesTimelineFigure({
        stretches: [
          { grade: "80", from: "2025-03-01", to: "2025-03-03", minutes: 260 },
          { grade: "80", from: "2025-03-08", minutes: 90 },
          { grade: "120", from: "2025-03-09", to: "2025-03-11", minutes: 180 },
          { grade: "220", from: "2025-03-16", minutes: 120 },
          {
            grade: "15 µm aluminium oxide",
            from: "2025-03-22T14:00",
            to: "2025-03-22T18:30",
          },
        ],
        sessions: [
          "2025-03-01T09:00",
          "2025-03-03T18:00",
          "2025-03-08T17:00",
          "2025-03-11",
          "2025-03-16",
          "2025-03-23",
        ],
      }),
  },
  {
    name: "grades-timeline-one-day",
    draw: () =>
      gradesTimelineFigure({
        stretches: [{ grade: "80", from: "2025-03-01" }],
      }),
  },
  {
    name: "grades-timeline-two-years",
    draw: () =>
      gradesTimelineFigure({
        stretches: [
          { grade: "80", from: "2023-11-18", to: "2023-12-22", minutes: 900 },
          { grade: "120", from: "2025-01-04", to: "2025-05-02", minutes: 400 },
        ],
      }),
  },
];
