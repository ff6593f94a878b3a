import { millimetres } from "../units/length.ts";
import type { SessionScatter } from "../geometry/simulate_session.ts";
import type { DemoPlace, DemoRing } from "./_demo_piece.ts";

/** Standard deviations in mm of sag. */
export const scatter = (
  repeat: number,
  zeroing: number,
  diameter: number,
): SessionScatter => ({
  repeat: millimetres(repeat),
  zeroing: millimetres(zeroing),
  diameter: millimetres(diameter),
});

export const CENTRE: DemoPlace = {
  zone: "centre",
  fraction: 0,
  of: "half diameter",
};
export const EDGE: DemoPlace = { zone: "edge", fraction: 1, of: "reach" };
export const OTHER_EDGE: DemoPlace = {
  zone: "-edge",
  fraction: -1,
  of: "reach",
};
export const FLAT: DemoPlace = {
  zone: "flat",
  fraction: 0,
  of: "half diameter",
};
export const HALF: DemoPlace = {
  zone: "50%",
  fraction: 0.5,
  of: "half diameter",
};
export const OTHER_HALF: DemoPlace = { ...HALF, zone: "-50%", fraction: -0.5 };
export const HALF_REACH: DemoPlace = {
  zone: "50% reach",
  fraction: 0.5,
  of: "reach",
};

export const ring = (
  id: string,
  statedRadius: number,
  trueRadius: number,
  ballRadius: number,
): DemoRing => ({ id, statedRadius, trueRadius, ballRadius });
export const RING_70 = ring("ring 70", 35.004, 35, 3);
export const RING_100 = ring("ring 100", 50.003, 50, 5);
export const RING_120 = ring("ring 120", 59.996, 60, 6);

export const NINE = [0, 20, 40, 60, 80, 100, 120, 140, 160];
export const SIX = [0, 30, 60, 90, 120, 150];
export const FOUR = [0, 45, 90, 135];

export const evening = (
  id: string,
  date: string,
  grade: string,
  operator: string,
  diameters: readonly number[],
  airCelsius: number,
) => ({ id, date, grade, operator, diameters, airCelsius });
