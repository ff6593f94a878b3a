/**
 * What is said to a reading that has been kept.
 *
 * @module
 */
import { benchEcho } from "../narrative/bench_echo.ts";
import { benchWarnings } from "../narrative/bench_warnings.ts";
import type { Problem } from "../records/problem.ts";
import type { Reading } from "../records/reading.ts";
import type { Desk } from "./_record_desk.ts";
import { problemLine } from "./_record_reading.ts";

/** What the reader of files says about one reading that matters at the bench. */
const BENCH_CODES: ReadonlySet<string> = new Set([
  "negative-sag",
  "other-unit",
  "ring-size",
  "other-ring",
  "impossible-sag",
  "finer-than-step",
]);

/** Warnings that a wrong value raises, whatever is wrong with it. */
const ABOUT_VALUE: ReadonlySet<string> = new Set([
  "scale",
  "far-from-nominal",
  "foot-off",
  "unlike-before",
]);

/** Display steps within which a value may be a look at the flat. */
const STEPS_OF_FLAT = 3;

/**
 * Says `flat` or `work` where a value is clearly of the other.
 *
 * Held against the session's readings of the work, or before the first against
 * the nominal sag, where there is one.
 */
export function otherThanAsked(
  reading: Reading,
  before: readonly Reading[],
  nominal: number | undefined,
): "flat" | "work" | undefined {
  const step = reading.step ?? 0.001;
  const work = before.filter(({ on, ring }) =>
    on === "work" && ring === reading.ring
  ).map(({ sag }) => Math.abs(sag)).sort((a, b) => a - b);
  const usual = work[work.length >> 1] ?? nominal;
  const size = Math.abs(reading.sag);
  if (reading.on === "work" && size === 0) return "flat";
  if (usual === undefined || usual <= 20 * step) return undefined;
  if (reading.on === "work") {
    return size <= STEPS_OF_FLAT * step ? "flat" : undefined;
  }
  return size > usual / 1.35 && size < usual * 1.35 ? "work" : undefined;
}

/** Echoes a reading and says what looks wrong about it, a line each. */
export async function answerReading(
  desk: Desk,
  reading: Reading,
  problems: readonly Problem[],
  before: readonly Reading[],
  typed: string,
): Promise<void> {
  const { piece, bench, say, warn, session, now } = desk.with;
  const ring = bench.rings.find(({ id }) => id === reading.ring);
  if (ring === undefined) return;
  const set = before.filter(({ zeroing }) => zeroing === reading.zeroing);
  say(benchEcho(reading, set, piece, ring, typed));
  const known = problems.filter(({ code }) => BENCH_CODES.has(code));
  for (const problem of known) {
    if (problem.severity === "note") say(`note: ${problem.message}.`);
    else warn(problemLine(problem, session, false));
  }
  for (const { code, message } of problems) {
    if (code === "foot-unknown") desk.once(`foot ${message}`, message);
  }
  const minutes = (now().getTime() - desk.flatAt.getTime()) / 60_000;
  const warnings = benchWarnings({
    reading,
    before,
    scatter: await desk.with.scatter(),
    piece,
    bench,
    sinceFlat: { minutes, readings: ++desk.sinceFlat },
  });
  const said = known.some(({ severity }) => severity === "warning");
  for (const { code, text } of warnings) {
    // The reader of files has said it already, with its figures.
    if (said && ABOUT_VALUE.has(code)) continue;
    if (code === "flat-long-ago") desk.once(code, text);
    else warn(text);
  }
  if (reading.on === "flat") {
    desk.flatAt = now();
    desk.sinceFlat = 0;
    desk.told.delete("flat-long-ago");
  }
}
