/**
 * Parts of a plan as cells show them: rings, heat, lens.
 *
 * @module
 */
import { type Displayable, jupyterDisplay } from "../display/bundle.ts";
import { markup } from "../display/markup.ts";
import { lensTable } from "./lens_words.ts";
import type { PlanReport } from "./plan_report.ts";
import { ringRecordsTable } from "./ring_table.ts";
import { sentences } from "./show.ts";
import { heatTable } from "./thermal_words.ts";

/**
 * Shows what is known of each ring: size, calibrations, where it stands.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showRings(report: PlanReport): Displayable {
  const { bench, piece } = report.folder;
  return ringRecordsTable(bench.rings, report.records, report.fits, piece.unit);
}

/**
 * Shows what the records of the rings say, ring by ring.
 *
 * @param report The report.
 * @returns Sentences under the name of each ring; undefined when there is
 * nothing to say.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showRingWords(
  { ringWords, records }: PlanReport,
): Displayable | undefined {
  if (ringWords.length === 0) return undefined;
  const groups = records.flatMap(({ ring }) => {
    const start = `${ring}: `;
    const own = ringWords.filter((sentence) => sentence.startsWith(start))
      .map((sentence) => capital(sentence.slice(start.length)));
    return own.length === 0 ? [] : [{ ring, own }];
  });
  const html = markup`${
    groups.map(({ ring, own }) =>
      markup`<h3>${ring}</h3><ul>${
        own.map((sentence) => markup`<li>${sentence}</li>`)
      }</ul>`
    )
  }`;
  return {
    [jupyterDisplay]: () => ({
      "text/plain": ringWords.join("\n"),
      "text/html": html.html,
    }),
  };
}

/** A sentence with a capital at its start. */
function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/**
 * Shows how long the piece settles after warm work.
 *
 * @param report The report.
 * @returns A table; undefined when thickness or glass is not known.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showHeat(
  { heat, folder: { piece } }: PlanReport,
): Displayable | undefined {
  return heat && heatTable(heat, piece.unit);
}

/**
 * Shows what the radius means for a lens.
 *
 * @param report The report.
 * @returns Sentences under a heading; undefined for a piece that is no lens.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showLens(
  { lensWords }: PlanReport,
): Displayable | undefined {
  return lensWords.length === 0 ? undefined : sentences(lensWords, "The lens");
}

/**
 * Shows both surfaces of a lens beside the whole.
 *
 * @param report The report.
 * @returns A table; undefined without two surfaces.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function showLensSurfaces(
  { lens, folder: { piece } }: PlanReport,
): Displayable | undefined {
  return lensTable(lens, piece);
}
