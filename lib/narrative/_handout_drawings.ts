/**
 * The two drawings of a handout: section and plan.
 *
 * @module
 */
import { Markup } from "../display/markup.ts";
import type { SurfaceForm } from "../geometry/feet.ts";
import { contactPoints } from "../geometry/contact_points.ts";
import type { HandoutFigures, HandoutRing } from "./handout_figures.ts";

const number = (value: number): string => String(Number(value.toFixed(2)));

/** Radius of the arc, half the chord and the ball, in units of the drawing. */
const [ARC, HALF, BALL] = [150, 84, 9];

/**
 * The section: ball centres, chord and sag, the curve drawn far deeper than it
 * is. The sag is that of the ball centres' circle, as the formula has it.
 */
export function sectionDrawing(form: SurfaceForm, balls: boolean): Markup {
  const up = form === "concave" ? 1 : -1;
  const ball = balls ? BALL : 0;
  const low = form === "concave" ? 78 : 26;
  /** Height of a circle about the common centre, of the arc's radius less `by`. */
  const y = (x: number, by: number): number =>
    low - up * (ARC - Math.sqrt((ARC - up * by) ** 2 - x * x));
  const across = (wide: number, by: number): string =>
    Array.from({ length: 41 }, (_, k) => {
      const x = -wide + wide * k / 20;
      return `${number(130 + x)},${number(y(x, by))}`;
    }).join(" ");
  const chord = y(HALF, ball);
  const bottom = y(0, ball);
  const foot = (x: number): string =>
    `<circle class="foot" cx="${number(130 + x)}" cy="${number(chord)}" r="${
      balls ? BALL : 2.5
    }"/><circle class="dot" cx="${number(130 + x)}" cy="${
      number(chord)
    }" r="1.8"/>`;
  const words = balls ? "the ball centres" : "the feet";
  const circle = balls
    ? `<polyline class="dash" points="${across(HALF, ball)}"/>`
    : "";
  return new Markup(
    `<svg viewBox="0 ${form === "concave" ? 24 : 12} 260 ${
      form === "concave" ? 58 : 68
    }" role="img" aria-labelledby="hs-t hs-d"><title id="hs-t">Chord and sag</title><desc id="hs-d">A ${form} surface in section, drawn far deeper than it is. The line through ${words} is the chord, r to either side of the axis; the sag s is the distance from it to the circle of ${words} on the axis.</desc><polyline class="glass" points="${
      across(112, 0)
    }"/>${circle}${foot(-HALF)}${foot(HALF)}<line class="thin" x1="${
      130 - HALF
    }" y1="${number(chord)}" x2="${130 + HALF}" y2="${
      number(chord)
    }"/><line class="sag" x1="130" y1="${number(chord)}" x2="130" y2="${
      number(bottom)
    }"/><text x="137" y="${
      number((chord + bottom) / 2 + 4)
    }">s</text><text x="172" y="${
      number(chord - up * 5 + (up < 0 ? 7 : 0))
    }">r</text></svg>`,
  );
}

/** One ring on the disc, seen from above, to scale. */
function planOf(
  { halfDiameter, radius, form }: HandoutFigures,
  { ring, reach }: HandoutRing,
  footDegrees: number,
  middle: number,
): string {
  const scale = 42 / halfDiameter;
  const { feet, probe } = contactPoints(
    ring.shape,
    form,
    radius,
    reach,
    0,
    footDegrees,
  );
  const at = (x: number, y: number): string =>
    `cx="${number(middle + scale * x)}" cy="${number(46 - scale * y)}"`;
  const circle = Math.hypot(feet[0].x - probe.x, feet[0].y - probe.y);
  return `<circle class="disc" ${at(0, 0)} r="42"/><circle class="thin" ${
    at(probe.x, probe.y)
  } r="${number(scale * circle)}"/><circle class="dot" ${
    at(0, 0)
  } r="0.9"/><circle class="probe" ${at(probe.x, probe.y)} r="2.4"/>${
    feet.map(({ x, y }) => `<circle class="dot" ${at(x, y)} r="2.8"/>`).join("")
  }`;
}

/** The plan: the points a reading at the edge really sees, to scale. */
export function planDrawing(
  figures: HandoutFigures,
  ring: HandoutRing,
): Markup {
  return new Markup(
    `<svg viewBox="0 0 260 106" role="img" aria-labelledby="hp-t hp-d"><title id="hp-t">What a reading at the edge sees</title><desc id="hp-d">The disc from above, to scale, with the ring as far out as one foot allows: on the left with one foot out, on the right at the same place with two feet out. Full dots are feet, the open dot is the probe.</desc>${
      planOf(figures, ring, 0, 68)
    }${
      planOf(figures, ring, 180, 192)
    }<text class="small" x="68" y="102" text-anchor="middle">one foot out</text><text class="small" x="192" y="102" text-anchor="middle">two feet out</text></svg>`,
  );
}
