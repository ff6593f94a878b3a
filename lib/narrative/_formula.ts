/**
 * Formulas as MathML, which a browser sets without any font of the page's own.
 *
 * @module
 */
import { Markup } from "../display/markup.ts";

/** A part of a formula. */
export type Term = string;

/** A letter for a quantity. */
export const mi = (letter: string): Term => `<mi>${letter}</mi>`;
/** A number. */
export const mn = (number: number): Term => `<mn>${number}</mn>`;
/** A sign between terms. */
export const mo = (sign: string): Term => `<mo>${sign}</mo>`;
/** Terms side by side. */
export const row = (...terms: readonly Term[]): Term =>
  `<mrow>${terms.join("")}</mrow>`;
/** A fraction. */
export const over = (top: Term, bottom: Term): Term =>
  `<mfrac>${top}${bottom}</mfrac>`;
/** A power. */
export const power = (base: Term, exponent: number): Term =>
  `<msup>${base}${mn(exponent)}</msup>`;
/** A square root. */
export const root = (term: Term): Term => `<msqrt>${term}</msqrt>`;
/** Letter with an index. */
export const sub = (base: Term, index: Term): Term =>
  `<msub>${base}${index}</msub>`;

/** A formula within a line, or on a line of its own. */
export function formula(term: Term, display: boolean = false): Markup {
  return new Markup(
    `<math${display ? ' display="block"' : ""}>${row(term)}</math>`,
  );
}

const [R, r, s, b, q, c, a] = ["R", "r", "s", "b", "q", "c", "a"].map(mi);
const m = (place: Term): Term => row(mi("m"), mo("("), place, mo(")"));
const difference = row(m(c), mo("−"), m(mn(0)));

/** R from the sag; `sign` is that of the ball. */
export const radiusFormula = (sign: "+" | "−" | ""): Term =>
  row(
    R,
    mo("="),
    over(row(power(r, 2), mo("+"), power(s, 2)), row(mn(2), s)),
    ...(sign === "" ? [] : [mo(sign), b]),
  );

/** Sag from R, in the form that keeps its digits. */
export const sagFormula: Term = row(
  s,
  mo("="),
  over(
    power(r, 2),
    row(q, mo("+"), root(row(power(q, 2), mo("−"), power(r, 2)))),
  ),
);

/** What the probe and the feet make of an error of sag, and of the circle. */
export const errorFormula: Term = row(
  mi("Δ"),
  R,
  mo("="),
  mo("−"),
  over(power(r, 2), row(mn(2), power(s, 2))),
  mi("Δ"),
  s,
  mo("+"),
  over(r, s),
  mi("Δ"),
  r,
);

/** The paraboloid's growth of R. */
export const growthFormula: Term = over(power(c, 2), R);

/** Surface error from a difference of sag. */
export const surfaceFormula: Term = row(
  mi("P"),
  mo("="),
  row(mo("["), difference, mo("]")),
  over(power(a, 4), row(mn(16), power(c, 2), power(r, 2))),
);

/** Conic constant from a difference of sag. */
export const conicFormula: Term = row(
  mi("K"),
  mo("="),
  row(mo("["), difference, mo("]")),
  over(row(mn(2), power(R, 3)), row(power(c, 2), power(r, 2))),
);

/** Focal length. */
export const focalFormula: Term = row(mi("f"), mo("="), over(R, mn(2)));

/** Depth of the whole surface. */
export const depthFormula: Term = row(
  mi("S"),
  mo("="),
  R,
  mo("−"),
  root(row(power(R, 2), mo("−"), power(a, 2))),
);

/** Share of a display step in every reading and zero. */
export const stepFormula: Term = over(mi("δ"), root(mn(12)));
