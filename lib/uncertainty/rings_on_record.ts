/**
 * What the bench's own records say of its rings.
 *
 * @module
 */
import type { Bench, Ring } from "../records/bench.ts";
import type { Estimate } from "../statistics/estimate.ts";
import { millimetres } from "../units/length.ts";
import { type SizeOnRecord, sizesOnRecord } from "./_sizes_on_record.ts";
import {
  type CalibrationHistory,
  calibrationHistory,
  type DatedCalibration,
} from "./calibration_history.ts";
import {
  type CalibrationComparison,
  compareCalibrations,
} from "./ring_calibration.ts";

export type { RingSize, SizeOnRecord } from "./_sizes_on_record.ts";

/** What is on record about one ring. */
export interface RingOnRecord {
  /** The ring's id. */
  readonly ring: string;
  /** True when the uncertainty of its radius is our default. */
  readonly uncertaintyAssumed: boolean;
  /** Standard uncertainty of its radius that is used, in mm. */
  readonly radiusUncertainty: number;
  /** Each size of it that a calibration found; none without a record. */
  readonly sizes: readonly SizeOnRecord[];
  /** Its calibrations in order, and when the next is due. */
  readonly history?: CalibrationHistory;
  /** True when nobody said how long a calibration holds. */
  readonly monthsAssumed: boolean;
  /** True when there are calibrations, the newest without its date. */
  readonly undated: boolean;
  /** Against its duplicate, where it has one. */
  readonly twin?: {
    /** The other ring. */
    readonly ring: string;
    /** Difference, E_n. */
    readonly comparison: CalibrationComparison;
    /** True when both were measured with figures on record. */
    readonly measured: boolean;
  };
}

/** What the records are read with. */
export interface RecordOptions {
  /** ISO date that due dates are counted from. */
  readonly today: string;
  /**
   * Scatter of one zeroing and reading in mm, for surfaces that were read
   * once; the display step unless stated.
   */
  readonly repeatability?: {
    /** Standard deviation in mm, above 0. */
    readonly standardDeviation: number;
    /** Its degrees of freedom, `Infinity` unless stated. */
    readonly dof?: number;
  };
}

/** Months a calibration holds unless the user says: common practice, no source. */
const MONTHS = 12;

/**
 * Works out every calibration that the bench file keeps.
 *
 * Spacings, known surfaces, both against each other and against the radius
 * that is stated and used; earlier calibrations with the date the next is due;
 * duplicates against each other. Nothing here changes what the analyses use:
 * that is what the ring's own entry states. Earlier calibrations are taken to
 * share nothing with the newest, since the file does not say what was used.
 *
 * @param bench The bench.
 * @param options Today's date, and the scatter of the gauge.
 * @returns One entry for each ring, in the bench's order.
 * @throws {SyntaxError} If `today` is no ISO date.
 *
 * @see `calibrateBySpacings`, `calibrateBySurfaces`, `calibrationHistory` and
 * `compareCalibrations` for method and source.
 *
 * @example A ring whose spacing was written down as its radius
 * ```ts
 * import { ringsOnRecord } from "sagbook/uncertainty/rings_on_record.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * const figures = [mm(103.0), mm(104.0), mm(104.8)] as const;
 * const caliper = { id: "C", standardUncertainty: mm(0.02), assumed: false, scaleUncertainty: 0 };
 * const [{ sizes: [size] }] = ringsOnRecord({
 *   gauge: {
 *     id: "G", shows: { kind: "sag" }, countsUpOn: "concave", steps: { mm: mm(0.001) },
 *     scaleUncertainty: 0,
 *   },
 *   rings: [{
 *     id: "A", radiusUncertainty: mm(0.02), radiusUncertaintyAssumed: false,
 *     ballRadiusUncertainty: mm(0.001), expansion: 11.5e-6, foot: { kind: "unknown" },
 *     shape: { kind: "balls", circleRadius: mm(103.923), ballRadius: mm(3), probeOffset: mm(0) },
 *     record: {
 *       spacings: { figures, over: "centres", overStated: true, caliper },
 *       surfaces: [], earlier: [],
 *     },
 *   }],
 * }, { today: "2031-05-17" });
 * equal(size.best.circleRadius.value.toFixed(3), "60.010");
 * equal(size.verdict, "spacing for radius");
 * ```
 */
export function ringsOnRecord(
  bench: Bench,
  options: RecordOptions,
): RingOnRecord[] {
  const sizes = bench.rings.map((ring) => sizesOnRecord(ring, bench, options));
  const paired = new Set<string>();
  return bench.rings.map((ring, k): RingOnRecord => {
    const { record } = ring;
    const months = record?.everyMonths;
    const dated = datedCalibrations(ring, sizes[k]);
    const other = bench.rings.findIndex(({ id }) =>
      id.toLowerCase() === record?.twin?.toLowerCase()
    );
    const both = [k, other].sort().join();
    const twin = other < 0 || paired.has(both)
      ? undefined
      : twinOf(ring, sizes[k], bench.rings[other], sizes[other]);
    if (twin !== undefined) paired.add(both);
    return {
      ring: ring.id,
      uncertaintyAssumed: ring.radiusUncertaintyAssumed,
      radiusUncertainty: ring.radiusUncertainty,
      sizes: sizes[k],
      ...(dated.length === 0 ? {} : {
        history: calibrationHistory(dated, months ?? MONTHS, options.today),
      }),
      monthsAssumed: months === undefined,
      undated: ring.calibratedOn === undefined &&
        (sizes[k].length > 0 || (record?.earlier.length ?? 0) > 0),
      ...(twin === undefined ? {} : { twin }),
    };
  });
}

/** The radius as it is stated, as an estimate of its own. */
function statedSize({ shape, radiusUncertainty }: Ring): Estimate {
  const value = shape.kind === "balls"
    ? shape.circleRadius
    : shape.kind === "edge"
    ? shape.outerRadius
    : shape.span / 2;
  return { value, own: radiusUncertainty, dof: Infinity, common: {} };
}

/** What is known of the size: measured where it was, else as it is stated. */
function knownSize(ring: Ring, sizes: readonly SizeOnRecord[]): Estimate {
  return sizes[0]?.best.circleRadius ?? statedSize(ring);
}

function datedCalibrations(
  ring: Ring,
  sizes: readonly SizeOnRecord[],
): DatedCalibration[] {
  const { record, calibratedOn } = ring;
  const earlier = (record?.earlier ?? []).map((
    { on, radius, radiusUncertainty },
  ): DatedCalibration => ({
    on,
    circleRadius: {
      value: millimetres(radius),
      own: radiusUncertainty,
      dof: Infinity,
      common: {},
    },
  }));
  const isDate = /^\d{4}-\d{2}-\d{2}/.test(calibratedOn ?? "") &&
    Number.isFinite(Date.parse((calibratedOn ?? "").slice(0, 10)));
  return calibratedOn === undefined || !isDate ? earlier : [
    ...earlier,
    { on: calibratedOn, circleRadius: knownSize(ring, sizes) },
  ];
}

function twinOf(
  ring: Ring,
  sizes: readonly SizeOnRecord[],
  other: Ring,
  otherSizes: readonly SizeOnRecord[],
): RingOnRecord["twin"] {
  const mine = knownSize(ring, sizes);
  const theirs = knownSize(other, otherSizes);
  // Two sizes that are both stated without doubt leave nothing to compare by.
  if (ring.shape.kind !== other.shape.kind || !(mine.own + theirs.own > 0)) {
    return undefined;
  }
  return {
    ring: other.id,
    comparison: compareCalibrations({ circleRadius: mine }, {
      circleRadius: theirs,
    }),
    measured: sizes.length > 0 && otherSizes.length > 0,
  };
}
