/**
 * Times the fit of mixed models side by side with the lme4 package of R, on
 * the same readings in one run, and compares what both find.
 *
 * `deno run -A tests/benchmarks/reml_against_lme4.ts` prints a table. Without
 * R or lme4 it says so and times the fits alone.
 *
 * @module
 */
import {
  interceptColumn,
  treatmentColumns,
} from "sagbook/statistics/design_columns.ts";
import { fitMixedModel } from "sagbook/statistics/fit_mixed_model.ts";
import type { MixedModelFit } from "sagbook/statistics/mixed_model.ts";
import {
  benchStudy,
  crossedStudy,
  fourFactorStudy,
  type MadeStudy,
  nestedStudy,
} from "./_mixed_data.ts";

/** What lme4 found and how long it took. */
interface PeerFit {
  readonly seconds: number;
  readonly variances: Record<string, number>;
  readonly coefficients: number[];
  /** Minus twice the restricted log-likelihood where its defaults stopped. */
  readonly stoppedAt: number;
  /** The same at the optimum that tighter settings reach, not timed. */
  readonly criterion: number;
}

/** The studies timed, seeds fixed. */
export const studies: readonly (() => MadeStudy)[] = [
  () => benchStudy("100,000 readings, 5,000 zeroings", 11, 5000, 20),
  () => crossedStudy("300 x 300 crossed", 12, 300),
  () => nestedStudy("three levels nested", 13, 800),
  () => fourFactorStudy("four factors, 40,000 readings", 14, 40000),
];

/** Fits one study as a user would, from labels and readings. */
export function fitStudy(study: MadeStudy): MixedModelFit {
  const { response, zones, random, factors } = study;
  return fitMixedModel({
    response,
    fixed: zones
      ? treatmentColumns("zone", zones, ["centre", "half", "edge"])
      : [interceptColumn(response.length)],
    random: random.map((name, k) => ({ name, labels: factors[k] })),
  });
}

const SCRIPT = `
arguments <- commandArgs(trailingOnly = TRUE)
suppressMessages(library(lme4))
d <- read.csv(arguments[1])
for (name in names(d)) if (name != "y" && name != "zone") d[[name]] <- factor(d[[name]])
if ("zone" %in% names(d)) d$zone <- factor(d$zone, levels = c("centre", "half", "edge"))
f <- as.formula(arguments[2])
times <- numeric(0)
for (i in 1:as.integer(arguments[3])) {
  gc()
  times <- c(times, system.time(fit <- suppressWarnings(suppressMessages(lmer(f, d, REML = TRUE))))[["elapsed"]])
}
criterion <- REMLcrit(fit)
# The default stops early; these settings go on to the optimum.
exact <- suppressWarnings(suppressMessages(lmer(f, d, REML = TRUE, start = getME(fit, "theta"),
  control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 1e-3, rhoend = 1e-9), calc.derivs = FALSE))))
cat(sprintf("exact %.17g\\n", REMLcrit(exact)))
fit <- exact
v <- as.data.frame(VarCorr(fit))
cat(sprintf("seconds %.17g\\n", median(times)))
for (i in seq_len(nrow(v))) cat(sprintf("variance %s %.17g\\n", v$grp[i], v$vcov[i]))
for (b in fixef(fit)) cat(sprintf("coefficient %.17g\\n", b))
cat(sprintf("criterion %.17g\\n", criterion))
`;

/** Fits a study with lme4; undefined where R or lme4 is missing. */
export async function fitByPeer(
  study: MadeStudy,
  runs: number,
): Promise<PeerFit | undefined> {
  const folder = await Deno.makeTempDir();
  try {
    const names = ["y", ...(study.zones ? ["zone"] : []), ...study.random];
    const lines = [names.join(",")];
    for (let i = 0; i < study.response.length; i++) {
      const levels = study.factors.map((codes) => codes[i]);
      const zone = study.zones ? [study.zones[i]] : [];
      lines.push([study.response[i], ...zone, ...levels].join(","));
    }
    await Deno.writeTextFile(`${folder}/data.csv`, lines.join("\n") + "\n");
    await Deno.writeTextFile(`${folder}/fit.R`, SCRIPT);
    const formula = `y ~ ${study.zones ? "zone" : "1"}` +
      study.random.map((name) => ` + (1 | ${name})`).join("");
    const output = await new Deno.Command("Rscript", {
      args: [`${folder}/fit.R`, `${folder}/data.csv`, formula, String(runs)],
      stderr: "null",
    }).output();
    if (!output.success) return undefined;
    return readPeer(new TextDecoder().decode(output.stdout));
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return undefined;
    throw error;
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Reads what the script prints. */
function readPeer(text: string): PeerFit {
  const variances: Record<string, number> = {};
  const coefficients: number[] = [];
  let [seconds, stoppedAt, criterion] = [NaN, NaN, NaN];
  for (const line of text.split("\n")) {
    const [kind, ...rest] = line.split(" ");
    if (kind === "seconds") seconds = Number(rest[0]);
    if (kind === "exact") criterion = Number(rest[0]);
    if (kind === "criterion") stoppedAt = Number(rest[0]);
    if (kind === "coefficient") coefficients.push(Number(rest[0]));
    if (kind === "variance") {
      variances[rest[0] === "Residual" ? "residual" : rest[0]] = Number(
        rest[1],
      );
    }
  }
  return { seconds, variances, coefficients, stoppedAt, criterion };
}

/** Median seconds of a few runs, and the last fit. */
export function timeFit(
  study: MadeStudy,
  runs: number,
): { seconds: number; fit: MixedModelFit } {
  const times: number[] = [];
  let fit = fitStudy(study);
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    fit = fitStudy(study);
    times.push((performance.now() - start) / 1000);
  }
  times.sort((a, b) => a - b);
  return { seconds: times[times.length >> 1], fit };
}

/** Largest relative difference of variances and coefficients. */
function disagreement(fit: MixedModelFit, peer: PeerFit): number {
  let worst = 0;
  for (const { name, variance } of fit.components) {
    const other = peer.variances[name];
    worst = Math.max(
      worst,
      Math.abs(variance! - other) / Math.max(other, 1e-12),
    );
  }
  fit.fixed.forEach(({ estimate }, i) => {
    const other = peer.coefficients[i];
    worst = Math.max(worst, Math.abs(estimate! - other) / Math.abs(other));
  });
  return worst;
}

/** Prints the table of times and how cost grows. */
async function main(): Promise<void> {
  console.log(
    "study | readings | seconds | lme4 seconds | times faster | largest relative difference | criterion less lme4 optimum | lme4 default less its optimum | evaluations",
  );
  for (const make of studies) {
    const study = make();
    const { seconds, fit } = timeFit(study, 5);
    const peer = await fitByPeer(study, 3);
    console.log([
      study.name,
      study.response.length,
      seconds.toFixed(3),
      ...(peer
        ? [
          peer.seconds.toFixed(3),
          (peer.seconds / seconds).toFixed(1),
          disagreement(fit, peer).toExponential(1),
          (-2 * fit.logLikelihood! - peer.criterion).toExponential(1),
          (peer.stoppedAt - peer.criterion).toExponential(1),
        ]
        : ["skipped: needs Rscript and lme4", "", "", "", ""]),
      fit.evaluations,
    ].join(" | "));
  }
  console.log("\ngrowth | readings | seconds | ratio");
  const pairs: [string, MadeStudy, MadeStudy][] = [
    [
      "ten times the readings, same levels",
      benchStudy("", 15, 500, 20, 1),
      benchStudy("", 15, 500, 20, 10),
    ],
    [
      "ten times readings and zeroings",
      benchStudy("", 16, 500, 20),
      benchStudy("", 16, 5000, 20),
    ],
    [
      "ten times readings and zeroings",
      benchStudy("", 17, 5000, 20),
      benchStudy("", 17, 50000, 20),
    ],
  ];
  for (const [name, small, large] of pairs) {
    const [a, b] = [timeFit(small, 9).seconds, timeFit(large, 5).seconds];
    console.log(
      `${name} | ${small.response.length} to ${large.response.length} | ${
        a.toFixed(4)
      } to ${b.toFixed(4)} | ${(b / a).toFixed(1)}`,
    );
  }
}

if (import.meta.main) await main();
