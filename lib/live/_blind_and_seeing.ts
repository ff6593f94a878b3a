import { astigmatism, coma, trefoil } from "../geometry/contact_departures.ts";
import { ringGauge } from "../geometry/contact_gauge.ts";
import { contactSag } from "../geometry/contact_sag.ts";
import {
  conicSurface,
  type ContactSurface,
  withDepartures,
} from "../geometry/contact_surface.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { chart, roundedReach, spread } from "./_chart.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { feetAt, gaugeShapes, placeIn } from "./_plan_view.ts";
import {
  area,
  circle,
  curve,
  dot,
  line,
  type Shape,
  tidy,
  words,
} from "./_shape.ts";

const [RADIUS, HALF, RING, BALL] = [3000, 150, 60, 6.35];
const VIEW = { centre: [114, 132], scale: 0.68 } as const;
const GAUGE = ringGauge(RING, BALL);
const SPHERE = conicSurface(RADIUS, 0);

/** The faults, each `height` mm high at the rim, in mm over the work. */
const FAULTS: Readonly<Record<string, (height: number) => ContactSurface>> = {
  astigmatism: (height) => astigmatism(height / HALF ** 2),
  coma: (height) => coma(height / HALF ** 3),
  trefoil: (height) => trefoil(height / HALF ** 3),
};

/** Squares of the work above and below the sphere, as two outlines. */
function map(fault: ContactSurface, height: number): Shape[] {
  const size = 10;
  const outlines: Record<string, string> = {
    lowest: "",
    low: "",
    high: "",
    highest: "",
  };
  for (let x = -HALF + size / 2; x < HALF; x += size) {
    for (let y = -HALF + size / 2; y < HALF; y += size) {
      if (Math.hypot(x, y) > HALF - 3) continue;
      const part = fault(x, y).height / height;
      if (Math.abs(part) < 0.1) continue;
      const role = part > 0.45
        ? "highest"
        : part > 0
        ? "high"
        : part > -0.45
        ? "low"
        : "lowest";
      const [left, top] = placeIn(VIEW, x - size / 2, y + size / 2);
      const side = tidy(size * VIEW.scale);
      outlines[role] += `M${tidy(left)},${tidy(top)}h${side}v${side}h-${side}z`;
    }
  }
  const faint: Record<string, number> = {
    lowest: 0.75,
    low: 0.35,
    high: 0.35,
    highest: 0.75,
  };
  return Object.entries(outlines).filter(([, d]) => d !== "").map(([role, d]) =>
    area(d, role, faint[role])
  );
}

/** A plus where the work is highest, a minus where it is lowest. */
function signs(fault: ContactSurface, height: number): Shape[] {
  const at = HALF * 0.82;
  return spread(0, 330, 12).flatMap((degrees) => {
    const [x, y] = [
      at * Math.cos(degrees * Math.PI / 180),
      at * Math.sin(degrees * Math.PI / 180),
    ];
    const part = fault(x, y).height / height;
    if (Math.abs(part) < 0.5) return [];
    const [px, py] = placeIn(VIEW, x, y);
    return [
      words([px, py + 7], part > 0 ? "+" : "−", {
        anchor: "middle",
        role: "paper",
        size: 22,
        bold: true,
      }),
    ];
  });
}

function draw({ numbers, choices }: Settings): Picture {
  const { height, offset, foot } = numbers;
  const name = Object.hasOwn(FAULTS, choices.fault)
    ? choices.fault
    : "astigmatism";
  const fault = FAULTS[name](height / 1000);
  const worn = withDepartures(SPHERE, fault);
  const seen = (x: number, footDegrees: number) =>
    contactSag(worn, "concave", GAUGE, { x, y: 0, footDegrees }) -
    contactSag(SPHERE, "concave", GAUGE, { x, y: 0, footDegrees });
  const turns = spread(0, 360, 61);
  const values = turns.map((turn) => seen(offset, turn) * 1000);
  const [here, there] = [seen(offset, foot), seen(-offset, foot)];
  const reach = roundedReach(values, height * 0.4);
  const plot = chart(
    [296, 46],
    [164, 170],
    {
      label: "gauge turned by, °",
      from: 0,
      to: 360,
      marks: [0, 120, 240, 360],
    },
    { label: "change, µm", from: -reach, to: reach },
  );
  return {
    width: 480,
    height: 272,
    shapes: [
      ...map(fault, height / 1000),
      ...signs(fault, height / 1000),
      circle(VIEW.centre, HALF * VIEW.scale, "ink", { width: 2 }),
      ...gaugeShapes(VIEW, feetAt(RADIUS, RING, BALL, offset, foot)),
      words([12, 20], "+ high, − low", { role: "quiet" }),
      ...plot.shapes,
      line(
        [plot.x(foot), plot.y(0)],
        [plot.x(foot), plot.y(here * 1000)],
        "alarm",
        { width: 2, dash: "5 5" },
      ),
      curve(turns.map((turn, k) => plot.at(turn, values[k])), "first", {
        width: 3,
      }),
      dot(plot.at(foot, here * 1000), 7, "alarm"),
    ],
    description:
      `Left, the work from above with ${name} ${height} µm high at the rim, and the gauge ${offset} mm from the centre, turned by ${foot} degrees. Right, how the reading changes as the gauge is turned, by exact contact: ${
        name === "astigmatism"
          ? "a line that stays at 0"
          : name === "coma"
          ? "the same at every turn"
          : "three waves in a full turn"
      }.`,
    numbers: [
      {
        label: "The fault's height at the rim",
        text: formatLength(mm(height / 1000), "µm", 1),
      },
      {
        label: "Change of the reading here",
        text: formatLength(mm(here), "µm", 3),
      },
      {
        label: "At the other end of the diameter",
        text: formatLength(mm(there), "µm", 3),
      },
    ],
  };
}

/** What three feet see of coma and trefoil, and do not of astigmatism. */
export const BLIND_AND_SEEING: Drawing = {
  title: "Astigmatism, coma, trefoil under three feet",
  controls: [
    {
      kind: "choice",
      id: "fault",
      label: "The fault is",
      options: {
        astigmatism: "astigmatism",
        coma: "coma-like wear",
        trefoil: "trefoil",
      },
      start: "astigmatism",
    },
    slider("height", "Its height at the rim", "µm", [0.5, 10, 0.5], 5),
    slider("foot", "Gauge turned by", "°", [0, 360, 1], 20),
    slider("offset", "Gauge from the centre", "mm", [-88, 88, 1], 70),
  ],
  draw,
};
