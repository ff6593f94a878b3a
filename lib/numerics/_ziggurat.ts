/**
 * The layers under the normal density that fast normal draws need.
 *
 * @see Marsaglia and Tsang, "The ziggurat method for generating random
 * variables", Journal of Statistical Software 5(8), 2000 (their start of the
 * tail for 256 layers); Doornik, "An improved ziggurat method to generate
 * normal random samples", 2005 (the layer and the place in it from separate
 * bits).
 *
 * @module
 */

/** How many layers of equal area the density is cut into. */
const LAYERS = 256;

/** Where the tail begins, in standard deviations. */
export const TAIL_START = 3.6541528853610088;

/** Area of each layer, the lowest with its tail. */
const LAYER_AREA = 0.004928673233974658;

/** Right end of each layer's box, from the lowest to 0 at the top. */
export const LAYER_EDGE: Float64Array = new Float64Array(LAYERS + 1);

/** Share of each box that surely lies under the density. */
export const LAYER_INSIDE: Float64Array = new Float64Array(LAYERS);

const density = (x: number): number => Math.exp(-x * x / 2);

LAYER_EDGE[0] = LAYER_AREA / density(TAIL_START);
LAYER_EDGE[1] = TAIL_START;
for (let layer = 2; layer < LAYERS; layer++) {
  const below = LAYER_EDGE[layer - 1];
  LAYER_EDGE[layer] = Math.sqrt(
    -2 * Math.log(LAYER_AREA / below + density(below)),
  );
}
for (let layer = 0; layer < LAYERS; layer++) {
  LAYER_INSIDE[layer] = LAYER_EDGE[layer + 1] / LAYER_EDGE[layer];
}

/**
 * Settles the draws that fall outside the sure part of a box (about 1 %).
 *
 * @returns The normal number, or undefined when the draw must be repeated.
 */
export function settleDraw(
  layer: number,
  share: number,
  uniform: () => number,
): number | undefined {
  if (layer === 0) {
    // Marsaglia's exact tail: exponential candidates, thinned.
    for (;;) {
      const beyond = -Math.log(uniform()) / TAIL_START;
      if (-2 * Math.log(uniform()) > beyond * beyond) {
        return share < 0 ? -TAIL_START - beyond : TAIL_START + beyond;
      }
    }
  }
  const x = share * LAYER_EDGE[layer];
  const lower = density(LAYER_EDGE[layer]);
  const upper = density(LAYER_EDGE[layer + 1]);
  return lower + uniform() * (upper - lower) < density(x) ? x : undefined;
}
