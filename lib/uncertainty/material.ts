/**
 * How the materials of blanks, tools and rings take up heat.
 *
 * @module
 */

/** A material near room temperature. */
export interface Material {
  /** Its name. */
  readonly name: string;
  /** Linear expansion per kelvin. */
  readonly expansion: number;
  /** Half width of what the expansion may be, per kelvin. */
  readonly expansionLimits: number;
  /** Conductivity in W/(m K), for the glasses. */
  readonly conductivity?: number;
  /** Diffusivity in mm²/s, for the glasses. */
  readonly diffusivity?: number;
}

interface Entry extends Material {
  readonly words: readonly string[];
}

/**
 * Expansions: ISO 3585 (borosilicate), EN 572-1 (soda-lime), ISO 3650 (steel),
 * handbooks (fused silica, aluminium, granite). Conductivity and diffusivity:
 * handbook values near 20 °C, from memory; good to a tenth.
 */
const MATERIALS: readonly Entry[] = [
  {
    name: "borosilicate glass 3.3",
    words: ["borosilicate"],
    expansion: 3.3e-6,
    expansionLimits: 1e-7,
    conductivity: 1.12,
    diffusivity: 0.65,
  },
  {
    name: "soda-lime glass",
    words: ["soda", "float", "plate glass", "window"],
    expansion: 9e-6,
    expansionLimits: 5e-7,
    conductivity: 1.0,
    diffusivity: 0.55,
  },
  {
    name: "fused silica",
    words: ["fused silica", "fused quartz", "quartz"],
    expansion: 5.5e-7,
    expansionLimits: 1e-7,
    conductivity: 1.38,
    diffusivity: 0.85,
  },
  {
    name: "steel",
    words: ["steel", "iron"],
    expansion: 1.15e-5,
    expansionLimits: 1e-6,
  },
  {
    name: "aluminium",
    words: ["alumin"],
    expansion: 2.31e-5,
    expansionLimits: 1e-6,
  },
  {
    name: "granite",
    words: ["granite"],
    expansion: 8e-6,
    expansionLimits: 3e-6,
  },
];

/**
 * Finds a material by what people call it.
 *
 * @param name Such as `borosilicate`, `float glass`, `carbon steel`.
 * @returns The material, or undefined when it is not known here.
 *
 * @see ISO 3585:1998, EN 572-1, ISO 3650:1998 (expansions; the clauses from
 * memory); handbooks for the rest.
 *
 * @example
 * ```ts
 * import { materialNamed } from "sagbook/uncertainty/material.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(materialNamed("Borosilicate")?.expansion, 3.3e-6);
 * equal(materialNamed("toffee"), undefined);
 * ```
 */
export function materialNamed(name: string): Material | undefined {
  const asked = name.toLowerCase();
  const entry = MATERIALS.find(({ words }) =>
    words.some((word) => asked.includes(word))
  );
  if (entry === undefined) return undefined;
  const { words: _words, ...material } = entry;
  return material;
}
