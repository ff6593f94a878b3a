/**
 * The colours of every picture, for a light page, a dark page and paper.
 *
 * Meaning never hangs on colour: shape, line style or a word says it too. The
 * pairs were picked here for contrast (text at least 4.5 to 1, marks 3 to 1)
 * and keep apart for red-green and blue-yellow colour blindness.
 *
 * @module
 */

/** What a colour is for: [on a light page and on paper, on a dark page]. */
export const ROLES = {
  /** Background. */
  paper: ["#ffffff", "#15191e"],
  /** Text and the main marks. */
  ink: ["#1c232b", "#e8ecf0"],
  /** Secondary text and axes. */
  quiet: ["#55606c", "#a9b4bf"],
  /** Grid lines. */
  line: ["#d4dae0", "#39424c"],
  /** First series. */
  first: ["#1b5e91", "#79bff0"],
  /** Second series. */
  second: ["#a4500f", "#f0a25e"],
  /** Third series. */
  third: ["#5b4a9c", "#b9a8f5"],
  /** What asks for attention. */
  alarm: ["#b0153b", "#ff8c9e"],
  /** A tolerance or wanted range, as an area. */
  band: ["#dfe9dc", "#24342a"],
  /** The edge of such an area. */
  bandEdge: ["#4c7a44", "#8fc487"],
  /** An interval, as an area. */
  haze: ["#d3e2ee", "#22384b"],
  /** Where nothing is known. */
  veil: ["#e6e8eb", "#2a3037"],
  /** Steps of a departure, from well below to well above. */
  lowest: ["#0d3f6b", "#a9d6fb"],
  low: ["#2f74ab", "#5b9fd6"],
  middle: ["#6f7983", "#8b96a1"],
  high: ["#b8641f", "#d08a46"],
  highest: ["#7a3606", "#ffcf9b"],
} as const;

/** The name of a colour's use. */
export type Role = keyof typeof ROLES;
