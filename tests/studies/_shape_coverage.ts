/** How often the band of the shape holds an invented surface. */
import { threeFootMean } from "sagbook/geometry/three_foot_mean.ts";
import type { Random } from "sagbook/numerics/random.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { Place } from "sagbook/zones/place.ts";
import { surfaceShape } from "sagbook/zones/surface_shape.ts";

/** Half diameter of the invented work, in mm. */
const RIM = 108;
/** Circle the feet touch on, in mm. */
const RING = 40;

/** An invented departure from a sphere, by distance from the centre in mm. */
export interface InventedSurface {
  readonly name: string;
  readonly height: (distance: number) => number;
}

const hole = (width: number): InventedSurface => ({
  name: `hole 5 µm deep, ${width} mm wide`,
  height: (d) => -0.005 * Math.exp(-((d / width) ** 2)),
});

const edge = (width: number): InventedSurface => ({
  name: `edge turned down 4 µm over ${width} mm`,
  height: (d) => -0.004 * (Math.max(0, d - RIM + width) / width) ** 2,
});

const zone = (at: number, width: number): InventedSurface => ({
  name: `ring 3 µm high at ${at} mm, ${width} mm wide`,
  height: (d) => 0.003 * Math.exp(-(((d - at) / width) ** 2)),
});

/** The surfaces of the study. */
export const INVENTED: readonly InventedSurface[] = [
  { name: "sphere", height: () => 0 },
  { name: "paraboloid", height: (d) => -(d ** 4) / (8 * 1200 ** 3) },
  { name: "oblate, 3 µm", height: (d) => 0.012 * (d / RIM) ** 4 },
  hole(15),
  hole(25),
  hole(40),
  hole(60),
  edge(15),
  edge(25),
  edge(40),
  edge(60),
  zone(50, 15),
  zone(70, 25),
  zone(85, 15),
];

/** Where the gauge stands, and how many sets it reads. */
export interface ShapeDesign {
  readonly name: string;
  readonly distances: readonly number[];
  readonly sets: number;
  readonly noise: number;
}

/** The designs of the study. */
export const DESIGNS: readonly ShapeDesign[] = [
  {
    name: "3 zones, 6 sets",
    distances: [0, 33.7, 67.4],
    sets: 6,
    noise: 0.0012,
  },
  {
    name: "3 zones, 40 sets",
    distances: [0, 33.7, 67.4],
    sets: 40,
    noise: 0.0012,
  },
  {
    name: "5 zones, 10 sets",
    distances: [0, 17, 33.7, 50.5, 67.4],
    sets: 10,
    noise: 0.0008,
  },
  { name: "2 zones, 4 sets", distances: [0, 67.4], sets: 4, noise: 0.0012 },
];

/** Heights over the sphere that fits best over the area seen. */
function overBestSphere(
  height: (distance: number) => number,
  seenTo: number,
): (distance: number) => number {
  const rings = 2000;
  let [w, x, xx, y, xy] = [0, 0, 0, 0, 0];
  for (let k = 0; k < rings; k++) {
    const d = (k + 0.5) / rings * seenTo;
    const [area, q, h] = [d, d * d, height(d)];
    w += area;
    x += area * q;
    xx += area * q * q;
    y += area * h;
    xy += area * q * h;
  }
  const slope = (w * xy - x * y) / (w * xx - x * x);
  const level = (y - slope * x) / w;
  return (d) => height(d) - level - slope * d * d;
}

/** Shares of the places seen at which the band holds the surface. */
export function shapeCoverage(
  { height }: InventedSurface,
  { distances, sets, noise }: ShapeDesign,
  sessions: number,
  random: Random,
): { readonly held: number; readonly halfWidth: number } {
  const places = distances.map((distance): Place => ({
    id: "",
    label: "",
    distance: mm(distance),
    foot: distance === 0 ? "any" : "foot out",
    threefold: 1,
  }));
  const sags = distances.map((offset) =>
    0.36 + threeFootMean((x, y) => height(Math.hypot(x, y)), {
      circleRadius: mm(RING),
      offset: mm(offset),
      diameterDegrees: 0,
      footDegrees: 0,
    })
  );
  const seenTo = RING + distances[distances.length - 1];
  const truth = overBestSphere(height, seenTo);
  const step = 0.001;
  let [held, all, width] = [0, 0, 0];
  for (let session = 0; session < sessions; session++) {
    const read = Array.from({ length: sets }, (_, set) => {
      const zero = 0.0008 * random.normal() + step * random.uniform();
      const cells = sags.map((sag) => ({
        sag: step * Math.round((sag + zero + noise * random.normal()) / step),
        readings: 1,
      }));
      const diameterDegrees = 180 * set / sets;
      return { label: "", zeroing: `${set}`, diameterDegrees, cells };
    });
    const shape = surfaceShape(read, places, {
      contactCircle: RING,
      seenTo,
      step,
      scope: "any diameter",
    })!;
    for (const { distance, departure: { interval95 } } of shape.points) {
      const wanted = truth(distance);
      all++;
      width += (interval95!.high - interval95!.low) / 2;
      if (interval95!.low <= wanted && wanted <= interval95!.high) held++;
    }
  }
  return { held: held / all, halfWidth: width / all };
}
