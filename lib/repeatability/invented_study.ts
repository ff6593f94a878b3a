/**
 * An invented study of a gauge whose truth is known.
 *
 * @module
 */
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import { Random } from "../numerics/random.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { millimetres as mm } from "../units/length.ts";
import { type BenchSheetRow, writeBenchSheet } from "./bench_sheet.ts";
import { footCell, tidyCsv } from "./_tidy_csv.ts";

/** The truth behind an invented study; standard deviations in mm of sag. */
export interface InventedTruth {
  /** Radius of curvature in mm. */
  readonly radius: number;
  /** From reading to reading, before rounding. */
  readonly repeat: number;
  /** From zeroing to zeroing. */
  readonly zeroing: number;
  /** What a zeroing does to one zone alone. */
  readonly zoneByZeroing: number;
  /** From diameter to diameter, off centre. */
  readonly diameter: number;
  /** From operator to operator. */
  readonly operator: number;
  /** Creep of the zero from one step to the next, by operator, in mm. */
  readonly driftPerStep: Readonly<Record<string, number>>;
}

/** An invented study. */
export interface InventedStudy {
  /** The piece, marked as invented. */
  readonly piece: Piece;
  /** The bench. */
  readonly bench: Bench;
  /** The readings, flat included, in order. */
  readonly readings: readonly Reading[];
  /** The same as the text of a file of readings. */
  readonly csv: string;
  /** What they were made from. */
  readonly truth: InventedTruth;
}

/** Choices for an invented study. */
export interface InventedStudyOptions {
  /** Seed; the same seed gives the same study. */
  readonly seed: number;
  /**
   * Whether the operator with the warm hands has been cured (gloves, and a
   * wait): then the zero drifts for nobody.
   */
  readonly cured?: boolean;
  /** Zeroings of each operator; 8 unless stated. */
  readonly zeroings?: number;
  /** Readings of each zone in a set; 2 unless stated. */
  readonly repeats?: number;
}

const OPERATORS = ["A", "B", "C"] as const;
const STEP = 0.001;
const ZONES = [
  { label: "centre", offset: 0 },
  { label: "50% reach", offset: 43.9 },
  { label: "edge", offset: 87.8 },
] as const;

const PIECE: Piece = {
  name: "invented 300 mm f/5 disc",
  form: "concave",
  diameter: mm(300),
  bevel: mm(1.5),
  margin: mm(0.5),
  thickness: mm(40),
  glass: "borosilicate",
  target: { radius: mm(3000), tolerance: mm(15), statedAs: "radius" },
  sphericity: { statedAs: "sag", amount: mm(0.002) },
  unit: "mm",
  invented: true,
};

const BENCH: Bench = {
  gauge: {
    id: "invented gauge",
    shows: { kind: "sag" },
    countsUpOn: "declared surface",
    unit: "mm",
    steps: { mm: mm(STEP) },
    scaleUncertainty: 0.0005,
  },
  rings: [{
    id: "invented ring 60",
    shape: {
      kind: "balls",
      circleRadius: mm(60),
      ballRadius: mm(6.35),
      probeOffset: mm(0),
    },
    radiusUncertainty: mm(0.01),
    radiusUncertaintyAssumed: false,
    ballRadiusUncertainty: mm(0.001),
    expansion: 11.5e-6,
    foot: { kind: "angle", degrees: 0 },
  }],
  flat: { id: "invented flat", size: mm(150), flatness: mm(0.0003) },
};

/**
 * Makes a study of three operators who zero eight times each and read three
 * zones, on a sphere of known radius.
 *
 * A and B keep their hands away; C's warm hands make the zero drift all
 * through a set, until the study is repeated after the cure. Everything is
 * invented; the truth stands beside the readings. Readings and zeros are both
 * rounded to a step of 1 µm.
 *
 * @param options Seed and choices.
 * @returns Piece, bench, readings, their text and the truth.
 * @throws {RangeError} If a number of zeroings or repeats is not a whole
 * number of at least 1.
 *
 * @see Invented data: no source.
 *
 * @example
 * ```ts
 * import { inventStudy } from "sagbook/repeatability/invented_study.ts";
 * import { equal } from "node:assert/strict";
 *
 * const { piece, readings } = inventStudy({ seed: 1 });
 * equal(piece.invented, true);
 * equal(readings.length, 3 * 8 * (3 * 2 + 2)); // with two looks at the flat
 * ```
 */
export function inventStudy(options: InventedStudyOptions): InventedStudy {
  const { seed, cured = false, zeroings = 8, repeats = 2 } = options;
  const truth: InventedTruth = {
    radius: 3004,
    repeat: 0.0008,
    zeroing: 0.0015,
    zoneByZeroing: 0.0004,
    diameter: 0.0006,
    operator: 0.001,
    driftPerStep: { A: 0, B: 0, C: cured ? 0 : 0.0006 },
  };
  const sheet = writeBenchSheet({
    session: cured ? "S2 after the cure" : "S1",
    ring: BENCH.rings[0].id,
    grade: "fine ground",
    zones: ZONES,
    size: { zeroings, diameters: Math.min(4, zeroings), repeats },
    foot: { kind: "angle", degrees: 0 },
    operators: OPERATORS,
    seed,
  });
  const readings = readingsOf(
    sheet.rows,
    sheet.session,
    truth,
    new Random(seed),
  );
  return { piece: PIECE, bench: BENCH, readings, csv: csvOf(readings), truth };
}

/** Draws one scatter for each name, the same whenever it is asked for. */
function drawer(random: Random, deviation: number): (name: string) => number {
  return (name) => deviation * random.fork(name).normal();
}

function readingsOf(
  rows: readonly BenchSheetRow[],
  session: string,
  truth: InventedTruth,
  random: Random,
): Reading[] {
  const { circleRadius, ballRadius } = BENCH.rings[0].shape as {
    circleRadius: Reading["sag"];
    ballRadius: Reading["sag"];
  };
  const sag = sagFromRadius(
    mm(truth.radius),
    { circleRadius, ballRadius },
    PIECE.form,
  );
  const operator = drawer(random.fork("operator"), truth.operator);
  const zeroing = drawer(random.fork(`zeroing ${session}`), truth.zeroing);
  const cell = drawer(random.fork(`zone ${session}`), truth.zoneByZeroing);
  const diameter = drawer(random.fork("diameter"), truth.diameter);
  const repeat = random.fork(`repeat ${session}`);
  const phase = random.fork(`phase ${session}`);
  const readings: Reading[] = [];
  let [zero, start, creep] = [0, 0, 0];
  let before: number | undefined;
  for (const row of rows) {
    const who = row.operator ?? "A";
    if (row.act === "zero") {
      // On the zero of the set before, the flat shows how far it has drifted.
      const flat = (creep + truth.repeat * repeat.normal()) / STEP;
      before = readings.length === 0
        ? undefined
        : Math.round(start + flat) - Math.round(start);
      start = phase.uniform();
      zero = operator(who) + zeroing(row.zeroing);
      creep = 0;
      continue;
    }
    const onWork = row.act === "read";
    creep += truth.driftPerStep[who];
    const seen = creep + truth.repeat * repeat.normal() +
      (onWork
        ? sag + zero + cell(`${row.zeroing} ${row.zone}`) +
          (row.offset === 0 ? 0 : diameter(`${row.diameterDegrees}`))
        : 0);
    const shown = Math.round(start + seen / STEP) - Math.round(start);
    const first = readings.at(-1)?.zeroing !== `${session} / ${row.zeroing}`;
    readings.push({
      file: "readings.csv",
      line: readings.length + 2,
      order: readings.length,
      session,
      grade: "fine ground",
      ring: BENCH.rings[0].id,
      zeroing: `${session} / ${row.zeroing}`,
      ...(first && before !== undefined
        ? { zeroBefore: mm(steps(before)) }
        : {}),
      ...(onWork ? { diameterDegrees: row.diameterDegrees } : {}),
      foot: { kind: "angle", degrees: 0 },
      on: onWork ? "work" : "flat",
      zone: { label: row.zone, distance: mm(Math.abs(row.offset)) },
      offset: mm(row.offset),
      sag: mm(steps(shown)),
      step: mm(STEP),
      unit: "mm",
      operator: who,
    });
  }
  return readings;
}

/** A whole number of display steps in mm, as a reader of the file gets it. */
function steps(count: number): number {
  return Number((count * STEP).toFixed(3)) + 0;
}

function csvOf(readings: readonly Reading[]): string {
  return tidyCsv(readings.map((one) => ({
    session: one.session,
    grade: one.grade ?? "",
    ring: one.ring,
    zeroing: one.zeroing.slice(one.session.length + 3),
    zero_before: one.zeroBefore?.toFixed(3) ?? "",
    diameter_deg: one.on === "work" ? `${one.diameterDegrees ?? ""}` : "",
    foot_deg: one.on === "work" ? footCell(one.foot) : "",
    zone: one.zone.label,
    offset: one.on === "work" ? `${one.offset}` : "",
    reading: one.sag.toFixed(3),
    unit: one.unit,
    operator: one.operator ?? "",
  })));
}
