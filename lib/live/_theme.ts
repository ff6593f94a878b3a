import { type Role, ROLES } from "../display/colour_roles.ts";

/**
 * Colours of the live figures, as those of the other figures are: a shape, a
 * dash or a word says the same as each colour.
 */

/** The roles that live figures use. */
const USED = [
  "paper",
  "ink",
  "quiet",
  "line",
  "first",
  "second",
  "third",
  "alarm",
  "haze",
  "veil",
  "lowest",
  "low",
  "high",
  "highest",
] as const satisfies readonly Role[];

/** Their colours: [on a light page and on paper, on a dark page]. */
export const LIVE_ROLES: Readonly<Record<string, readonly [string, string]>> =
  Object.fromEntries(USED.map((role) => [role, ROLES[role]]));

/** The font of all words in the pictures. */
export const LIVE_FONT = '"DejaVu Sans","Liberation Sans",system-ui,sans-serif';

/** Rules that give the roles their colours below a selector. */
export function rolesStyle(below: string): string {
  const rules = (theme: 0 | 1) =>
    Object.entries(LIVE_ROLES).map(([role, colours]) =>
      `${below}.f-${role}{fill:${colours[theme]}}${below}.s-${role}{stroke:${
        colours[theme]
      }}`
    ).join("");
  return `${rules(0)}@media screen and (prefers-color-scheme:dark){${
    rules(1)
  }}`;
}
