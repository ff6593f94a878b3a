/**
 * Figures with long names, many rows and awkward numbers, at two widths: only
 * looked at for clipped and covered labels.
 *
 * @module
 */
import { budgetFigure } from "sagbook/figures/budget_figure.ts";
import { canTellApartFigure } from "sagbook/figures/can_tell_apart_figure.ts";
import { componentIntervalsFigure } from "sagbook/figures/component_intervals_figure.ts";
import { componentsFigure } from "sagbook/figures/components_figure.ts";
import { controlChartFigure } from "sagbook/figures/control_chart_figure.ts";
import { densityFigure } from "sagbook/figures/density_figure.ts";
import type { FigureSettings } from "sagbook/figures/figure.ts";
import { focalLengthFigure } from "sagbook/figures/focal_length_figure.ts";
import { gradesTimelineFigure } from "sagbook/figures/grades_timeline_figure.ts";
import { planFigure } from "sagbook/figures/plan_figure.ts";
import { powerFigure } from "sagbook/figures/power_figure.ts";
import { profileFigure } from "sagbook/figures/profile_figure.ts";
import { progressFigure } from "sagbook/figures/progress_figure.ts";
import { rateFigure } from "sagbook/figures/rate_figure.ts";
import { readingsFigure } from "sagbook/figures/readings_figure.ts";
import { ringChoiceFigure } from "sagbook/figures/ring_choice_figure.ts";
import { zonesFigure } from "sagbook/figures/zones_figure.ts";
import { zonesOverTimeFigure } from "sagbook/figures/zones_over_time_figure.ts";
import type { Sample } from "./_sample.ts";

const LONG = "WWW Überlange Bezeichnung der Zone, am Rand gemessen";
const WORD = "Donaudampfschifffahrtsgesellschaftskapitän";
const names = (count: number) =>
  Array.from(
    { length: count },
    (_, i) => i % 3 === 0 ? `${i} ${LONG}` : i % 3 === 1 ? WORD : `${i}`,
  );

const drawings: Record<string, (settings: FigureSettings) => Sample["draw"]> = {
  zones: (settings) => () =>
    zonesFigure({
      reference: { label: LONG, distance: 0 },
      zones: names(11).map((label, i) => ({
        label,
        distance: 70 + 2 * i,
        difference: 123.456 * (i - 5),
        interval95: { low: -1000, high: 1234.5 },
      })),
      tolerance: 1e-7,
    }, settings),
  readings: (settings) => () =>
    readingsFigure({
      readings: names(40).map((set, i) => ({
        set,
        zone: i % 2 ? LONG : "centre",
        on: i % 5 ? "work" : "flat",
        sag: i === 7 ? 1e5 : 12.3456 + 1e-5 * i,
        flagged: i === 9,
      })),
    }, settings),
  plan: (settings) => () =>
    planFigure({
      halfDiameter: 37.5,
      bevel: 0.4,
      contactRadius: 12,
      feet: "edge",
      readings: [{
        offset: 20,
        diameterDegrees: 271,
        foot: { kind: "unknown" },
        departure: 987.65,
      }],
    }, settings),
  profile: (settings) => () =>
    profileFigure({
      points: [0, 1000, 2000].map((distance) => ({
        distance,
        departure: { value: 1e-9 * distance },
      })),
      halfDiameter: 2000,
      seenTo: 3,
      zones: [{ label: LONG, distance: 1500 }],
    }, settings),
  components: (settings) => () =>
    componentsFigure({
      zeroings: names(60).map((label) => ({
        label,
        level: 1e-6,
        readings: [2e-6],
      })),
      repeat: 1e-6,
      zeroing: 1e-6,
    }, settings),
  componentIntervals: (settings) => () =>
    componentIntervalsFigure({
      components: names(8).map((label, i) => ({
        label,
        ...(i === 3 ? {} : {
          deviation: 10.5 ** -i,
          interval95: { low: 0, high: 3 * 10 ** -i },
        }),
      })),
      radiusPerSag: -123456,
    }, settings),
  controlChart: (settings) => () =>
    controlChartFigure({
      labels: names(25),
      labelled: LONG,
      charts: [1, 2].map((n) => ({
        quantity: `${LONG} ${n}`,
        values: names(25).map((_, i) => 1e-5 * i),
        centre: 0,
        upper: 1e-4,
        signals: [24],
      })),
    }, settings),
  power: (settings) => () =>
    powerFigure({
      plans: names(5).map((label, i) => ({
        label,
        points: [{ zeroings: 2, power: 0 }, {
          zeroings: 40,
          power: 1 - i / 10,
        }],
      })),
      wanted: 0.95,
      chosen: 40,
    }, settings),
  canTellApart: (settings) => () =>
    canTellApartFigure({
      bars: names(6).map((label, i) => ({
        label,
        amount: 12345.678 / (i + 1),
        kind: i % 2 ? "gauge" : "question",
      })),
      smallest: 20000,
      radiusPerSag: 98765,
    }, settings),
  budget: (settings) => () =>
    budgetFigure({
      lines: names(15).map((source, i) => ({
        source,
        contribution: 12345.6 / (i + 1),
      })),
      standardUncertainty: 17000,
    }, settings),
  density: (settings) => () =>
    densityFigure({
      bins: [{ low: 1.23456789e6, high: 1.23456799e6, share: 1 }],
      value: 1.23456794e6,
      interval: { low: 1.2345678e6, high: 1.234569e6 },
      firstOrder: { low: 1.2345678e6, high: 1.234569e6 },
      quantity: LONG,
    }, settings),
  ringChoice: (settings) => () =>
    ringChoiceFigure({
      rings: names(7),
      questions: names(4).map((label) => ({
        label,
        scale: "surface",
        curve: [{ ringRadius: 5, detectable: 1e-6 }, {
          ringRadius: 500,
          detectable: 10,
        }],
        owned: [{ ring: 1, ringRadius: 77, detectable: 0.5 }],
      })),
    }, settings),
  progress: (settings) => () =>
    progressFigure({
      quantity: "radius",
      workUnit: "minutes",
      sessions: [{
        work: 123456,
        value: 987654.321,
        interval95: { low: 9e5, high: 1e6 },
      }],
      target: 987000,
      tolerance: 1,
      stop: { work: 1234567, risk: 0.0125 },
    }, settings),
  rate: (settings) => () =>
    rateFigure({
      workUnit: "minute",
      stretches: names(14).map((label, i) => ({ label, rate: 123 - 20 * i })),
    }, settings),
  zonesOverTime: (settings) => () =>
    zonesOverTimeFigure({
      sessions: names(30),
      reference: LONG,
      zones: names(5).map((label, i) => ({
        label,
        differences: names(30).map((_, n) => ({ value: 1e-3 * (i - n) })),
      })),
      tolerance: 12,
    }, settings),
  focalLength: (settings) => () =>
    focalLengthFigure({
      pieces: [{
        radius: 123456,
        focalLength: 61000,
        radiusUncertainty: 900,
        focalLengthUncertainty: 20,
      }],
      band: [1, 2].map((n) => ({
        radius: n * 90000,
        focalLength: n * 45000,
        low: n * 44000,
        high: n * 46000,
      })),
      confidence: 0.999,
    }, settings),
  gradesTimeline: (settings) => () =>
    gradesTimelineFigure({
      stretches: names(9).map((grade, i) => ({
        grade,
        from: `2025-0${i + 1}-28`,
        to: `2025-0${i + 1}-28`,
        minutes: 12345,
      })),
      sessions: ["2025-11-30"],
    }, settings),
};

/** Every figure, hard to draw, in both units, narrow and wide. */
export const hardSamples: readonly Sample[] = Object.entries(drawings)
  .flatMap(([name, draw]) =>
    ([[320, "in"], [480, "mm"], [900, "in"]] as const).map(([width, unit]) => ({
      name: `${name} ${width} px, ${unit}`,
      draw: draw({ width, unit, title: `${LONG}: ${WORD} ${LONG}` }),
    }))
  );
