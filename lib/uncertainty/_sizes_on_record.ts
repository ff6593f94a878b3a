/**
 * The sizes of one ring that its own records give.
 *
 * @module
 */
import type { SurfaceForm } from "../geometry/feet.ts";
import type { Bench, Ring } from "../records/bench.ts";
import type { KnownSurfaceRecord } from "../records/ring_record.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { calibrateBySpacings } from "./calibrate_by_spacings.ts";
import {
  calibrateBySurfaces,
  type SurfaceCalibration,
} from "./calibrate_by_surfaces.ts";
import {
  type CalibrationComparison,
  compareCalibrations,
  judgeStatedRadius,
  type RingCalibration,
  type StatedRadiusVerdict,
} from "./ring_calibration.ts";
import type { RecordOptions } from "./rings_on_record.ts";

/** The size of a ring that surfaces touch. */
export type RingSize =
  | "foot circle"
  | "outer edge"
  | "inner edge"
  | "half span";

/** One size of a ring by everything on record. */
export interface SizeOnRecord {
  /** Which size; each is a radius. */
  readonly size: RingSize;
  /** As the bench file states it, in mm; what the analyses use. */
  readonly stated: Millimetres;
  /** By the caliper. */
  readonly bySpacings?: RingCalibration & {
    /** What the caliper spanned. */
    readonly over: "centres" | "outsides";
    /** False when nobody said, and centres were taken. */
    readonly overStated: boolean;
    /** The radius in mm if it was the other one; absent when that cannot be. */
    readonly ifOther?: number;
    /** True when the caliper's uncertainty is our default. */
    readonly caliperAssumed: boolean;
    /** The caliper's standard uncertainty in mm. */
    readonly caliperUncertainty: number;
    /** True when the stated radius comes from these figures. */
    readonly isStated: boolean;
  };
  /** By surfaces of known radius. */
  readonly bySurfaces?: SurfaceCalibration & {
    /** Whose scatter was used. */
    readonly scatterFrom: "these readings" | "the gauge" | "display step";
  };
  /** Spacings less surfaces, where there are both. */
  readonly agreement?: CalibrationComparison;
  /** The calibration with the smaller uncertainty. */
  readonly best: RingCalibration;
  /** The stated radius against that; absent when it comes from it. */
  readonly verdict?: StatedRadiusVerdict;
}

/** Works out the calibrations of one ring. */
export function sizesOnRecord(
  ring: Ring,
  bench: Bench,
  options: RecordOptions,
): SizeOnRecord[] {
  const { shape, record } = ring;
  if (record === undefined) return [];
  const { surfaces } = record;
  const sizeBy = (
    size: RingSize,
    stated: Millimetres,
    known: readonly KnownSurfaceRecord[],
  ): SizeOnRecord[] => {
    const bySpacings = size === "foot circle"
      ? spacingsOf(ring, stated)
      : undefined;
    const expected = bySpacings?.isStated
      ? bySpacings.standardUncertainty
      : ring.radiusUncertainty;
    const bySurfaces = known.length === 0
      ? undefined
      : surfacesOf(ring, known, bench, options, stated, expected);
    const best = bySpacings === undefined ||
        (bySurfaces !== undefined &&
          bySurfaces.standardUncertainty < bySpacings.standardUncertainty)
      ? bySurfaces
      : bySpacings;
    if (best === undefined) return [];
    const fromItself = best === bySpacings && bySpacings.isStated;
    return [{
      size,
      stated,
      ...(bySpacings === undefined ? {} : { bySpacings }),
      ...(bySurfaces === undefined ? {} : { bySurfaces }),
      ...(bySpacings === undefined || bySurfaces === undefined
        ? {}
        : { agreement: compareCalibrations(bySpacings, bySurfaces) }),
      best,
      ...(fromItself
        ? {}
        : { verdict: judgeStatedRadius(stated, expected, best) }),
    }];
  };
  if (shape.kind === "balls") {
    return sizeBy("foot circle", shape.circleRadius, surfaces);
  }
  if (shape.kind === "bar") {
    return sizeBy("half span", millimetres(shape.span / 2), surfaces);
  }
  const of = (form: SurfaceForm) =>
    surfaces.filter((surface) => surface.form === form);
  return [
    ...sizeBy("outer edge", shape.outerRadius, of("concave")),
    ...sizeBy("inner edge", shape.innerRadius, of("convex")),
  ];
}

function spacingsOf(
  ring: Ring,
  stated: Millimetres,
): SizeOnRecord["bySpacings"] {
  const { shape, record } = ring;
  const kept = record?.spacings;
  if (kept === undefined || shape.kind !== "balls") return undefined;
  const { figures, over, overStated, caliper } = kept;
  const measured = (spanned: typeof over) =>
    calibrateBySpacings({
      ring: ring.id,
      figures,
      over: spanned,
      ballRadius: shape.ballRadius,
      ballRadiusUncertainty: ring.ballRadiusUncertainty,
      caliper,
    });
  const found = measured(over);
  let other: number | undefined;
  try {
    other = measured(over === "centres" ? "outsides" : "centres").circleRadius
      .value;
  } catch (error) {
    // Balls that would stand in each other were not spanned that way.
    if (!(error instanceof RangeError)) throw error;
  }
  return {
    ...found,
    over,
    overStated,
    ...(other === undefined ? {} : { ifOther: other }),
    caliperAssumed: caliper.assumed,
    caliperUncertainty: caliper.standardUncertainty,
    isStated: shape.spacings !== undefined &&
      Math.abs(found.circleRadius.value - stated) < 1e-9 * stated,
  };
}

function surfacesOf(
  ring: Ring,
  surfaces: readonly KnownSurfaceRecord[],
  { gauge, flat }: Bench,
  options: RecordOptions,
  stated: Millimetres,
  expected: number,
): SizeOnRecord["bySurfaces"] {
  const { shape } = ring;
  const step = Math.max(0, ...Object.values(gauge.steps));
  const readTwice = surfaces.some(({ sags }) => sags.length > 1);
  const scatterFrom = readTwice
    ? "these readings"
    : options.repeatability
    ? "the gauge"
    : "display step";
  const repeatability = readTwice
    ? undefined
    : options.repeatability ?? { standardDeviation: step };
  const probe = shape.kind === "balls" ? shape.probeOffset : 0;
  const found = calibrateBySurfaces({
    ring: ring.id,
    surfaces,
    ballRadius: shape.kind === "edge" ? millimetres(0) : shape.ballRadius,
    ballRadiusUncertainty: ring.ballRadiusUncertainty,
    ...(repeatability === undefined ? {} : { repeatability }),
    step: millimetres(step),
    gauge,
    ...(flat === undefined ? {} : { flat }),
    ...(expected > 0
      ? {
        expectedRadius: {
          value: stated,
          standardUncertainty: millimetres(expected),
        },
      }
      : {}),
  });
  // Surfaces see the circle less the probe's place: r² − d².
  const value = Math.hypot(found.circleRadius.value, probe);
  return {
    ...found,
    circleRadius: { ...found.circleRadius, value },
    scatterFrom,
  };
}
