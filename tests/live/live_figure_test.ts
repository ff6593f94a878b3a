import { deepEqual, equal, match, ok, throws } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { LIVE_TYPE, type LiveOutput } from "sagbook/display/live.ts";
import { paraboloidRadiusGrowth } from "sagbook/geometry/asphericity.ts";
import {
  astigmatism,
  turnedEdge,
} from "sagbook/geometry/contact_departures.ts";
import { ringGauge } from "sagbook/geometry/contact_gauge.ts";
import { contactSag } from "sagbook/geometry/contact_sag.ts";
import {
  conicSurface,
  withDepartures,
} from "sagbook/geometry/contact_surface.ts";
import { radiusFromSag } from "sagbook/geometry/radius_from_sag.ts";
import { sagFromRadius } from "sagbook/geometry/sag_from_radius.ts";
import { LIVE_FIGURES, liveFigure } from "sagbook/live/live_figure.ts";
import { formatLength } from "sagbook/units/format_length.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import type { Drawing } from "../../lib/live/_drawing.ts";
import { DRAWINGS } from "../../lib/live/_drawings.ts";

/** One number that a figure tells, by its label. */
function told(
  name: (typeof LIVE_FIGURES)[number],
  label: string,
  settings: Record<string, number | string> = {},
): string {
  const { numbers } = liveFigure(name, settings);
  const found = numbers.find(([one]) => one === label);
  ok(found, `${label} among ${numbers.map(([one]) => one).join("; ")}`);
  return found[1];
}

const ring = { circleRadius: mm(60), ballRadius: mm(6.35) };
const gauge = ringGauge(60, 6.35);
const at = (x: number, footDegrees: number) => ({ x, y: 0, footDegrees });

Deno.test("liveFigure() tells the sag of the library's own formula, and the radius of what a display shows", () => {
  const sag = sagFromRadius(mm(2000), ring, "concave");
  equal(
    told("chord-and-sag", "Sag", { radius: 2000 }),
    formatLength(sag, "mm", 4),
  );
  equal(
    told("chord-and-sag", "Radius found from that display"),
    formatLength(radiusFromSag(mm(0.601), ring, "concave"), "mm", 1),
  );
});

Deno.test("liveFigure() moves the radius of every zone with the zero and leaves the difference", () => {
  const label = "Sag at the edge less sag at the centre";
  const centre = "Radius read at the centre";
  equal(
    told("zero-error", label, { zero: 0 }),
    told("zero-error", label, { zero: 5 }),
  );
  ok(
    told("zero-error", centre, { zero: 0 }) !==
      told("zero-error", centre, { zero: 1 }),
  );
  equal(told("zero-error", label, { surface: "sphere" }), "0.00\u00a0µm");
});

Deno.test("liveFigure() finds the half-diameter ring to show the surface error itself, but for the balls", () => {
  // 586 nm on the ball centres' circle; the balls touch at 75 R/(R - b), so
  // their square is 0.4 % larger.
  equal(
    told("ring-size", "Sag falls by, exact contact", { part: 0.5 }),
    "588\u00a0nm",
  );
  equal(
    told("ring-size", "By c²/R", { part: 0.5 }),
    formatLength(paraboloidRadiusGrowth(mm(75), mm(3000)), "mm", 3),
  );
});

Deno.test("liveFigure() shows a turned edge with one foot out and not with two, by exact contact", () => {
  const sphere = conicSurface(3000, 0);
  const worn = withDepartures(
    sphere,
    turnedEdge({ halfDiameter: 150, width: 20, depth: 0.01, power: 2 }),
  );
  const change = contactSag(worn, "concave", gauge, at(88, 0)) -
    contactSag(sphere, "concave", gauge, at(88, 0));
  const label = "Change of the reading, exact contact";
  equal(told("turned-edge", label), formatLength(mm(change), "µm", 2));
  equal(told("turned-edge", "As a part of the edge's depth"), "−0.27");
  equal(told("turned-edge", label, { foot: 180 }), "0.00\u00a0µm");
});

Deno.test("liveFigure() is blind to astigmatism to a thousandth of its height, and not to coma or trefoil", () => {
  const here = "Change of the reading here";
  const there = "At the other end of the diameter";
  const micrometres = (text: string) =>
    Number(text.replace("−", "-").replace(/\s.*/, ""));
  const settings = { height: 5, offset: 70 };
  for (const foot of [0, 20, 77, 200, 311]) {
    const text = told("blind-and-seeing", here, { ...settings, foot });
    ok(Math.abs(micrometres(text)) <= 0.005, `${foot}: ${text}`);
  }
  const bent = withDepartures(
    conicSurface(3000, 0),
    astigmatism(0.005 / 150 ** 2),
  );
  const exact = contactSag(bent, "concave", gauge, at(70, 20)) -
    sagFromRadius(mm(3000), ring, "concave");
  equal(
    told("blind-and-seeing", here, { ...settings, foot: 20 }),
    formatLength(mm(exact), "µm", 3),
  );
  // 2 C c r² with C = height / a³
  const coma = 2 * 5 * 70 * 60 ** 2 / 150 ** 3;
  for (const [label, sign] of [[here, 1], [there, -1]] as const) {
    const text = told("blind-and-seeing", label, {
      ...settings,
      fault: "coma",
    });
    ok(Math.abs(micrometres(text) - sign * coma) < 0.01, text);
  }
  const trefoil = 5 * 60 ** 3 / 150 ** 3;
  for (const [foot, sign] of [[0, 1], [60, -1], [120, 1]]) {
    const text = told("blind-and-seeing", here, {
      ...settings,
      foot,
      fault: "trefoil",
    });
    ok(Math.abs(micrometres(text) - sign * trefoil) < 0.01, text);
  }
});

Deno.test("liveFigure() averages radii to too long a radius under a small ring", () => {
  // R (σ/s)² with s = r²/2R, sharp edge: 3000 (0.001 / 0.016667)² = 10.8
  match(told("averaging", "Too long by"), /^10\.8\d\smm$/);
});

Deno.test("liveFigure() names the four points of a reading", () => {
  equal(told("points-seen", "The feet touch at"), "126, 126, 25\u00a0mm");
  equal(
    told("points-seen", "The feet touch at", { foot: 0 }),
    "145, 76, 76\u00a0mm",
  );
  equal(told("points-seen", "Reach in this direction"), "108.6\u00a0mm");
});

Deno.test("liveFigure() shows identical readings whose mean is wrong by the rounding", () => {
  equal(told("identical-readings", "The five readings"), "all the same");
  equal(told("identical-readings", "Their mean is off by"), "−0.35\u00a0µm");
});

/** Every corner of a drawing's number controls, for each of its choices. */
function* corners(
  drawing: Drawing,
): Generator<Record<string, number | string>> {
  const ways = drawing.controls.map((control) =>
    control.kind === "choice"
      ? Object.keys(control.options)
      : [control.least, control.start, control.most]
  );
  const count = ways.reduce((product, { length }) => product * length, 1);
  for (let k = 0; k < count; k++) {
    let rest = k;
    yield Object.fromEntries(drawing.controls.map(({ id }, index) => {
      const way = ways[index];
      const value = way[rest % way.length];
      rest = Math.floor(rest / way.length);
      return [id, value];
    }));
  }
}

for (const name of LIVE_FIGURES) {
  Deno.test(`liveFigure("${name}") draws at the ends of all sliders, every number finite`, () => {
    for (const settings of corners(DRAWINGS[name])) {
      const figure = liveFigure(name, settings);
      const where = JSON.stringify(settings);
      ok(!/NaN|Infinity|undefined/.test(figure.svg), where);
      ok(
        !figure.numbers.some(([, text]) => /NaN|∞|undefined/.test(text)),
        where,
      );
      ok(figure.description.length > 40, where);
      equal(figure.numbers.length, liveFigure(name).numbers.length, where);
    }
  });
}

Deno.test("liveFigure() hands over a still picture, its name and settings, and a self-contained live form", async () => {
  const figure = liveFigure("ring-size", { part: 0.5 });
  const bundle = await figure[jupyterDisplay]();
  equal(bundle["image/svg+xml"], figure.svg);
  match(figure.svg, /<title id="title">.+<\/title><desc id="desc">.+<\/desc>/);
  const live = bundle[LIVE_TYPE] as unknown as LiveOutput;
  deepEqual([live.figure, live.settings], ["ring-size", {
    part: 0.5,
    radius: 3000,
    half: 150,
  }]);
  const html = String(bundle["text/html"]);
  match(html, /<img alt="[^"]{60,}" src="data:image\/svg\+xml;base64,/);
  const data = /base64,([^"]+)"/.exec(html)?.[1] ?? "";
  const bytes = Uint8Array.from(atob(data), (byte) => byte.charCodeAt(0));
  equal(new TextDecoder().decode(bytes), figure.svg);
  equal(
    html.replaceAll("http://www.w3.org/2000/svg", "").match(/https?:/),
    null,
  );
  match(String(bundle["text/plain"]), /Ring radius: 75\.0/);
});

Deno.test("liveFigure() refuses unknown names and settings out of range", () => {
  throws(() => liveFigure("chord" as "averaging"), {
    name: "RangeError",
    message:
      /^Cannot make a live figure as its name must be one of .*: current value is chord$/,
  });
  throws(() => liveFigure("averaging", { sigma: 1 }), {
    name: "RangeError",
    message:
      "Cannot set a live figure as its settings are circle, scatter, radius: current value is sigma",
  });
  for (const circle of [9, NaN, 61]) {
    throws(() => liveFigure("averaging", { circle }), {
      name: "RangeError",
      message:
        `Cannot set a live figure as circle must lie from 10 to 60 mm: current value is ${circle} mm`,
    });
  }
  throws(() => liveFigure("balls-and-edge", { form: "flat" }), {
    name: "RangeError",
    message:
      "Cannot set a live figure as form must be one of concave, convex: current value is flat",
  });
});
