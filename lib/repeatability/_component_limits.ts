/**
 * What stands in the way of a better estimate of scatter.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";
import type {
  ComponentLimit,
  SurfaceComponents,
} from "./surface_components.ts";
import type { ScatterSource } from "./source.ts";

/** Fewer levels than this are pointed out. */
const FEW = 5;

/** Everything a reader of the figures should know, as codes with data. */
export function limitsOf(
  found: Omit<SurfaceComponents, "limits">,
  readings: readonly Reading[],
  options: { readonly sag?: readonly number[] },
): ComponentLimit[] {
  const { display, figures, design, perSag, status } = found;
  const limits: ComponentLimit[] = [];
  if (status === "too few readings") {
    limits.push({ code: "no degrees of freedom" });
  }
  const repeat = figures.find(({ sources }) => sources.includes("repeat"));
  const { step, floor } = display;
  const below = repeat !== undefined && step !== undefined &&
    repeat.sag.deviation < step / 2;
  if (
    step !== undefined && floor !== undefined &&
    (status === "limited by the display" || display.verdict === "limited" ||
      below)
  ) {
    limits.push({
      code: "limited by the display",
      step,
      floor,
      ...(perSag === undefined ? {} : { radiusFloor: floor * perSag }),
    });
  }
  if (step === undefined) limits.push({ code: "no display step" });
  for (const { sources: [source], variance, belowZero } of figures) {
    if (belowZero) limits.push({ code: "below zero", source, variance });
  }
  for (const { sources, levels } of figures) {
    if (sources[0] !== "repeat" && levels < FEW) {
      limits.push({ code: "few levels", source: sources[0], levels });
    }
  }
  if (!options.sag) {
    const zeroings = zeroMoved(readings, step ?? 0);
    if (zeroings.length > 0) {
      limits.push({ code: "drift not corrected", zeroings });
    }
  }
  if (design.reusedLabels.length > 0) {
    limits.push({ code: "labels reused", labels: design.reusedLabels });
  }
  const notes = notesBySession(readings);
  if (new Set(notes.map((one) => JSON.stringify(one.notes))).size > 1) {
    limits.push({ code: "notes differ between sessions", notes });
  }
  const partly = partlyRecorded(readings);
  if (partly.length > 0) {
    limits.push({ code: "partly recorded", sources: partly });
  }
  return limits;
}

/** Zeroings whose looks at the flat after the work are off by over a step. */
function zeroMoved(readings: readonly Reading[], step: number): string[] {
  const opened = new Set<string>();
  const moved = new Set<string>();
  for (const { on, zeroing, sag } of readings) {
    if (on === "work") opened.add(zeroing);
    else if (opened.has(zeroing) && Math.abs(sag) > step * 1.5) {
      moved.add(zeroing);
    }
  }
  return [...moved];
}

function notesBySession(
  readings: readonly Reading[],
): { session: string; notes: string[] }[] {
  const sessions = new Map<string, Set<string>>();
  for (const { session, note, on } of readings) {
    const known = sessions.get(session) ?? new Set();
    if (note !== undefined && on === "work") known.add(note);
    sessions.set(session, known);
  }
  return [...sessions].map(([session, notes]) => ({
    session,
    notes: [...notes].sort(),
  }));
}

/** Sources of which some readings say the level and others do not. */
function partlyRecorded(readings: readonly Reading[]): ScatterSource[] {
  const work = readings.filter(({ on }) => on === "work");
  const partly = (says: (reading: Reading) => boolean): boolean => {
    const count = work.filter(says).length;
    return count > 0 && count < work.length;
  };
  const offCentre = work.filter(({ offset }) => offset !== 0);
  const withDiameter =
    offCentre.filter(({ diameterDegrees }) => diameterDegrees !== undefined)
      .length;
  const sources: ScatterSource[] = [];
  if (partly(({ operator }) => operator !== undefined)) {
    sources.push("operator");
  }
  if (withDiameter > 0 && withDiameter < offCentre.length) {
    sources.push("diameter");
  }
  if (partly(({ foot }) => foot.kind !== "unknown")) sources.push("rotation");
  return sources;
}
