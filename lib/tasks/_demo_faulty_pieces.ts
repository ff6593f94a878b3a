import {
  astigmatism,
  coma,
  turnedEdge,
} from "../geometry/contact_departures.ts";
import type { DemoPiece } from "./_demo_piece.ts";
import {
  CENTRE,
  EDGE,
  evening,
  FLAT,
  HALF,
  NINE,
  OTHER_EDGE,
  OTHER_HALF,
  RING_120,
  RING_70,
  scatter,
} from "./_demo_settings.ts";

/** A disc of 200 mm, f/5, for faults that three feet see or do not see. */
const FAULTY_200 = {
  unit: "mm",
  diameter: 200,
  bevel: 1,
  margin: 0.5,
  thickness: 25,
  glass: "soda-lime",
  targetRadius: 2000,
  targetTolerance: 10,
  sagTolerance: 0.001,
  ring: RING_70,
  foot: "foot out",
  step: 0.0005,
  scatter: scatter(0.0003, 0.0008, 0.0002),
  layout: "tidy",
  work: [],
} as const;

/** A disc of 300 mm, f/5, for a fault at the edge. */
const EDGE_300 = {
  ...FAULTY_200,
  diameter: 300,
  thickness: 40,
  glass: "borosilicate",
  targetRadius: 3000,
  trueRadius: 2998,
  departures: [{
    kind: "turned edge",
    sizes: { half_diameter: 150, width: 15, depth: 0.008 },
    shape: turnedEdge({ halfDiameter: 150, width: 15, depth: 0.008 }),
  }],
  ring: RING_120,
  places: [CENTRE, HALF, EDGE, FLAT],
  sessions: [
    evening("edge look 1", "2024-05-14", "F600", "operator A", NINE, 19.5),
    evening("edge look 2", "2024-05-15", "F600", "operator B", NINE, 20.2),
  ],
} as const;

/** Pieces with one fault each, and what three feet make of it. */
export const FAULTY_PIECES: readonly DemoPiece[] = [
  {
    ...EDGE_300,
    folder: "turned-edge-300",
    seed: 301,
    name: "disc 300, f/5, one foot out",
    note: "A turned edge, read with one foot over it.",
    foot: "foot out",
  },
  {
    ...EDGE_300,
    folder: "turned-edge-300-twin",
    seed: 302,
    name: "disc 300, f/5, two feet out",
    note: "The same turned edge, read with two feet out that stay off it.",
    foot: "feet out",
    places: [CENTRE, HALF, {
      ...EDGE,
      zone: "80 mm",
      fraction: 80 / 150,
      of: "half diameter",
    }, FLAT],
  },
  {
    ...FAULTY_200,
    folder: "coma-200",
    seed: 203,
    name: "disc 200, one side worn",
    note: "Coma-like wear: the two ends of a diameter do not agree.",
    trueRadius: 2004,
    departures: [{
      kind: "coma",
      sizes: { height_at_rim: 0.014, direction_deg: 30 },
      shape: coma(0.014 / 100 ** 3, 30),
    }],
    places: [CENTRE, HALF, OTHER_HALF, EDGE, OTHER_EDGE, FLAT],
    sessions: [
      evening("one side 1", "2024-06-03", "F600", "operator B", NINE, 20),
      evening("one side 2", "2024-06-04", "F600", "operator B", NINE, 20.3),
    ],
  },
  {
    ...FAULTY_200,
    folder: "astigmatic-200",
    seed: 204,
    name: "disc 200, bent",
    note: "Astigmatism of 4 µm at the rim, which three feet cannot see.",
    trueRadius: 1996,
    sagTolerance: 0.0012,
    departures: [{
      kind: "astigmatism",
      sizes: { height_at_rim: 0.004, direction_deg: 20 },
      shape: astigmatism(0.004 / 100 ** 2, 20),
    }],
    places: [CENTRE, HALF, EDGE, OTHER_EDGE, FLAT],
    sessions: [
      evening("bent 1", "2024-06-10", "F600", "operator A", NINE, 20.6),
      evening("bent 2", "2024-06-12", "F600", "operator A", NINE, 20.1),
    ],
  },
];
