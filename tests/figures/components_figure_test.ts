import { match, ok, rejects } from "node:assert/strict";
import { componentsFigure } from "sagbook/figures/components_figure.ts";
import { textsOf } from "./_picture.ts";

const zeroing = { label: "1", level: 0.001, readings: [0.0012, 0.0008] };

Deno.test("componentsFigure() draws the areas two standard deviations either way, to the scale of the axis", async () => {
  const { svg } = await componentsFigure({
    zeroings: [zeroing, { ...zeroing, label: "2", level: -0.001 }],
    repeat: 0.0005,
    zeroing: 0.0015,
  });
  const heights = (role: string) =>
    [...svg.matchAll(new RegExp(`<g class="f-${role}[^>]*>(.*?)</g>`, "g"))]
      .flatMap(([, inner]) =>
        [...inner.matchAll(/height="([\d.]+)"/g)].map((m) => Number(m[1]))
      );
  const [box] = heights("haze").slice(-1);
  const [band] = heights("veil").slice(-1);
  ok(Math.abs(band / box - 3) < 0.01, `${band} and ${box}`);
});

Deno.test("componentsFigure() draws no band for a component that cannot be told", async () => {
  const figure = await componentsFigure({
    zeroings: [zeroing],
    repeat: 0.0005,
  });
  match(figure.description, /between zeroings cannot be told/);
  ok(!textsOf(figure).includes("zeroing again"));
});

Deno.test("componentsFigure() says how many zeroings it left out", async () => {
  const zeroings = Array.from(
    { length: 5000 },
    (_, i) => ({ ...zeroing, label: `${i}` }),
  );
  const figure = await componentsFigure({ zeroings, repeat: 0.0005 });
  ok(textsOf(figure).includes("The first 40 of 5000 zeroings are drawn."));
});

Deno.test("componentsFigure() refuses a negative standard deviation and a level that is no number", async () => {
  await rejects(componentsFigure({ zeroings: [zeroing], repeat: -1e-4 }), {
    name: "RangeError",
    message:
      "Cannot draw the components as the standard deviation of repeats must be at least 0: current value is -0.0001 mm",
  });
  await rejects(
    componentsFigure({ zeroings: [{ ...zeroing, level: NaN }], repeat: 0 }),
    {
      name: "RangeError",
      message:
        "Cannot draw the components as the level of zeroing 1 must be a finite number: current value is NaN mm",
    },
  );
});
