/** One element of a picture, as data: the same for a file and for a browser. */
export interface Shape {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Shape | string)[];
}

type Attributes = Readonly<Record<string, string | number>>;

/** Coordinates to a hundredth of a pixel, so that equal pictures are equal text. */
export function tidy(value: string | number): string {
  return typeof value === "string"
    ? value
    : String(Math.round(value * 100) / 100 + 0);
}

const shape = (
  tag: string,
  attributes: Attributes,
  children: readonly (Shape | string)[] = [],
): Shape => ({ tag, attributes, children });

/** How a line is drawn. */
export interface Stroke {
  readonly width?: number;
  readonly dash?: string;
}

const stroked = (role: string, { width = 2, dash }: Stroke): Attributes => ({
  class: `s-${role}`,
  fill: "none",
  "stroke-width": width,
  "stroke-linecap": "round",
  "stroke-linejoin": "round",
  ...(dash === undefined ? {} : { "stroke-dasharray": dash }),
});

/** A straight line. */
export function line(
  from: readonly [number, number],
  to: readonly [number, number],
  role: string,
  stroke: Stroke = {},
): Shape {
  return shape("line", {
    x1: from[0],
    y1: from[1],
    x2: to[0],
    y2: to[1],
    ...stroked(role, stroke),
  });
}

/** The path through points; points that are not finite break it. */
export function pathThrough(
  points: readonly (readonly [number, number])[],
): string {
  let pen = "M";
  let text = "";
  for (const [x, y] of points) {
    if (!Number.isFinite(x + y)) {
      pen = "M";
      continue;
    }
    text += `${pen}${tidy(x)},${tidy(y)}`;
    pen = "L";
  }
  return text;
}

/** A line through points. */
export function curve(
  points: readonly (readonly [number, number])[],
  role: string,
  stroke: Stroke = {},
): Shape {
  return shape("path", { d: pathThrough(points), ...stroked(role, stroke) });
}

/** A filled outline. */
export function area(d: string, role: string, opacity = 1): Shape {
  return shape("path", {
    d,
    class: `f-${role}`,
    stroke: "none",
    ...(opacity === 1 ? {} : { "fill-opacity": opacity }),
  });
}

/** A circle's outline. */
export function circle(
  centre: readonly [number, number],
  radius: number,
  role: string,
  stroke: Stroke = {},
): Shape {
  return shape("circle", {
    cx: centre[0],
    cy: centre[1],
    r: radius,
    ...stroked(role, stroke),
  });
}

/** A filled circle. */
export function dot(
  centre: readonly [number, number],
  radius: number,
  role: string,
): Shape {
  return shape("circle", {
    cx: centre[0],
    cy: centre[1],
    r: radius,
    class: `f-${role}`,
  });
}

/** A filled box. */
export function box(
  corner: readonly [number, number],
  size: readonly [number, number],
  role: string,
): Shape {
  return shape("rect", {
    x: corner[0],
    y: corner[1],
    width: size[0],
    height: size[1],
    class: `f-${role}`,
  });
}

/** Where words stand. */
export interface Words {
  readonly anchor?: "start" | "middle" | "end";
  readonly role?: string;
  readonly size?: number;
  readonly bold?: boolean;
  /** Turned to read upwards. */
  readonly upwards?: boolean;
}

/** Words in the picture. */
export function words(
  at: readonly [number, number],
  text: string,
  { anchor = "start", role = "ink", size = 15, bold, upwards }: Words = {},
): Shape {
  return shape("text", {
    x: at[0],
    y: at[1],
    class: `f-${role}`,
    "font-size": size,
    "text-anchor": anchor,
    ...(bold ? { "font-weight": 600 } : {}),
    ...(upwards
      ? { transform: `rotate(-90 ${tidy(at[0])} ${tidy(at[1])})` }
      : {}),
  }, [text]);
}

/** Shapes cut off outside a box; `id` is unique in the picture. */
export function clipped(
  id: string,
  corner: readonly [number, number],
  size: readonly [number, number],
  inside: readonly Shape[],
): Shape[] {
  return [
    shape("clipPath", { id }, [
      shape("rect", {
        x: corner[0],
        y: corner[1],
        width: size[0],
        height: size[1],
      }),
    ]),
    shape("g", { "clip-path": `url(#${id})` }, inside),
  ];
}

/** A head at `to` of a line that comes from `from`. */
export function arrowHead(
  from: readonly [number, number],
  to: readonly [number, number],
  role: string,
): Shape {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [u, v] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const back = [to[0] - 9 * u, to[1] - 9 * v];
  return area(
    pathThrough([
      to,
      [back[0] - 4 * v, back[1] + 4 * u],
      [back[0] + 4 * v, back[1] - 4 * u],
    ]) + "Z",
    role,
  );
}
