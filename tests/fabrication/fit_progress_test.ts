import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { fitProgress } from "sagbook/fabrication/fit_progress.ts";
import {
  predictProgress,
  progressLimits,
} from "sagbook/fabrication/predict_progress.ts";
import type { ProgressSession } from "sagbook/fabrication/progress_session.ts";
import { fitLine } from "sagbook/statistics/fit_line.ts";
import { generalisedLeastSquares } from "sagbook/statistics/generalised_least_squares.ts";
import { predictLine } from "sagbook/statistics/straight_line.ts";

const close = (found: number, wanted: number, relative = 1e-6): void =>
  ok(
    Math.abs(found - wanted) <= relative * Math.abs(wanted),
    `${found} is not ${wanted}`,
  );

const WORK = [0, 8, 15, 24, 30, 41];
const SAGS = [3.402, 3.431, 3.466, 3.497, 3.517, 3.571];

function run(
  own: number | readonly number[] = 0.002,
  common: (sag: number) => Record<string, number> = () => ({}),
): ProgressSession[] {
  return WORK.map((work, i) => ({
    session: `S${i + 1}`,
    work,
    sag: {
      value: SAGS[i],
      own: typeof own === "number" ? own : own[i],
      dof: Infinity,
      common: common(SAGS[i]),
    },
  }));
}

Deno.test("fitProgress() is the plain line where each session scatters alike and alone", () => {
  const fit = fitProgress([run()], { scatter: "by session" });
  const line = fitLine(WORK, SAGS);
  close(fit.rate.value, line.slope);
  equal(fit.dof, 4);
  const ahead = predictLine(line, 41);
  close(fit.level.value, ahead.value);
  // Both at the same scatter: the line's own comes from its residuals.
  const scale = Math.sqrt(0.002 ** 2 + fit.scatter.variance!) /
    line.residualDeviation;
  close(fit.rate.own, scale * line.slopeError);
  close(fit.level.own, scale * ahead.standardError);
});

Deno.test("fitProgress() finds as best scatter what leaves squares equal to their freedom", () => {
  const fit = fitProgress([run(0.0005)], { scatter: "by session" });
  const line = fitLine(WORK, SAGS);
  close(
    fit.scatter.best!,
    line.residualDeviation ** 2 - 0.0005 ** 2,
    1e-5,
  );
  ok(fit.scatter.variance! > fit.scatter.best!);
  close(fit.chiSquare, line.residualSquares / 0.0005 ** 2);
});

Deno.test("fitProgress() equals generalised least squares with the full covariance", () => {
  const own = [0.002, 0.001, 0.003, 0.001, 0.002, 0.001];
  for (const scatter of ["accumulates", "by session"] as const) {
    const fit = fitProgress([run(own)], { scatter });
    const variance = fit.scatter.variance!;
    ok(variance > 0);
    const covariance = WORK.map((a, i) =>
      WORK.map((b, j) =>
        (i === j ? own[i] ** 2 : 0) + variance *
          (scatter === "accumulates" ? Math.min(a, b) : Number(i === j))
      )
    );
    const dense = generalisedLeastSquares(SAGS, [
      { name: "start", values: WORK.map(() => 1) },
      { name: "rate", values: WORK },
    ], covariance);
    close(fit.rate.value, dense.coefficients[1].estimate!);
    close(fit.rate.own, dense.coefficients[1].standardError!);
  }
});

Deno.test("fitProgress() at its last session equals the best linear prediction there", () => {
  const own = [0.002, 0.001, 0.003, 0.001, 0.002, 0.004];
  const fit = fitProgress([run(own)]);
  const variance = fit.scatter.variance!;
  // The sag at the end itself, unread, as a seventh column: kriging by hand.
  const at = (a: number, b: number) => variance * Math.min(a, b);
  const covariance = WORK.map((a, i) =>
    WORK.map((b, j) => at(a, b) + (i === j ? own[i] ** 2 : 0))
  );
  const columns = [
    { name: "start", values: WORK.map(() => 1) },
    { name: "rate", values: WORK },
  ];
  const weight = (values: number[]) =>
    generalisedLeastSquares(values, columns, covariance);
  const { coefficients: [a, b] } = weight(SAGS);
  const residuals = SAGS.map((sag, i) =>
    sag - a.estimate! - b.estimate! * WORK[i]
  );
  // Departure at the end: k' V⁻¹ residuals, by solving V x = residuals.
  const x = solve(covariance, residuals);
  const departure = WORK.reduce((sum, w, i) => sum + at(w, 41) * x[i], 0);
  close(fit.level.value, a.estimate! + b.estimate! * 41 + departure);
  const k = WORK.map((w) => at(w, 41));
  const vk = solve(covariance, k);
  const towards = [
    1 - vk.reduce((sum, v) => sum + v, 0),
    41 - vk.reduce((sum, v, i) => sum + v * WORK[i], 0),
  ];
  const [[p, q], [, r]] = weight(SAGS).covariance;
  close(
    fit.level.own ** 2,
    at(41, 41) - k.reduce((sum, v, i) => sum + v * vk[i], 0) +
      p * towards[0] ** 2 + 2 * q * towards[0] * towards[1] +
      r * towards[1] ** 2,
  );
});

/** Gaussian elimination. */
function solve(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]]);
  for (let c = 0; c < rows.length; c++) {
    for (let i = 0; i < rows.length; i++) {
      if (i === c) continue;
      const factor = rows[i][c] / rows[c][c];
      for (let j = c; j <= rows.length; j++) rows[i][j] -= factor * rows[c][j];
    }
  }
  return rows.map((row, i) => row[rows.length] / row[i]);
}

Deno.test("fitProgress() lets the ring's error scale rate and level, and never average out", () => {
  const fit = fitProgress([run(0.002, (sag) => ({ ring: 0.001 * sag }))]);
  close(fit.rate.common.ring, 0.001 * fit.rate.value);
  close(fit.level.common.ring, 0.001 * fit.level.value);
  const plain = fitProgress([run()]);
  equal(fit.rate.value, plain.rate.value);
  equal(fit.rate.own, plain.rate.own);
});

Deno.test("fitProgress() gives a zero that all sessions share to the level and not to the rate", () => {
  const fit = fitProgress([run(0.002, () => ({ flat: 0.0004 }))]);
  close(fit.level.common.flat, 0.0004);
  ok(Math.abs(fit.rate.common.flat) < 1e-15);
});

Deno.test("fitProgress() shares one rate over runs and gives each its own start", () => {
  const [first, second] = [run().slice(0, 3), run().slice(3)];
  const moved = second.map((one) => ({
    ...one,
    work: one.work + 100,
    sag: { ...one.sag, value: one.sag.value - 0.3 },
  }));
  const fit = fitProgress([first, moved], { scatter: "by session" });
  equal(fit.dof, 3);
  // By hand: slopes about each run's own mean, pooled.
  let [xy, xx] = [0, 0];
  for (const part of [first, second]) {
    const mean = (pick: (one: ProgressSession) => number) =>
      part.reduce((sum, one) => sum + pick(one), 0) / part.length;
    const [w, s] = [mean((one) => one.work), mean((one) => one.sag.value)];
    for (const one of part) {
      xy += (one.work - w) * (one.sag.value - s);
      xx += (one.work - w) ** 2;
    }
  }
  close(fit.rate.value, xy / xx);
});

Deno.test("fitProgress() through two sessions knows the readings' scatter alone", () => {
  const fit = fitProgress([run().slice(0, 2)]);
  equal(fit.dof, 0);
  deepEqual(fit.scatter, { model: "accumulates" });
  close(fit.rate.own, 0.002 * Math.SQRT2 / 8);
});

Deno.test("fitProgress() pools the scatter of zeroings, by gauge, over sessions", () => {
  const sessions = run().map((one, i) => ({
    ...one,
    zeroings: 3,
    sag: { ...one.sag, own: i % 2 ? 0.001 : 0.003, dof: 2 },
  }));
  const pooled = Math.sqrt((0.001 ** 2 + 0.003 ** 2) / 2);
  close(fitProgress([sessions]).typicalOwn, pooled);
  // One of a single zeroing takes √3 of that; it has none of its own to show.
  const single = sessions.map((one, i) =>
    i === 2 ? { ...one, zeroings: 1, sag: { ...one.sag, own: 0, dof: 1 } } : one
  );
  const shown = Math.sqrt((3 * 0.001 ** 2 + 2 * 0.003 ** 2) / 5);
  close(
    fitProgress([single]).typicalOwn,
    Math.sqrt(6 / (5 / shown ** 2 + 1 / (3 * shown ** 2))),
  );
  const other = sessions.map((one, i) => ({
    ...one,
    gauge: i % 2 ? "a" : "b",
  }));
  close(
    fitProgress([other]).typicalOwn,
    Math.sqrt(6 / (3 / 0.001 ** 2 + 3 / 0.003 ** 2)),
  );
});

Deno.test("fitProgress() never grows surer than the readings allow when they agree too well", () => {
  const perfect = run(0.002).map((one) => ({
    ...one,
    sag: { ...one.sag, value: 3.4 + 0.004 * one.work },
  }));
  const fit = fitProgress([perfect]);
  // 2 % quantile of chi-square at 4 degrees of freedom: 0.4294 (NIST handbook
  // method; value from memory, confirmed by its own probability in statistics).
  const line = fitLine(WORK, SAGS);
  const own = 0.002 * line.slopeError / line.residualDeviation;
  close(fit.rate.own, own * Math.sqrt(0.42940 / 4), 1e-4);
});

Deno.test("fitProgress() refuses no work, work that decreases, and what is no number", () => {
  throws(() => fitProgress([run().slice(0, 1)]), {
    name: "RangeError",
    message:
      "Cannot fit progress as there must be two sessions with work between them: current value of the work is 0",
  });
  throws(() => fitProgress([[...run()].reverse()]), {
    name: "RangeError",
    message:
      "Cannot fit progress as work must not decrease from session to session: current value at S5 is 30 after 41",
  });
  const [one] = run();
  throws(() => fitProgress([[{ ...one, work: NaN }]]), {
    name: "RangeError",
    message:
      "Cannot fit progress as work, sag and its own uncertainty must be finite and the uncertainty 0 or more: current value at S1 is NaN, 3.402 mm and 0.002 mm",
  });
});

Deno.test("predictProgress() adds the work's scatter in proportion to the work, or once", () => {
  const steps = fitProgress([run(0.0001)]);
  const once = fitProgress([run(0.0001)], { scatter: "by session" });
  const grown = (fit: typeof steps, more: number) =>
    predictProgress(fit, more).own ** 2 - fit.level.own ** 2 -
    2 * more * fit.covariance - (more * fit.rate.own) ** 2;
  close(grown(steps, 10), 10 * steps.scatter.variance!);
  close(grown(once, 10), once.scatter.variance!);
  close(
    predictProgress(steps, 10).value,
    steps.level.value + 10 * steps.rate.value,
  );
  throws(() => predictProgress(steps, -1), {
    name: "RangeError",
    message:
      "Cannot predict progress as the work to come must be 0 or more and finite: current value is -1",
  });
});

Deno.test("progressLimits() adds Student's and the normal limit in quadrature", () => {
  const { low, high } = progressLimits({
    value: 5,
    own: 3,
    dof: 4,
    common: { ring: 4 },
  });
  // t(0.975, 4) = 2.776445, z = 1.959964 (NIST/SEMATECH e-Handbook 1.3.6.7).
  close(high - 5, Math.hypot(3 * 2.776445, 4 * 1.959964));
  close(5 - low, high - 5);
});
