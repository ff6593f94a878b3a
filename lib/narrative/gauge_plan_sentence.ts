/**
 * What to read to decide, in a practitioner's words.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type { GaugePlan } from "./gauge_plan.ts";
import { twoFigures } from "./plan_words.ts";
import { writeSmall } from "./sag_words.ts";
import { writeWholeChance } from "./write_whole_chance.ts";

/** What stands in the way when no zeroing averages it, and what to do. */
function sharedSentence(
  { shared, first }: GaugePlan,
  answer: Extract<GaugePlan["answer"], { kind: "no plan" }>,
  unit: LengthUnit,
): string {
  const { lines: [lead], radius, forbids } = shared!;
  const open = `${
    forbids
      ? "No number of zeroings decides"
      : `Not even ${answer.nearest.zeroings} zeroings decide`
  } whether the radius is within its tolerance: what all readings share leaves ±${
    twoFigures(1.96 * radius, unit)
  } of it open (95 %), most of it from the ${lead.source}`;
  if (first === undefined) return `${open}; measure that better first.`;
  const wanted = first.sources.map((one) =>
    `the ${one.source} to ${
      writeStated(one.source, one.wanted, unit)
    } or better`
  );
  const now = first.sources.map((one) =>
    writeStated(one.source, one.now, unit)
  );
  const { zeroings, chance } = first.then;
  return `${open}. Measure ${wanted.join(" and ")} first (${
    now.join(" and ")
  } now); then ${zeroings} zeroings decide with a chance of ${
    writeWholeChance(chance)
  } if the radius is exactly on target.`;
}

/** A figure of the bench file, in the unit people state it in. */
function writeStated(source: string, value: number, unit: LengthUnit): string {
  if (source === "gauge scale") {
    return `${Number((100 * value).toPrecision(2))} %`;
  }
  return source === "ring radius"
    ? twoFigures(value, unit)
    : writeSmall(value, unit);
}

/**
 * Says what to read to decide one of the piece's questions, or why no reading
 * would and what to do first.
 *
 * @param plan The plan.
 * @param unit The user's unit.
 * @returns A sentence or two.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planSentence(plan: GaugePlan, unit: LengthUnit): string {
  const { about, answer, zones } = plan;
  const question = about === "radius"
    ? "whether the radius is within its tolerance"
    : "whether the surface is a sphere within its tolerance";
  if (answer.kind === "no plan") {
    if (answer.reason === "common") return sharedSentence(plan, answer, unit);
    const why = {
      display: "the display step hides what is asked",
      "too many": `even ${answer.nearest.zeroings} zeroings would not do`,
      occasion:
        "people or days shift the reading by more than is asked, and zeroing again on one day does not average that",
    }[answer.reason];
    return `No plan decides ${question}: ${why}.`;
  }
  const { zeroings, diameters, repeats, minutes, chance } = answer.best;
  const places = zones.length === 1
    ? `reading the ${zones[0].label}`
    : `reading ${zones.map(({ label }) => label).join(", ")}`;
  return `To decide ${question}, zero ${zeroings} times${
    diameters > 1 ? ", each on another diameter" : ""
  }, ${places} ${repeats === 1 ? "once" : "twice"} each time: about ${
    Math.round(minutes)
  } minutes, with a chance of ${writeWholeChance(chance)} to decide if it is ${
    about === "radius"
      ? "exactly on target"
      : "truly a sphere; the more it departs from one, the more it takes"
  }.`;
}
