/**
 * The next step in a practitioner's words.
 *
 * @module
 */
import type { NextStep } from "../fabrication/next_step.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { SetsNeeded } from "../zones/sets_needed.ts";
import type { RadiusStatement } from "./radius_statement.ts";
import { writeDoubt } from "./write_radius.ts";
import { whatHelps } from "./what_helps.ts";
import { writeWholeChance } from "./write_whole_chance.ts";
import { endsInWords, type NamedZone } from "./zone_words.ts";

/** What would decide, in words. */
function whatDecides(needed: SetsNeeded, sets: number): string {
  switch (needed.kind) {
    case "sets": {
      const { sets: total, atBest, atWorst, chance, diameters } = needed;
      const more = Math.max(1, total - sets);
      const best = Math.max(1, atBest - sets);
      const worst = atWorst === undefined
        ? "more than anyone would read"
        : `${Math.max(more, atWorst - sets)} more`;
      const noun = more === 1 ? "set" : "sets";
      const where = diameters === undefined
        ? `read ${more} more ${noun}, ${
          sets + more
        } in all, each on another diameter`
        : `read ${more} more ${noun} on other diameters, ${
          sets + more
        } in all (the ${sets} read lie on ${diameters}, and sets on one diameter count as one look at the surface)`;
      return `measure more — ${where}: that decides with a chance of ${
        writeWholeChance(chance)
      } if surface and gauge are as they look now (at best ${best} more, at worst ${worst}, since these few readings leave that open; the less it departs from a sphere, the fewer it takes)`;
    }
    case "no practical number":
      return `measure with a ring that shows more of it, or settle for not knowing — the difference lies so close to the tolerance that even ${needed.moreThan} sets on ${needed.moreThan} diameters would decide with a chance of ${
        writeWholeChance(needed.chance)
      } only, if surface and gauge are as they look now`;
    case "display cannot decide":
      return "measure with a finer display, or with a ring that shows more of it — more sets will not help, since the difference hides within the display step";
    case "more ends":
      return "measure more — the zones agree, but the two ends of a diameter must be shown to agree as well; read both ends of two more diameters";
    case "unknown":
      return "measure more — read sets that hold every zone, on three diameters or more";
  }
}

/** What the next step's words need of a session. */
export interface ReadSession {
  /** What would decide an open verdict, where it is open. */
  readonly sphericity: { readonly setsNeeded?: SetsNeeded };
  /** The zones read, from the centre outward. */
  readonly zones: readonly NamedZone[];
  /** The sets read. */
  readonly sets: { readonly length: number };
}

/**
 * Says what to do next.
 *
 * @param step The next step.
 * @param session The session it is about.
 * @param radius The radius stated, where there is one.
 * @param unit The user's unit.
 * @param tolerance How far from the target is still good, in mm, where stated.
 * @returns One sentence; an open verdict never comes with a stroke.
 *
 * @example
 * ```ts
 * import { nextStepSentence } from "sagbook/narrative/next_step_sentence.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(
 *   nextStepSentence({ kind: "on target" }, { sphericity: {}, zones: [], sets: [] }),
 *   "Next: go on to the next grade once the loupe shows no pits; the radius is on target.",
 * );
 * ```
 */
export function nextStepSentence(
  step: NextStep,
  session: ReadSession,
  radius?: RadiusStatement,
  unit: LengthUnit = "mm",
  tolerance?: number,
): string {
  const { sphericity: { setsNeeded: needed }, zones } = session;
  const sets = session.sets.length;
  switch (step.kind) {
    case "measure more":
      if (needed !== undefined) {
        return `Next: ${whatDecides(needed, sets)}.`;
      }
      if (zones.length < 2) {
        return "Next: measure more — read 50% (half way to the rim; 50% reach where the ring does not get that far) and edge as well, in the same set as the centre.";
      }
      return sets < 3
        ? "Next: measure more — read at least three sets, each on another diameter, zeroing before each."
        : 'Next: state how far from a sphere is still good, as "sphericity_tolerance": {"sag": "2 µm"} in piece.json, and this page will say whether it is one.';
    case "even out":
      return "Next: the work is lopsided — read it again with work and gauge turned, and look for the cause (turning of work and tool, a warped support) before grinding on.";
    case "to a sphere": {
      const { inner, outer, unread } = endsInWords(zones);
      if (step.shape === "zone apart") {
        const between = radius?.other && zones[radius.other.zone];
        return `Next: bring it to a sphere first, since ${
          between === undefined ? "a zone between" : between.place.label
        } stands apart from ${inner} and ${outer.replace(/,$/, "")} — ${
          strokeInWords(step.stroke)
        }; then read again.`;
      }
      const [deep, long] = step.shape === "deep centre"
        ? [inner, outer]
        : [outer, inner];
      const fault = `${deep} is deep and ${long.replace(/,$/, "")} long`;
      const gap = unread === undefined ? "" : ` (${unread})`;
      return `Next: bring it to a sphere first, since ${fault}${gap} — ${
        strokeInWords(step.stroke)
      }; then read again.`;
    }
    case "shorten":
      return `Next: the radius is longer than wanted — ${
        strokeInWords(step.stroke)
      } shortens it.`;
    case "lengthen":
      return `Next: the radius is shorter than wanted — ${
        strokeInWords(step.stroke)
      } lengthens it.`;
    case "on target":
      return "Next: go on to the next grade once the loupe shows no pits; the radius is on target.";
    case "near target": {
      const written = radius && writeDoubt(radius, unit);
      const doubt = written === undefined ? "" : ` (${written})`;
      const open = step.beyond
        ? `the radius may be within the tolerance of the target or not, since its doubt${doubt} leaves that open`
        : `the target lies within the doubt of the radius${doubt}, so it may be reached or not`;
      return `Next: ${open}; go on if the next grades can still move it, or ${
        whatHelps(radius, { tolerance, unit })
      }.`;
    }
    case "no target":
      return "Next: go on to the next grade once the loupe shows no pits, if this radius suits; no target was given.";
  }
}

function strokeInWords(
  { position, stroke }: { position: string; stroke: string },
): string {
  return position === "alternate" ? stroke : `${position}, ${stroke}`;
}
