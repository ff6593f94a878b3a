import { AVERAGING } from "./_averaging.ts";
import { BALLS_AND_EDGE } from "./_balls_and_edge.ts";
import { BLIND_AND_SEEING } from "./_blind_and_seeing.ts";
import { CHORD_AND_SAG } from "./_chord_and_sag.ts";
import type { Drawing } from "./_drawing.ts";
import { IDENTICAL_READINGS } from "./_identical_readings.ts";
import { POINTS_SEEN } from "./_points_seen.ts";
import { READING_ERROR } from "./_reading_error.ts";
import { RING_SIZE } from "./_ring_size.ts";
import { TURNED_EDGE } from "./_turned_edge.ts";
import { ZERO_ERROR } from "./_zero_error.ts";
import type { LiveFigureName } from "./live_figure.ts";

/** Every live figure, by the name that a page asks for it, as a class goes. */
export const DRAWINGS: Readonly<Record<LiveFigureName, Drawing>> = {
  "chord-and-sag": CHORD_AND_SAG,
  "balls-and-edge": BALLS_AND_EDGE,
  "reading-error": READING_ERROR,
  "zero-error": ZERO_ERROR,
  "points-seen": POINTS_SEEN,
  "averaging": AVERAGING,
  "ring-size": RING_SIZE,
  "turned-edge": TURNED_EDGE,
  "blind-and-seeing": BLIND_AND_SEEING,
  "identical-readings": IDENTICAL_READINGS,
};
