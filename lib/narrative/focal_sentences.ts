/**
 * What a ground radius will become, in words.
 *
 * @module
 */
import type { FinishedSuspicion } from "../fabrication/finished_suspicions.ts";
import { studentTQuantile } from "../statistics/student_t_distribution.ts";
import { formatLength, formatWithUncertainty } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import type { LengthUnit } from "../records/piece.ts";
import type { FocalReport } from "./focal_report.ts";
import { holdPercent } from "./hold_percent.ts";
import { writeRadius } from "./radius_statement.ts";

/** What the words are made from. */
export type FocalFindings = Omit<FocalReport, "answer" | "notes">;

const within = (value: number, half: number, unit: LengthUnit): string =>
  formatWithUncertainty(millimetres(value), millimetres(half), unit);

/**
 * Says what the piece will become, and where to leave grinding.
 *
 * @param found What was found.
 * @param probability The chance of landing that is wanted.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalAnswer(
  found: FocalFindings,
  probability: number,
): readonly string[] {
  const { folder: { piece }, radius, prediction, geometry, used } = found;
  const { unit } = piece;
  if (radius === undefined || geometry === undefined) {
    return [
      "There is no radius to start from: read the ground surface first.",
    ];
  }
  const half = 1.96 * geometry.standardUncertainty;
  const from = `From a ground radius of ${writeRadius(radius, unit)}`;
  const alone = `${within(geometry.value, half, unit)} (95 %)`;
  if (prediction === undefined) {
    return holdPercent([
      `${from}, geometry alone foretells a focal length of ${alone}.`,
      `${
        used.length === 0 ? "No finished piece" : "One finished piece"
      } tells what polishing does in this shop, so that habit is not in it; from two pieces on it can be reckoned with.`,
    ]);
  }
  const { value, interval, dof } = prediction;
  const wide = (interval.high - interval.low) / 2;
  return holdPercent([
    `${from}, this shop's ${used.length} finished pieces foretell a focal length of ${
      within(value, wide, unit)
    } (95 %, ${dof === 1 ? "1 degree" : `${dof} degrees`} of freedom).`,
    wide > half
      ? `That is wider than geometry alone, ${alone}: ${
        used.length < 4
          ? "so few pieces say little about the shop's habit, and each more narrows it"
          : "the pieces scatter more than the geometry leaves open"
      }. Geometry leaves out what polishing does; use it only if you trust that to be small.`
      : `Geometry alone would say ${alone}, and knows nothing of what polishing does here.`,
    ...targetSentences(found, probability),
  ]);
}

function targetSentences(
  { wanted, tolerance, landing, aim, folder: { piece } }: FocalFindings,
  probability: number,
): readonly string[] {
  if (wanted === undefined || aim === undefined) return [];
  const { unit } = piece;
  const write = (value: number, half: number): string =>
    formatLength(
      millimetres(value),
      unit,
      Math.max(0, decimalsFor(amountIn(millimetres(half), unit))),
    );
  const half = aim.prediction.standardUncertainty *
    studentTQuantile(0.025, aim.prediction.dof, "upper");
  const place = `To land on ${
    write(wanted, half)
  }, leave the fine grinding at ${write(aim.radius, half)}`;
  if (tolerance === undefined || landing === undefined) {
    return [
      `${place}; no tolerance is given, so no chance of landing can be stated.`,
    ];
  }
  const good = `within ${write(tolerance, tolerance)}`;
  const percent = (chance: number): string => `${Math.round(100 * chance)} %`;
  return [
    `From here the chance of landing ${good} is ${percent(landing)}.`,
    aim.window === undefined
      ? `${place}: the chance of landing ${good} is ${
        percent(aim.probability!)
      } there, and no radius gives ${percent(probability)}.`
      : `${place}; anywhere from ${write(aim.window.low, half)} to ${
        write(aim.window.high, half)
      } the chance of landing ${good} is ${percent(probability)} or more.`,
  ];
}

/**
 * Says what was left out, and what the numbers rest on.
 *
 * @param found What was found.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalNotes(found: FocalFindings): readonly string[] {
  const { finished, suspicions, habit, used, folder: { piece: { unit } } } =
    found;
  const { lines, problems } = finished;
  const refused = problems.filter(({ severity }) => severity === "refused");
  const uncorrected = used.filter(({ method = "" }) =>
    /lamp|light/i.test(method) && !/correct/i.test(method)
  );
  return [
    ...(lines.reported > 0
      ? [
        `${lines.reported} of ${lines.read} lines of ${FILE} were refused: ${
          refused.slice(0, 3).map(({ line, value, message }) =>
            `${line === undefined ? "" : `line ${line}, `}${
              value === undefined ? "" : `“${value}”: `
            }${message}`
          ).join("; ")
        }.`,
      ]
      : []),
    ...suspicions.map((one) => suspicionSentence(one, unit)),
    ...uncorrected.map(({ line, piece }) =>
      `Line ${line}${
        piece === undefined ? "" : ` (${piece})`
      } was measured by a lamp: the file does not say that the lamp's distance was corrected for; at 100 m a focal length of 1500 mm comes out 23 mm too long.`
    ),
    ...(habit === undefined ? [] : habitNotes(found)),
  ];
}

const FILE = "finished.csv";

function habitNotes({ habit, used }: FocalFindings): readonly string[] {
  const { mean, used: form, leaveOneOut, assumed, stated } = habit!;
  const part = (value: number): string => `${(1000 * value).toFixed(2)} ‰`;
  const loo = leaveOneOut;
  return [
    `2f/R − 1 is ${
      part(mean.value).replace("-", "−")
    } on average over ${used.length} pieces, give or take ${
      part(mean.standardError)
    } (one standard error); beyond their uncertainties the pieces scatter by ${
      part(mean.between)
    }.`,
    ...(loo === undefined
      ? [
        "A straight line with errors in both is tried from eight pieces on.",
      ]
      : [
        `A straight line with errors in both foretells pieces it has not seen to ${
          loo.line.toFixed(1)
        } mm, the mean ratio to ${loo.mean.toFixed(1)} mm; the ${form} is used${
          form === "mean ratio"
            ? ", since the line does not earn its place"
            : ""
        }.`,
      ]),
    ...(stated
      ? assumed === 0 ? [] : [
        `${assumed} uncertainties are missing in the file and were taken like the others.`,
      ]
      : [
        "The file states no uncertainties; the scatter of the pieces stands for all.",
      ]),
    "An error that all radii share, such as one ring's, is part of the habit and cancels only if this piece was read with the same ring.",
  ];
}

const LOOKS = {
  inches: "it looks like inches",
  "millimetres as inches": "it looks like millimetres entered as inches",
  "f-number": "it looks like an f-number",
  "radius of curvature": "it looks like a radius of curvature",
  centimetres: "it looks like centimetres",
  metres: "it looks like metres",
  other: "nothing explains it",
} as const;

function suspicionSentence(
  { line, piece, focalLength, half, looksLike, wouldBe }: FinishedSuspicion,
  unit: LengthUnit,
): string {
  const write = (value: number): string =>
    formatLength(millimetres(value), unit, unit === "mm" ? 1 : 3);
  const would = wouldBe === undefined
    ? ""
    : `, which would be ${write(wouldBe)}`;
  return `Line ${line}${
    piece === undefined ? "" : ` (${piece})`
  } is not used: its focal length of ${
    write(focalLength)
  } is far from half its ground radius, ${write(half)}; ${
    LOOKS[looksLike]
  }${would}. Mend the line if so.`;
}
