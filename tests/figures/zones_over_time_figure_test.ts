import { equal, match, ok, rejects } from "node:assert/strict";
import { zonesOverTimeFigure } from "sagbook/figures/zones_over_time_figure.ts";
import { textsOf } from "./_picture.ts";

const input = {
  sessions: ["1", "2", "3", "4"],
  reference: "centre",
  zones: [{
    label: "edge",
    differences: [{ value: -0.006 }, undefined, { value: -0.002 }, {
      value: -0.001,
    }],
  }],
};

Deno.test("zonesOverTimeFigure() leaves a gap where a zone was not read, and no mark", async () => {
  const figure = await zonesOverTimeFigure(input);
  match(figure.description, /over 4 sessions: edge from −6 µm to −1 µm\.$/);
  const path = [...figure.svg.matchAll(/ d="(M[^"]*)"/g)].map(([, d]) => d)
    .find((d) => d.includes("Z") && d.includes("L") && !d.endsWith("Z"))!;
  equal(path.split("M").length - 1, 2, "two pieces of line");
});

Deno.test("zonesOverTimeFigure() shows the tolerance only where there is one", async () => {
  ok(
    textsOf(await zonesOverTimeFigure({ ...input, tolerance: 0.0015 }))
      .includes("tolerance ±1.5 µm"),
  );
  ok(!textsOf(await zonesOverTimeFigure(input)).join().includes("tolerance"));
});

Deno.test("zonesOverTimeFigure() refuses a zone without an entry for each session", async () => {
  await rejects(zonesOverTimeFigure({ ...input, sessions: ["1"] }), {
    name: "RangeError",
    message:
      "Cannot draw the zones over time as edge must have an entry for each of 1 sessions: current value is 4 entries",
  });
});
