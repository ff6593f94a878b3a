/**
 * What a reader must bear in mind.
 *
 * @module
 */
import type { Piece } from "../records/piece.ts";
import type { Problem } from "../records/problem.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { SessionAnalysis } from "../zones/analyse_session.ts";
import type { RecordedZero, ZeroDrift } from "../zones/drift.ts";
import type { Unseen } from "../zones/unseen.ts";
import { creepSentences, trendSentences } from "./gauge_oddities.ts";
import { writeSmall } from "./sag_words.ts";
import { VERDICT_WORDS } from "./_set_apart.ts";

/**
 * Says what the gauge could not have seen.
 *
 * @param unseen The list of a session.
 * @param unit The user's unit.
 * @returns One sentence for each entry.
 *
 * @example
 * ```ts
 * import { unseenSentences } from "sagbook/narrative/caution_sentences.ts";
 * import { ok } from "node:assert/strict";
 *
 * ok(unseenSentences([{ kind: "astigmatism" }], "mm")[0].includes("astigmatism"));
 * ```
 */
export function unseenSentences(
  unseen: readonly Unseen[],
  unit: Piece["unit"],
): readonly string[] {
  return unseen.map((one) => {
    switch (one.kind) {
      case "astigmatism":
        return "Three feet cannot see astigmatism, however large: they measure the mean curvature under them. A two-foot bar turned on the work, or an optical test, can.";
      case "across the bar":
        return "A two-foot bar measures the curvature along itself only; turn it to see the others.";
      case "zones":
        return "Only the centre was read: a turned edge, a hole or a hill elsewhere would not show.";
      case "centre":
        return `The centre was not read, the nearest place to it was ${
          formatLength(one.nearest, unit, unit === "mm" ? 0 : 2)
        } off: a hole or a hill there would not show.`;
      case "rim": {
        const places = unit === "mm" ? 0 : 2;
        const width = formatLength(
          millimetres(one.rim - one.beyond),
          unit,
          places,
        );
        const unknown = unseen.some(({ kind }) => kind === "direction unknown");
        const turn = one.twoFeetOut && !unknown
          ? " Two feet pointed out; with one foot out the ring would reach further and a narrow edge fault could show."
          : "";
        return `No foot touched the outermost ${width} inside the bevel, so a turned edge narrower than that would not show.${turn}`;
      }
      case "coma":
        return "Only one end of each diameter was read, so lopsided wear would not show.";
      case "trefoil":
        return "The ring always stood the same way on the work, so a three-cornered surface would not show.";
      case "direction unknown":
        return `The direction of the feet was not written down for ${one.readings} off-centre ${
          one.readings === 1 ? "reading" : "readings"
        }: what they say about the edge depends on it.`;
    }
  });
}

/**
 * Says which readings were counted from what the flat showed, not from 0.
 *
 * @param zeros Zeroings whose flat did not show 0.
 * @param unit The user's unit.
 * @returns One sentence, or none.
 *
 * @example
 * ```ts
 * import { zeroSentences } from "sagbook/narrative/caution_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(zeroSentences([], "mm").length, 0);
 * ```
 */
export function zeroSentences(
  zeros: readonly RecordedZero[],
  unit: Piece["unit"],
): readonly string[] {
  if (zeros.length === 0) return [];
  const largest = zeros.reduce((a, b) =>
    Math.abs(b.zero) > Math.abs(a.zero) ? b : a
  );
  return [
    `The flat did not show 0 before the work was read in ${
      zeros.length === 1
        ? `zeroing ${largest.zeroing}`
        : `${zeros.length} zeroings`
    }, but ${zeros.length === 1 ? "" : "up to "}${largest.zero < 0 ? "−" : ""}${
      writeSmall(largest.zero, unit)
    }: the readings are counted from there. Press zero on the flat, or write every look at it down.`,
  ];
}

/**
 * Says what the looks back at the flat showed.
 *
 * @param drifts Drift of the zero, by zeroing.
 * @param unit The user's unit.
 * @returns One sentence, or none when nobody looked back.
 *
 * @example
 * ```ts
 * import { driftSentences } from "sagbook/narrative/caution_sentences.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(driftSentences([], "mm").length, 0);
 * ```
 */
export function driftSentences(
  drifts: readonly ZeroDrift[],
  unit: Piece["unit"],
): readonly string[] {
  if (drifts.length === 0) return [];
  const count = (n: number): string =>
    `${n} ${n === 1 ? "zeroing" : "zeroings"}`;
  const moved = drifts.filter(({ treatment }) => treatment === "corrected");
  const pooled = drifts.filter(({ treatment }) => treatment === "pooled");
  const advice =
    "Warm hands do this: wear gloves, let gauge and glass come to rest, and read a fresh set.";
  const found: string[] = [];
  if (moved.length > 0) {
    const largest = moved.reduce((a, b) =>
      Math.abs(b.moved) > Math.abs(a.moved) ? b : a
    );
    const order = largest.by === "time" ? "time" : "the order of readings";
    found.push(
      `The zero moved within ${moved.length} of ${
        count(drifts.length)
      } looked back on, by up to ${writeSmall(largest.moved, unit)} (± ${
        writeSmall(2 * largest.uncertainty, unit)
      }), and that was taken out in proportion to ${order}. ${advice}`,
    );
  }
  if (pooled.length > 0) {
    const mean = pooled.reduce((sum, one) => sum + one.moved, 0) /
      pooled.length;
    found.push(
      `The zero moved by ${writeSmall(mean, unit)} on average within ${
        count(pooled.length)
      }, too little to show in any one of them, and that average was taken out. ${
        moved.length > 0 ? "" : advice
      }`.trim(),
    );
  }
  return found.length > 0 ? found : [
    `The flat was looked at again after ${
      count(drifts.length)
    } and the zero had not moved by more than can be told.`,
  ];
}

/** Warnings that cast no doubt on the readings that were used. */
const HARMLESS: ReadonlySet<string> = new Set([
  "ambiguous-date",
  "empty-file",
  "not-a-date",
  "not-a-temperature",
  "unknown-key",
]);

/**
 * Says which readings look wrong, before anything is made of them.
 *
 * @param problems What the readers noticed.
 * @returns One sentence for each suspicion, three at most; they come before
 * the answer, since they may overturn it.
 *
 * @example
 * ```ts
 * import { suspicionSentences } from "sagbook/narrative/caution_sentences.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const message = "session S2 reads like inches written down as millimetres";
 * const problem = { severity: "warning", code: "unit", file: "r.csv", message } as const;
 * deepEqual(suspicionSentences([problem]), [
 *   "Check before you trust this: session S2 reads like inches written down as millimetres (r.csv).",
 * ]);
 * ```
 */
export function suspicionSentences(
  problems: readonly Problem[],
): readonly string[] {
  const suspicious = problems.filter(({ severity, code }) =>
    severity === "warning" && !HARMLESS.has(code)
  );
  const shown = suspicious.slice(0, 2).map(({ message, file, line }) =>
    `Check before you trust this: ${message} (${file}${
      line === undefined ? "" : `, line ${line}`
    }).`
  );
  const left = suspicious.length - shown.length;
  return left > 0
    ? [
      ...shown,
      `${left} more such ${
        left === 1 ? "doubt stands" : "doubts stand"
      } under “What was read”.`,
    ]
    : shown;
}

/**
 * Says what limits the statistics of a session.
 *
 * @param session The session.
 * @param unit The user's unit.
 * @returns Sentences, most important first.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function limitSentences(
  session: SessionAnalysis,
  unit: Piece["unit"],
): readonly string[] {
  const found: string[] = [];
  const { sphericity, step, outliers, zones, sets, whole } = session;
  if (whole.mean.zeroings === 1) {
    found.push(
      "There is one zeroing only: how much the zero itself scatters cannot be told from it.",
    );
  }
  const { deviation = Infinity } = whole.mean;
  const steady = zones.length === 1 && deviation < step / 2;
  if (sphericity.displayLimited || steady) {
    found.push(
      `The readings scatter less than the display can show (step ${
        writeSmall(step, unit, 1)
      }): they are limited by the display, the intervals are wider than they need be, and averaging more of the same will not narrow them.`,
    );
  }
  if (session.looks.length === 0 && sets.length > 1 && zones.length > 1) {
    found.push(
      "Nobody looked back at the flat: a zero that creeps while a set is read passes for shape. Look at the flat before and after each set.",
    );
  }
  found.push(...trendSentences(levelsOf(session), step, unit));
  found.push(...creepSentences(session.readings, step, unit));
  for (const { set, place, from } of outliers) {
    found.push(
      `In set ${set + 1} (${sets[set].label}) ${
        zones[place].place.label
      } stands ${
        writeSmall(from, unit)
      } apart from the other sets; it is kept, and counts.`,
    );
  }
  const { withoutOutliers } = session;
  if (withoutOutliers) {
    const other = withoutOutliers.sphericity.verdict;
    const radius = withoutOutliers.whole.radius?.radius;
    const places = unit === "mm" ? 1 : 2;
    const kept = whole.radius?.radius;
    found.push(
      `Without ${outliers.length === 1 ? "it" : "them"} the verdict ${
        other === sphericity.verdict
          ? "stays the same"
          : `would be “${VERDICT_WORDS[other]}” instead of “${
            VERDICT_WORDS[sphericity.verdict]
          }”`
      }${
        radius === undefined || kept === undefined
          ? ""
          : `, and the radius over all zones ${
            formatLength(radius, unit, places)
          } instead of ${formatLength(kept, unit, places)}`
      }.`,
    );
  }
  if (sphericity.scope === "any diameter") {
    const known = new Set(sets.map(({ diameterDegrees }) => diameterDegrees));
    if (sets.length > 1 && known.has(undefined)) {
      found.push(
        "Diameters were not written down: the verdict holds for any diameter only if each set was read on another one.",
      );
    } else if (sets.length > 1 && known.size === 1) {
      found.push(
        "All sets lie on one diameter, so the verdict holds for that diameter only.",
      );
    }
  }
  return found;
}

/** How each set stands to the means of its zones, in mm, in order. */
function levelsOf({ sets, zones }: SessionAnalysis): readonly number[] {
  return sets.flatMap(({ cells }) => {
    const off = cells.flatMap((cell, place) =>
      cell ? [cell.sag - zones[place].mean.sag] : []
    );
    return off.length === 0
      ? []
      : [off.reduce((sum, one) => sum + one, 0) / off.length];
  });
}

/**
 * The usual cautions of the work, for the piece at hand.
 *
 * Common practice, no source; local rules and licensed practice come first.
 *
 * @param piece The piece.
 * @returns Sentences.
 *
 * @example
 * ```ts
 * import { safetySentences } from "sagbook/narrative/caution_sentences.ts";
 * import { millimetres as mm } from "sagbook/units/length.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(safetySentences({ diameter: mm(200) }).length, 3);
 * ```
 */
export function safetySentences(
  piece: Pick<Piece, "diameter">,
): readonly string[] {
  return [
    "Slurry that dries is silica dust: work wet, wipe wet, never sweep or sand dry, and wear a respirator where dry dust can form. Local rules come first.",
    "Never aim a polished or wet surface at the Sun.",
    "Lift the gauge, never slide its feet; grit under one foot moves the reading by a third of its size, so wipe and read again.",
    ...(piece.diameter >= 300
      ? [
        "A blank of this size is heavy and its edges cut: two people to lift it, and keep the bevel.",
      ]
      : []),
  ];
}
