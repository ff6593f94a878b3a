import { deepEqual, equal, match } from "node:assert/strict";
import { readFinishedPieces } from "sagbook/records/finished_pieces.ts";
import type { FocusReading } from "sagbook/records/focus_reading.ts";

const HEADER =
  "piece,diameter,ground_radius,unit,method,focal_length,centre,zone,source,surface,image,lamp,lamp_uncertainty,distance_uncertainty\n";

const read = (row: string) =>
  readFinishedPieces(HEADER + row + "\n", "finished.csv");

Deno.test("readFinishedPieces() takes what was read at the centre of curvature, zone by length or per cent", async () => {
  const cases: [string, FocusReading][] = [
    ["a,300,3000,mm,,,2999.2,70 %,moves,,,,,1", {
      method: "centre of curvature",
      distance: 2999.2,
      zone: 105,
      source: "moves",
      surface: "paraboloid",
      uncertainty: 1,
    } as FocusReading],
    ["a,,3000,mm,,,2999.2,105,Fixed,,,,,", {
      method: "centre of curvature",
      distance: 2999.2,
      zone: 105,
      source: "fixed",
      surface: "paraboloid",
    } as FocusReading],
    // The centre's own zone crosses in one place, whatever the source does.
    ["a,300,3000,mm,,,2999.2,,,,,,,", {
      method: "centre of curvature",
      distance: 2999.2,
      zone: 0,
      source: "moves",
      surface: "paraboloid",
    } as FocusReading],
    ["a,300,3000,mm,,,2999.2,70 %,,sphere,,,,", {
      method: "centre of curvature",
      distance: 2999.2,
      zone: 105,
      source: "moves",
      surface: "sphere",
    } as FocusReading],
  ];
  for (const [row, measured] of cases) {
    const { pieces, problems } = await read(row);
    deepEqual(problems, [], row);
    deepEqual(pieces[0].measured, measured, row);
    equal(pieces[0].focalLength, undefined);
  }
});

Deno.test("readFinishedPieces() takes a lamp at a recorded distance, and a star", async () => {
  const lamp = await read("a,300,3000,mm,lamp,,,,,,1511.3,180 m,2 m,1.5");
  deepEqual(lamp.pieces[0].measured, {
    method: "lamp",
    image: 1511.3,
    lamp: 180_000,
    lampUncertainty: 2000,
    uncertainty: 1.5,
  });
  const star = await read("a,300,3000,mm,star,,,,,,59 in,,,");
  deepEqual(star.pieces[0].measured, { method: "star", image: 1498.6 });
});

Deno.test("readFinishedPieces() refuses what says too little or too much of a focal length", async () => {
  const cases: [string, RegExp][] = [
    ["a,300,3000,mm,lamp,,,,,,1511.3,,,", /the image of a lamp lies too far/],
    ["a,300,3000,mm,,,2999.2,70 %,,,,,,", /crosses elsewhere when the source/],
    ["a,,3000,mm,,,2999.2,70 %,moves,,,,,", /needs the diameter of the piece/],
    [
      "a,300,3000,mm,,,2999.2,170 %,moves,,,,,",
      /lies within the half diameter/,
    ],
    ["a,300,3000,mm,,,2999.2,70 %,still,,,,,", /not one of the words known/],
    ["a,300,3000,mm,,1498,2999.2,,,,,,,", /gives focal length and centre/],
    ["a,300,3000,mm,,,,,,,,180 m,,", /the line gives no focal length/],
  ];
  for (const [row, why] of cases) {
    const { pieces, lines, problems } = await read(row);
    deepEqual(pieces, [], row);
    deepEqual(lines, { read: 1, used: 0, reported: 1 });
    match(problems[0].message, why);
  }
});
