import { deepEqual, equal } from "node:assert/strict";
import {
  FINISHED_HEADER,
  readFinishedPieces,
} from "sagbook/records/finished_pieces.ts";

Deno.test("readFinishedPieces() reads lengths in the unit of cell, column, heading or caller", async () => {
  const of = async (text: string, unit?: "mm" | "in") =>
    (await readFinishedPieces(text, "finished.csv", unit)).pieces[0];
  const cell = await of("ground_radius,focal_length\n2520 mm,49.5 in\n");
  deepEqual([cell.groundRadius, cell.focalLength], [2520, 1257.3]);
  const column = await of("ground_radius,focal_length,unit\n100,50,in\n");
  deepEqual([column.groundRadius, column.focalLength], [2540, 1270]);
  const heading = await of(
    "Ground radius (mm),Focal length [in]\n2520,50\n",
    "in",
  );
  deepEqual([heading.groundRadius, heading.focalLength], [2520, 1270]);
});

Deno.test("readFinishedPieces() keeps every column of its header", async () => {
  const { pieces, lines } = await readFinishedPieces(
    `${
      FINISHED_HEADER.join(",")
    }\nblank 3,210,2520,2.5,1257.5,0.5,mm,distant lamp,edge worked down,first light\n`,
    "finished.csv",
  );
  deepEqual(pieces, [{
    line: 2,
    piece: "blank 3",
    diameter: 210,
    groundRadius: 2520,
    groundRadiusUncertainty: 2.5,
    focalLength: 1257.5,
    focalLengthUncertainty: 0.5,
    method: "distant lamp",
    figuring: "edge worked down",
    note: "first light",
  }]);
  equal(lines.used, 1);
});

Deno.test("readFinishedPieces() refuses a line without a radius and a file without the column", async () => {
  const blank = await readFinishedPieces(
    "piece,ground_radius,focal_length\nA,,1257 mm\nB,2520 mm,\nC,2520,1257 mm\n",
    "finished.csv",
  );
  deepEqual(blank.problems.map((one) => `${one.line} ${one.code}`), [
    "2 blank-cell",
    "3 blank-cell",
    "4 not-a-length",
  ]);
  const missing = await readFinishedPieces(
    "piece,ground_radius\nA,2520 mm\nB,2520 mm\n",
    "finished.csv",
  );
  equal(missing.problems[0].message, "the header has no column focal_length");
  deepEqual(missing.lines, { read: 2, used: 0, reported: 2 });
});

Deno.test("readFinishedPieces() asks about a piece that stands twice", async () => {
  const { pieces, problems } = await readFinishedPieces(
    "piece,ground_radius,focal_length,unit\nd1,3600,1795,mm\nd2,3600,1795,mm\nd1,3600,1795,mm\n",
    "finished.csv",
  );
  equal(pieces.length, 3);
  deepEqual(problems.map(({ line, code }) => `${line} ${code}`), [
    "4 doubled-lines",
  ]);
});
