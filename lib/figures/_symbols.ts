/**
 * The shapes that tell series apart where colour cannot.
 *
 * @module
 */

/** A drawing surface as Plot hands it to a symbol. */
export interface Pen {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  arc(x: number, y: number, r: number, from: number, to: number): void;
  closePath(): void;
  rect(x: number, y: number, width: number, height: number): void;
}

/** Something that draws itself around the origin, as big as its area says. */
export interface ShapeDrawing {
  draw(pen: Pen, size: number): void;
}

/** Name of a shape. */
export type ShapeName =
  | "circle"
  | "square"
  | "triangle"
  | "triangleDown"
  | "diamond"
  | "cross"
  | "hexagon"
  | "star";

type Corner = readonly [number, number];

function turned(
  count: number,
  radii: readonly number[],
  start: number,
): Corner[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (start + 360 / count * i) * Math.PI / 180;
    const radius = radii[i % radii.length];
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
}

const ARM = 0.36;
const TIP = 1.05;

/** Corners for a radius of 1, all about as heavy as the circle. */
const CORNERS: Readonly<
  Record<Exclude<ShapeName, "circle">, readonly Corner[]>
> = {
  square: turned(4, [1.22], 45),
  triangle: turned(3, [1.38], -90),
  triangleDown: turned(3, [1.38], 90),
  diamond: [[0, -1.4], [0.95, 0], [0, 1.4], [-0.95, 0]],
  hexagon: turned(6, [1.1], 0),
  star: turned(10, [1.45, 0.62], -90),
  cross: [
    ...[[-ARM, -TIP], [ARM, -TIP], [ARM, -ARM], [TIP, -ARM]] as const,
    ...[[TIP, ARM], [ARM, ARM], [ARM, TIP], [-ARM, TIP]] as const,
    ...[[-ARM, ARM], [-TIP, ARM], [-TIP, -ARM], [-ARM, -ARM]] as const,
  ],
};

/** The shapes in the order in which series get them. */
export const SHAPES: readonly ShapeName[] = [
  "circle",
  "square",
  "triangle",
  "diamond",
  "cross",
  "triangleDown",
  "star",
  "hexagon",
];

/** The shape of series number `index`, from 0; after eight they repeat. */
export function shapeOf(index: number): ShapeName {
  return SHAPES[index % SHAPES.length];
}

/** A shape as Plot's `symbol` option takes it. */
export function plotSymbol(name: ShapeName): ShapeDrawing {
  return {
    draw(pen, size) {
      const radius = Math.sqrt(size / Math.PI);
      if (name === "circle") {
        pen.moveTo(radius, 0);
        pen.arc(0, 0, radius, 0, 2 * Math.PI);
        return;
      }
      CORNERS[name].forEach(([x, y], i) => {
        if (i === 0) pen.moveTo(x * radius, y * radius);
        else pen.lineTo(x * radius, y * radius);
      });
      pen.closePath();
    },
  };
}

/** Draws a shape as path data around a point; `size` is its area in px². */
export function drawingPath(
  drawing: ShapeDrawing,
  x: number,
  y: number,
  size: number,
): string {
  const at = (dx: number, dy: number) =>
    `${Number((x + dx).toFixed(2))},${Number((y + dy).toFixed(2))}`;
  let path = "";
  drawing.draw({
    moveTo: (dx, dy) => path += `M${at(dx, dy)}`,
    lineTo: (dx, dy) => path += `L${at(dx, dy)}`,
    closePath: () => path += "Z",
    rect: (dx, dy, w, h) => path += `M${at(dx, dy)}h${w}v${h}h${-w}Z`,
    // Shapes have whole circles only.
    arc: (dx, dy, r) =>
      path += `M${at(dx - r, dy)}a${r},${r},0,1,1,${2 * r},0a${r},${r},0,1,1,${
        -2 * r
      },0Z`,
  }, size);
  return path;
}

/** A shape of ours as path data around a point. */
export function shapePath(
  name: ShapeName,
  x: number,
  y: number,
  radius: number,
): string {
  return drawingPath(plotSymbol(name), x, y, Math.PI * radius * radius);
}

/** The end of an interval as Plot's `symbol` option takes it. */
export function capSymbol(direction: "flat" | "upright"): ShapeDrawing {
  return {
    draw(pen, size) {
      const half = Math.sqrt(size / Math.PI);
      const [x, y] = direction === "flat" ? [half, 0] : [0, half];
      pen.moveTo(-x, -y);
      pen.lineTo(x, y);
    },
  };
}
