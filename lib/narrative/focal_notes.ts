/**
 * What the foretelling of a focal length rests on, in words.
 *
 * @module
 */
import type { FinishedSuspicion } from "../fabrication/finished_suspicions.ts";
import type { LengthUnit } from "../records/piece.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import type { FocalFindings } from "./focal_sentences.ts";

/**
 * Says what was left out, and what the numbers rest on.
 *
 * @param found What was found.
 * @returns Sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalNotes(found: FocalFindings): readonly string[] {
  const { finished, suspicions, without, habit, used, itself, folder } = found;
  const { unit } = folder.piece;
  const { lines, problems } = finished;
  const refused = problems.filter(({ severity }) => severity === "refused");
  const uncorrected = used.filter(({ method = "", measured }) =>
    measured === undefined && /lamp|light/i.test(method) &&
    !/correct/i.test(method)
  );
  const sun = finished.pieces.filter(({ method = "" }) =>
    /\bsun\b/i.test(method)
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
    ...without.map(({ line, piece }) =>
      `${
        lineOf(line, piece)
      } is not used: no focal length belongs to its distances.`
    ),
    ...suspicions.map((one) => suspicionSentence(one, unit)),
    ...(itself === undefined ? [] : [
      `${
        lineOf(itself.line, itself.piece)
      } is this piece itself; it is not among those that foretell.`,
    ]),
    ...sun.map(({ line, piece }) =>
      `${
        lineOf(line, piece)
      } names the Sun: never do that again, a polished surface turned to it burns and blinds. A distant lamp will do.`
    ),
    ...uncorrected.map(({ line, piece }) =>
      `${
        lineOf(line, piece)
      } was measured by a lamp: the file does not say that the lamp's distance was corrected for; at 100 m a focal length of 1500 mm comes out 23 mm too long. Write the image's distance under image and the lamp's under lamp, and it is corrected here.`
    ),
    ...(habit === undefined ? [] : habitNotes(found)),
  ];
}

const FILE = "finished.csv";

function lineOf(line: number, piece: string | undefined): string {
  return `Line ${line}${piece === undefined ? "" : ` (${piece})`}`;
}

function habitNotes(
  { habit, used, folder: { piece: { unit } } }: FocalFindings,
): readonly string[] {
  const write = (value: number): string =>
    formatLength(millimetres(value), unit, unit === "mm" ? 1 : 3);
  const { mean, used: form, leaveOneOut, assumed, stated } = habit!;
  const part = (value: number): string => (1000 * value).toFixed(2);
  const loo = leaveOneOut;
  return [
    `On average over ${used.length} pieces the focal length came out ${
      part(Math.abs(mean.value))
    } parts in a thousand ${
      mean.value < 0 ? "shorter" : "longer"
    } than half the ground radius (standard error ${
      part(mean.standardError)
    }, ${
      mean.dof === 1 ? "1 degree" : `${mean.dof} degrees`
    } of freedom); beyond their uncertainties the pieces scatter by ${
      part(mean.between)
    } parts in a thousand.`,
    ...(loo === undefined
      ? [
        "A straight line with errors in both is tried from eight pieces on.",
      ]
      : [
        `A straight line with errors in both foretells pieces it has not seen to ${
          write(loo.line)
        }, the mean ratio to ${write(loo.mean)}; the ${form} is used${
          form === "mean ratio"
            ? ", since a line must be better by a fifth to earn its place"
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
  return `${lineOf(line, piece)} is not used: its focal length of ${
    write(focalLength)
  } is far from half its ground radius, ${write(half)}; ${
    LOOKS[looksLike]
  }${would}. Mend the line if so.`;
}
