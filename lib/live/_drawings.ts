import { CHORD_AND_SAG } from "./_chord_and_sag.ts";
import type { Drawing } from "./_drawing.ts";
import type { LiveFigureName } from "./live_figure.ts";

/** Every live figure, by the name that a page asks for it. */
export const DRAWINGS: Readonly<Record<LiveFigureName, Drawing>> = {
  "chord-and-sag": CHORD_AND_SAG,
};
