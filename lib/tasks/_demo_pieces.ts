import { deepCentre } from "../geometry/contact_departures.ts";
import { FAULTY_PIECES } from "./_demo_faulty_pieces.ts";
import type { DemoPiece } from "./_demo_piece.ts";
import {
  CENTRE,
  EDGE,
  evening,
  FLAT,
  FOUR,
  HALF,
  HALF_REACH,
  OTHER_EDGE,
  ring,
  RING_100,
  RING_70,
  scatter,
  SIX,
} from "./_demo_settings.ts";

/** Every invented piece, in the order in which it is made. */
export const DEMO_PIECES: readonly DemoPiece[] = [
  {
    folder: "metric-250",
    seed: 250,
    name: "disc 250, f/6",
    note:
      "A good sphere, read in millimetres on three evenings after the same grade.",
    unit: "mm",
    diameter: 250,
    bevel: 1.5,
    margin: 1,
    thickness: 32,
    glass: "borosilicate",
    targetRadius: 3000,
    targetTolerance: 10,
    sagTolerance: 0.0025,
    startingRadius: 3400,
    trueRadius: 3003.5,
    departures: [],
    ring: RING_100,
    foot: "foot out",
    step: 0.001,
    scatter: scatter(0.0006, 0.001, 0.0003),
    places: [
      CENTRE,
      HALF_REACH,
      { ...HALF_REACH, zone: "-50% reach", fraction: -0.5 },
      EDGE,
      OTHER_EDGE,
      FLAT,
    ],
    sessions: [
      evening("evening 1", "2024-03-04", "F500", "operator A", SIX, 19.8),
      evening("evening 2", "2024-03-06", "F500", "operator B", SIX, 20.3),
      evening("evening 3", "2024-03-07", "F500", "operator A", SIX, 20.1),
    ],
    layout: "tidy",
    work: [
      // deno-fmt-ignore
      ["2024-02-20", "F220", "silicon carbide", 95, 24, "tool on top", "1/3, centre over centre", "", "", "", "all", "hollowed to 3060 mm by template"],
      // deno-fmt-ignore
      ["2024-02-24", "F320", "silicon carbide", 80, 20, "mirror on top", "1/3, centre over centre", "", "31.52", "33.14", "centre", ""],
      // deno-fmt-ignore
      ["2024-03-03", "F500", "aluminium oxide", 70, 18, "mirror on top", "1/3, centre over centre", "evening 1", "31.47", "33.11", "none", ""],
    ],
  },
  {
    folder: "inch-200",
    seed: 200,
    name: "disc 200, f/5",
    note:
      "A hole dug in the middle, read with an inch gauge: not a sphere by far.",
    unit: "in",
    diameter: 200,
    bevel: 1,
    margin: 0.5,
    thickness: 25.4,
    glass: "soda-lime",
    targetRadius: 2000,
    targetTolerance: 12.7,
    sagTolerance: 0.00254,
    startingRadius: 2300,
    trueRadius: 2014,
    departures: [{
      kind: "deep centre",
      sizes: { radius: 60, depth: 0.01 },
      shape: deepCentre({ radius: 60, depth: 0.01 }),
    }],
    ring: {
      ...ring("ring C", 35.0012, 35, 3.175),
      outsideInches: [2.6362, 2.6371, 2.6369],
    },
    foot: "foot out",
    step: 0.00127,
    scatter: scatter(0.0007, 0.0013, 0.0004),
    places: [CENTRE, HALF, EDGE, FLAT],
    sessions: [
      evening("evening-1", "2024-04-09", "F320", "operator C", FOUR, 18.9),
      evening("evening-2", "2024-04-11", "F320", "operator C", FOUR, 19.4),
    ],
    layout: "sheets",
    work: [
      // deno-fmt-ignore
      ["2024-04-02", "F220", "silicon carbide", 110, 28, "mirror on top", "2/3, overhanging", "", "", "", "all", "long strokes to get depth"],
      // deno-fmt-ignore
      ["2024-04-08", "F320", "silicon carbide", 45, 12, "mirror on top", "1/2, overhanging", "evening-1", "0.981 in", "1.079 in", "centre", ""],
    ],
  },
  {
    folder: "coarse-display-180",
    seed: 180,
    name: "disc 180, f/8",
    note: "A sphere whose scatter a display step of 0.01 mm hides.",
    unit: "mm",
    diameter: 180,
    bevel: 1,
    margin: 0.5,
    thickness: 22,
    glass: "soda-lime",
    targetRadius: 2880,
    targetTolerance: 60,
    sagTolerance: 0.002,
    trueRadius: 2872,
    departures: [],
    ring: RING_70,
    foot: "foot out",
    step: 0.01,
    scatter: scatter(0.0004, 0.0006, 0.0002),
    places: [CENTRE, HALF_REACH, EDGE],
    sessions: [
      evening("look 1", "2024-05-02", "F320", "operator B", [0, 60, 120], 20.4),
    ],
    layout: "tidy",
    work: [],
  },
  ...FAULTY_PIECES,
];
