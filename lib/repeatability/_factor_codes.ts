/**
 * Readings as levels of factors.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import type {
  AbsentReason,
  DesignOptions,
  DiameterScatter,
  VariedSource,
} from "./source.ts";

/** One factor with the level of every reading as a number. */
export interface FactorCodes {
  /** The source of scatter it stands for; undefined for the fixed part. */
  readonly source: VariedSource;
  /** Level of each reading, from 0. */
  readonly codes: Int32Array;
  /** Name of each level. */
  readonly names: readonly string[];
  /**
   * Level that stands for "no such shift", such as the diameter at the
   * centre; the fixed part takes it up, and it does not count.
   */
  readonly spared?: number;
}

/** Everything a group of readings is made of. */
export interface CodedReadings {
  /** The readings of the work, in order. */
  readonly readings: readonly Reading[];
  /** Cell of the fixed part of each reading: its zone, or session and zone. */
  readonly cells: Int32Array;
  /** Number of cells of the fixed part. */
  readonly cellCount: number;
  /** Zone labels in order of distance. */
  readonly zones: readonly string[];
  /** Factors with two levels or more. */
  readonly factors: readonly FactorCodes[];
  /** Sources that were not varied, and why. */
  readonly absent: readonly { source: VariedSource; reason: AbsentReason }[];
  /** How diameters were taken. */
  readonly diameters: DiameterScatter;
}

/** Brings degrees to 0 ... below `turn`. */
function within(degrees: number, turn: number): number {
  return Number((((degrees % turn) + turn) % turn).toFixed(6)) % turn;
}

/** Direction from the centre of the work to the gauge, in degrees. */
function outward({ diameterDegrees, offset }: Reading): number | undefined {
  return diameterDegrees === undefined
    ? undefined
    : within(diameterDegrees + (offset < 0 ? 180 : 0), 360);
}

function diameterLevel(
  reading: Reading,
  pattern: DiameterScatter,
): string | undefined {
  const direction = outward(reading);
  // A set without a diameter counts as a diameter of its own.
  if (direction === undefined) return `? ${reading.zeroing}`;
  switch (pattern) {
    case "common":
      return `${within(direction, 180)}°`;
    case "by zone":
      return `${within(direction, 180)}° ${reading.zone.label}`;
    case "by end":
      return `${direction}°`;
  }
}

/** Where foot 1 pointed, in the work's own axes where that is known. */
function footLevel(reading: Reading): string | undefined {
  const { foot } = reading;
  if (foot.kind === "unknown") return undefined;
  if (foot.kind === "angle") return `${within(foot.degrees, 360)}°`;
  const direction = outward(reading);
  if (direction === undefined) return foot.kind;
  return `${within(direction + (foot.kind === "feet out" ? 180 : 0), 360)}°`;
}

/** Numbers labels in order of first appearance. */
export function codeLabels(
  labels: readonly string[],
): { codes: Int32Array; names: string[] } {
  const known = new Map<string, number>();
  const codes = new Int32Array(labels.length);
  labels.forEach((label, index) => {
    let code = known.get(label);
    if (code === undefined) known.set(label, code = known.size);
    codes[index] = code;
  });
  return { codes, names: [...known.keys()] };
}

/** Zone labels from the centre outward. */
function zonesOf(readings: readonly Reading[]): string[] {
  const distance = new Map<string, number>();
  for (const { zone } of readings) {
    if (!distance.has(zone.label)) distance.set(zone.label, zone.distance);
  }
  return [...distance].sort((a, b) => a[1] - b[1]).map(([label]) => label);
}

/** Puts readings of the work of one ring and grade as levels of factors. */
export function codeReadings(
  readings: readonly Reading[],
  options: DesignOptions = {},
): CodedReadings {
  const zones = zonesOf(readings);
  const bothEnds = readings.some(({ offset }) => offset < 0) &&
    readings.some(({ offset }) => offset > 0);
  const diameters = options.diameters ?? (bothEnds ? "by end" : "common");
  const worked = options.work === "worked";
  const cells = codeLabels(
    readings.map(({ session, zone }) =>
      worked ? `${session}\n${zone.label}` : zone.label
    ),
  );
  const factors: FactorCodes[] = [];
  const absent: { source: VariedSource; reason: AbsentReason }[] = [];

  const add = (
    source: VariedSource,
    level: (reading: Reading) => string | undefined,
    unknown: string | undefined,
    nowhere?: (reading: Reading) => boolean,
  ): void => {
    const labels = readings.map((reading) =>
      nowhere?.(reading) ? SPARED : level(reading) ?? unknown
    );
    if (labels.every((label) => label === undefined || label === SPARED)) {
      const none = labels.every((label) => label === SPARED);
      absent.push({ source, reason: none ? "centre only" : "not recorded" });
      return;
    }
    const { codes, names } = codeLabels(
      labels.map((label) => label ?? NOT_RECORDED),
    );
    const spared = names.indexOf(SPARED);
    if (names.length - (spared < 0 ? 0 : 1) < 2) {
      absent.push({ source, reason: "one level" });
      return;
    }
    factors.push({ source, codes, names, ...(spared < 0 ? {} : { spared }) });
  };

  if (worked) absent.push({ source: "session", reason: "worked" });
  else add("session", ({ session }) => session, undefined);
  add("operator", ({ operator }) => operator, undefined);
  add("zeroing", ({ zeroing }) => zeroing, undefined);
  const known = readings.some(({ diameterDegrees, offset }) =>
    diameterDegrees !== undefined && offset !== 0
  );
  if (known || readings.every(({ offset }) => offset === 0)) {
    add(
      "diameter",
      (reading) =>
        (worked ? `${reading.session} ` : "") +
        diameterLevel(reading, diameters),
      undefined,
      ({ offset }) => offset === 0,
    );
  } else absent.push({ source: "diameter", reason: "not recorded" });
  add("rotation", footLevel, undefined);
  if (zones.length < 2) {
    absent.push({ source: "zone × zeroing", reason: "one zone" });
  } else {
    add(
      "zone × zeroing",
      ({ zeroing, zone }) => `${zeroing} at ${zone.label}`,
      undefined,
    );
  }
  return {
    readings,
    cells: cells.codes,
    cellCount: cells.names.length,
    zones,
    factors,
    absent,
    diameters,
  };
}

const SPARED = "\u0000";
const NOT_RECORDED = "not recorded";
