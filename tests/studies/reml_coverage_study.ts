import { designs, remlCoverage } from "./_reml_coverage.ts";
import type { Study } from "./_study.ts";

const STUDIES = 400;

/** Whether intervals of mixed models and of tables hold the truth. */
export const study: Study = {
  title:
    "Intervals of contrasts and components hold the truth as often as they say",
  about:
    `${STUDIES} simulated studies of each design for each seed (2,000 over five seeds), by the statistics alone. Contrasts by Satterthwaite's degrees of freedom; components of balanced tables by modified large samples ("mean squares"), all others by the profile of the restricted likelihood with the small-sample threshold. Contrasts must be covered in 93 to 97 %, and so must a component of four levels or more whose variance is at least that of everything beneath it; any other component in 93 % at least. Truths are means, standard deviations (profile) and variances (mean squares).`,
  run: (seed) =>
    designs.flatMap((design) =>
      remlCoverage(design, STUDIES, seed).map((row) => ({
        case: row.design,
        measure: `${row.quantity}, true ${Number(row.truth.toPrecision(6))}`,
        value: row.covered / row.studies,
        runs: row.studies,
        atLeast: row.allowed[0] / 100,
        ...(row.allowed[1] < 100 ? { atMost: row.allowed[1] / 100 } : {}),
      }))
    ),
};
