/**
 * Colours of the live figures, as those of the other figures are: a shape, a
 * dash or a word says the same as each colour.
 */

/** What a colour is for: [on a light page and on paper, on a dark page]. */
export const LIVE_ROLES: Readonly<Record<string, readonly [string, string]>> = {
  paper: ["#ffffff", "#15191e"],
  ink: ["#1c232b", "#e8ecf0"],
  quiet: ["#55606c", "#a9b4bf"],
  line: ["#d4dae0", "#39424c"],
  first: ["#1b5e91", "#79bff0"],
  second: ["#a4500f", "#f0a25e"],
  third: ["#5b4a9c", "#b9a8f5"],
  alarm: ["#b0153b", "#ff8c9e"],
  haze: ["#d3e2ee", "#22384b"],
  veil: ["#e6e8eb", "#2a3037"],
  lowest: ["#0d3f6b", "#a9d6fb"],
  low: ["#2f74ab", "#5b9fd6"],
  high: ["#b8641f", "#d08a46"],
  highest: ["#7a3606", "#ffcf9b"],
};

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
