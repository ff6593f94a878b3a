import { match, ok, rejects } from "node:assert/strict";
import { focalLengthFigure } from "sagbook/figures/focal_length_figure.ts";
import { textsOf } from "./_picture.ts";

const piece = { radius: 2400, focalLength: 1198 };
const prediction = { radius: 3000, focalLength: 1498, low: 1494, high: 1502 };

Deno.test("focalLengthFigure() states the prediction for this piece at its ground radius", async () => {
  const { description } = await focalLengthFigure({
    pieces: [piece],
    band: [],
    thisPiece: prediction,
  });
  match(
    description,
    /^1 finished piece\. Expected: 1498\.0 mm for this piece \(1494\.0 mm to 1502\.0 mm\) at a ground radius of 3000\.0 mm\.$/,
  );
});

Deno.test("focalLengthFigure() keeps the habit visible: the lower panel takes half the radius off", async () => {
  const pieces = [1300, 2000, 3300].map((radius) => ({
    radius,
    focalLength: radius / 2 - 2,
  }));
  const texts = textsOf(await focalLengthFigure({ pieces, band: [] }));
  ok(texts.includes("Focal length less half the ground radius (mm)"));
  const numbers = texts.filter((text) => /^[+−]\d/.test(text));
  ok(
    numbers.length > 0 &&
      numbers.every((text) => Math.abs(Number(text.replace("−", "-"))) <= 5),
    `${numbers}`,
  );
});

Deno.test("focalLengthFigure() draws with no finished piece, and refuses nothing at all", async () => {
  const figure = await focalLengthFigure({
    pieces: [],
    band: [],
    thisPiece: prediction,
  });
  ok(!textsOf(figure).includes("finished piece"));
  await rejects(focalLengthFigure({ pieces: [], band: [] }), {
    name: "RangeError",
    message:
      "Cannot draw the focal lengths as there must be a finished piece or this one: current value is neither",
  });
  await rejects(
    focalLengthFigure({ pieces: [{ ...piece, focalLength: -1 }], band: [] }),
    {
      name: "RangeError",
      message:
        "Cannot draw the focal lengths as the focal length of a piece must be above 0: current value is -1 mm",
    },
  );
});
