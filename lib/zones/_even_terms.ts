/**
 * Even terms of a surface and their least-squares fit through the zones.
 *
 * @module
 */
import { evenTermResponse } from "../geometry/three_foot_mean.ts";
import { millimetres } from "../units/length.ts";
import type { Place } from "./place.ts";

/**
 * Response of a place to the term (ρ/a)ᵖ.
 *
 * Up to the tenth power it is linear in the cosine of three times the foot's
 * angle, so two directions give it for any, and for the mean of several.
 */
export function response(
  place: Place,
  power: number,
  ring: number,
  a: number,
): number {
  const at = (degrees: number): number =>
    evenTermResponse(
      power,
      millimetres(ring / a),
      millimetres(place.distance / a),
      degrees,
    );
  const { threefold = 0 } = place;
  return ((1 + threefold) * at(0) + (1 - threefold) * at(180)) / 2;
}

/**
 * Weights that turn zone sags into least-squares coefficients of the columns.
 *
 * The sphere itself (one unknown level for each set) is taken out first, so
 * the weights of each coefficient add up to 0 and the zero cancels.
 */
export function contrasts(columns: readonly (readonly number[])[]): number[][] {
  const centred = columns.map((column) => {
    const mean = column.reduce((sum, value) => sum + value, 0) / column.length;
    return column.map((value) => value - mean);
  });
  const basis: number[][] = [];
  const triangle: number[][] = [];
  for (const column of centred) {
    const rest = [...column];
    const row = basis.map((vector) => {
      const share = dot(vector, rest);
      rest.forEach((_, k) => rest[k] -= share * vector[k]);
      return share;
    });
    const length = Math.hypot(...rest);
    basis.push(rest.map((value) => value / length));
    triangle.push([...row, length]);
  }
  const weights: number[][] = new Array(columns.length);
  for (let k = columns.length - 1; k >= 0; k--) {
    const own = [...basis[k]];
    for (let j = k + 1; j < columns.length; j++) {
      const share = triangle[j][k];
      own.forEach((_, z) => own[z] -= share * weights[j][z]);
    }
    weights[k] = own.map((value) => value / triangle[k][k]);
  }
  return weights;
}

/** Sum of products. */
export function dot(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  start = 0,
): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k] * b[start + k];
  return sum;
}

/** uᵖ less its best sphere over the unit disc; u is ρ/a. */
export function lessBestSphere(power: number, u: number): number {
  const m = power / 2;
  const slope = 12 * (1 / (m + 2) - 1 / (2 * (m + 1)));
  return u ** power - (1 / (m + 1) - slope / 2) - slope * u * u;
}
