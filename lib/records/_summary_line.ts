/**
 * Lines that sum up readings and are none.
 *
 * @module
 */
import { remembered } from "./_memo.ts";

const WORDS = [
  ...["mean", "average", "avg", "median", "total", "sum", "subtotal"],
  ...[
    "sub-total",
    "sd",
    "s.d.",
    "std",
    "std.",
    "stdev",
    "std dev",
    "std. dev.",
  ],
  ...["standard deviation", "std deviation", "sigma", "σ", "variance"],
  ...["min", "minimum", "max", "maximum", "range", "spread", "rms"],
  ...["mean ± sd", "mean+sd", "difference", "diff", "diff."],
  // The same words of spreadsheets in other languages.
  ...["mittel", "mittelwert", "mw", "durchschnitt", "summe", "spannweite"],
  ...["standardabweichung", "stdabw", "stabw", "streuung", "differenz"],
  ...["moyenne", "moy", "moy.", "somme", "écart type", "écart-type"],
  ...["media", "promedio", "suma", "somma", "desviación estándar"],
  ...["dev. std", "deviazione standard", "gemiddelde", "som", "medel"],
  ...["medelvärde", "standardavvikelse", "gennemsnit", "gjennomsnitt"],
  ...["keskiarvo", "średnia", "průměr", "média", "standaardafwijking"],
];
/** Words that may well be labels, unless a line above sums up. */
const AFTER_ANOTHER = [
  "n",
  "count",
  "number",
  "u",
  "s",
  "x",
  "±",
  "%",
  "cv",
  "anzahl",
  "nombre",
  "número",
  "aantal",
  "antal",
];
const SUMMARY = new RegExp(
  `^(?:(?:grand|overall|zone|column|set) )?(?:${
    WORDS.map((word) => word.replaceAll(/[.+]/g, "\\$&")).join("|")
  })(?: (?:of|over|for) .*)?(?: ?\\([^)]*\\))?[ :=]*$`,
);
const LONGEST = 40;

const plain = (cell: string) => cell.trim().toLowerCase().replace(/\s+/g, " ");

/** True for a cell that names a mean or the like and no session or set. */
export const isSummaryWord: (cell: string) => boolean = remembered((cell) =>
  cell.length <= LONGEST && SUMMARY.test(plain(cell))
);

/** True for a cell that goes on with a summary of the line above. */
export function goesOnWithSummary(cell: string): boolean {
  return cell.length <= LONGEST &&
    AFTER_ANOTHER.includes(plain(cell).replace(/[ :=]+$/, ""));
}
