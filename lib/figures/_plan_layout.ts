/**
 * The points on the work that readings saw.
 *
 * @module
 */
import { relativeFootDegrees } from "../geometry/foot_direction.ts";
import { forEachItem } from "../numerics/lazy_list.ts";
import { millimetres } from "../units/length.ts";
import type {
  PlanFigureInput,
  PlanFigureReading,
} from "./plan_figure_input.ts";

/** A point on the work, seen from above, in mm. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** One way the gauge stood: without feet where their direction is unknown. */
export interface Stand extends PlanPoint {
  readonly feet: readonly PlanPoint[];
}

/** Where the gauge stood, and the mean departure wherever the probe was. */
export interface PlanLayout {
  readonly stands: readonly Stand[];
  readonly probes: readonly (PlanPoint & { readonly departure: number })[];
  readonly unknownDiameter: boolean;
}

const RADIAN = Math.PI / 180;
const TURNS = { balls: [0, 120, 240], bar: [0, 180], edge: [] };

function standOf(
  reading: PlanFigureReading,
  { feet, contactRadius }: PlanFigureInput,
): Stand {
  const { offset, foot, diameterDegrees } = reading;
  const direction = diameterDegrees ?? 0;
  const [x, y] = [
    offset * Math.cos(direction * RADIAN),
    offset * Math.sin(direction * RADIAN),
  ];
  const relative = relativeFootDegrees(
    foot,
    diameterDegrees,
    millimetres(offset),
  );
  if (relative === undefined) return { x, y, feet: [] };
  const outward = direction + (offset < 0 ? 180 : 0);
  return {
    x,
    y,
    feet: TURNS[feet].map((turn) => {
      const angle = (outward + relative + turn) * RADIAN;
      return {
        x: x + contactRadius * Math.cos(angle),
        y: y + contactRadius * Math.sin(angle),
      };
    }),
  };
}

/** Puts readings that saw the same points together. */
export function standsOf(input: PlanFigureInput): PlanLayout {
  const near = (value: number) => Math.round(value * 2);
  const stands = new Map<string, Stand>();
  const probes = new Map<string, PlanPoint & { sum: number; count: number }>();
  forEachItem(input.readings, (reading) => {
    const stand = standOf(reading, input);
    const place = `${near(stand.x)} ${near(stand.y)}`;
    const first = stand.feet[0];
    stands.set(
      `${place} ${first ? `${near(first.x)} ${near(first.y)}` : ""}`,
      stand,
    );
    const probe = probes.get(place) ??
      { x: stand.x, y: stand.y, sum: 0, count: 0 };
    probe.sum += reading.departure;
    probe.count++;
    probes.set(place, probe);
  });
  return {
    stands: [...stands.values()],
    probes: [...probes.values()].map(({ x, y, sum, count }) => ({
      x,
      y,
      departure: sum / count,
    })),
    unknownDiameter: input.readings.some((reading) =>
      reading.diameterDegrees === undefined && reading.offset !== 0
    ),
  };
}
