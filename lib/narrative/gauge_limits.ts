/**
 * What a study of the gauge could not tell, and what would tell it.
 *
 * @module
 */
import type { LengthUnit } from "../records/piece.ts";
import type {
  ComponentLimit,
  SurfaceComponents,
} from "../repeatability/surface_components.ts";
import { writeSmall } from "./sag_words.ts";
import { PLURALS, SINGULARS, SOURCES } from "./scatter_words.ts";

/**
 * Says what these readings cannot tell apart, and which readings would.
 *
 * @param main The components.
 * @param unit The user's unit.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function gaugeLimits(
  main: SurfaceComponents,
  unit: LengthUnit,
): readonly string[] {
  const { design, limits } = main;
  const confounded = design.confounded.map(({ sources, separatedBy }) => {
    const cure = separatedBy.map(({ vary, within, least, orReadCentre }) =>
      `${least} or more ${PLURALS[vary]} in each ${SINGULARS[within]}${
        orReadCentre ? " (or the centre in every set)" : ""
      }`
    );
    return `These readings cannot tell apart ${
      sources.map((source) => SOURCES[source]).join(", ")
    }: they are one figure together.${
      cure.length > 0 ? ` What would: ${cure.join("; ")}.` : ""
    }`;
  });
  return [
    ...confounded,
    ...limits.flatMap((limit) => limitSentence(limit, unit)),
  ];
}

function limitSentence(
  limit: ComponentLimit,
  unit: LengthUnit,
): readonly string[] {
  switch (limit.code) {
    case "limited by the display":
      return [
        `The scatter is below what the display shows (step ${
          writeSmall(limit.step, unit, 1)
        }): every reading carries at least ${
          writeSmall(limit.floor, unit)
        }, and averaging does not shrink it.`,
      ];
    case "no display step":
      return [
        "The bench file states no display step, so nothing allows for rounding.",
      ];
    case "below zero":
      return [
        `The estimate for ${
          SOURCES[limit.source]
        } came out below zero (its readings differ more among themselves than from set to set): it counts as 0 in sums. Too few sets do this, or readings that are not independent.`,
      ];
    case "few levels":
      return [
        `${sentenceStart(SOURCES[limit.source])} rests on ${limit.levels} ${
          PLURALS[limit.source]
        } only: its interval is wide, and no narrower one would be honest.`,
      ];
    case "drift not corrected":
      return [
        `The zero moved in ${limit.zeroings.length} zeroings and the sags still hold that.`,
      ];
    case "no degrees of freedom":
      return ["No reading is left over to judge scatter by."];
    case "notes differ between sessions":
      return [
        "The notes differ between sessions; read them before the sessions are taken together.",
      ];
    case "labels reused":
      return [
        `Zeroings of several sessions bear one label (${
          limit.labels.slice(0, 5).join(", ")
        }); they are different zeroings and were kept apart.`,
      ];
    case "partly recorded":
      return [
        `Some readings do not record ${
          limit.sources.map((source) => SOURCES[source]).join(", ")
        }.`,
      ];
  }
}

function sentenceStart(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
