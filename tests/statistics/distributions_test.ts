import { equal, ok, throws } from "node:assert/strict";
import {
  normalProbability,
  normalQuantile,
} from "sagbook/statistics/normal_distribution.ts";
import {
  studentTProbability,
  studentTQuantile,
} from "sagbook/statistics/student_t_distribution.ts";
import {
  chiSquareProbability,
  chiSquareQuantile,
} from "sagbook/statistics/chi_square_distribution.ts";
import { fProbability, fQuantile } from "sagbook/statistics/f_distribution.ts";
import { near, type Reference, references } from "./_references.ts";

type Tail = "lower" | "upper";

/** The two degrees of freedom of an F row, in either way of writing them. */
function dofPair(row: Reference): [number, number] {
  return row.df ?? [row.df1, row.df2];
}

function probability(row: Reference, x: number, tail: Tail): number {
  switch (row.distribution) {
    case "normal":
      return normalProbability(x, tail);
    case "t":
      return studentTProbability(x, row.df, tail);
    case "chi2":
    case "chi_square":
      return chiSquareProbability(x, row.df, tail);
    case "F":
      return fProbability(x, ...dofPair(row), tail);
  }
  throw new TypeError(`unknown distribution ${row.distribution}`);
}

function quantile(row: Reference, p: number, tail: Tail): number {
  switch (row.distribution) {
    case "normal":
      return normalQuantile(p, tail);
    case "t":
      return studentTQuantile(p, row.df, tail);
    case "chi2":
    case "chi_square":
      return chiSquareQuantile(p, row.df, tail);
    case "F":
      return fQuantile(p, ...dofPair(row), tail);
  }
  throw new TypeError(`unknown distribution ${row.distribution}`);
}

for (const [name, file] of references("distributions")) {
  Deno.test(`quantiles and probabilities agree with each of the ${file.data.length} rows of ${name}`, () => {
    for (const row of file.data) {
      const label = JSON.stringify(row);
      if (row.what === "quantile") {
        const tail: Tail = "upper_tail_probability" in row ? "upper" : "lower";
        const found = quantile(row, row[`${tail}_tail_probability`], tail);
        const allowed = file.tolerance.quantile_relative;
        if (row.value === 0) ok(Math.abs(found) <= allowed, label);
        else near(found, row.value, allowed, label);
        continue;
      }
      const smaller: Tail = row.lower < row.upper ? "lower" : "upper";
      for (const tail of ["lower", "upper"] as const) {
        const found = probability(row, row.x, tail);
        if (row[tail] < 1e-300) ok(found < 1e-290, label);
        else {near(
            found,
            row[tail],
            tail === smaller
              ? file.tolerance.cdf_relative_of_the_smaller_tail
              : 1e-10,
            label,
          );}
      }
    }
  });
}

for (const [name, file] of references("distribution-tables")) {
  Deno.test(`quantiles agree with the printed tables of ${name}`, () => {
    for (const row of file.data) {
      const found = quantile(row, row.cumulative_probability, "lower");
      const half = 0.5 * 10 ** -row.decimals;
      ok(
        Math.abs(found - row.value) <= half * (1 + 1e-9),
        `${found} ${JSON.stringify(row)}`,
      );
    }
  });
}

Deno.test("studentTQuantile() and fQuantile() reach the normal and chi-square limits", () => {
  equal(studentTQuantile(0.975, Infinity), normalQuantile(0.975));
  near(studentTQuantile(0.975, 1e9), normalQuantile(0.975), 1e-8, "t");
  equal(
    fQuantile(0.95, 3, Infinity),
    chiSquareQuantile(0.95, 3) / 3,
  );
  equal(studentTProbability(2, Infinity), normalProbability(2));
  equal(fProbability(2, 3, Infinity), chiSquareProbability(6, 3));
});

Deno.test("fQuantile() is the square of studentTQuantile() with one degree of freedom above the line", () => {
  for (const dof of [1, 2.5, 7, 40]) {
    for (const p of [1e-6, 0.01, 0.2]) {
      near(
        fQuantile(2 * p, 1, dof, "upper"),
        studentTQuantile(p, dof, "upper") ** 2,
        1e-11,
        `dof ${dof}, tail ${p}`,
      );
    }
  }
});

Deno.test("probabilities and quantiles undo each other on both sides", () => {
  for (const tail of ["lower", "upper"] as const) {
    for (const p of [1e-12, 0.03, 0.5, 0.8]) {
      near(normalProbability(normalQuantile(p, tail), tail), p, 1e-9, "normal");
      near(
        studentTProbability(studentTQuantile(p, 3.5, tail), 3.5, tail),
        p,
        1e-9,
        "t",
      );
      near(
        chiSquareProbability(chiSquareQuantile(p, 3.5, tail), 3.5, tail),
        p,
        1e-9,
        "chi-square",
      );
      near(
        fProbability(fQuantile(p, 3.5, 6, tail), 3.5, 6, tail),
        p,
        1e-9,
        "F",
      );
    }
  }
});

Deno.test("distributions are 0 or 1 at the ends of their range", () => {
  equal(chiSquareProbability(0, 3), 0);
  equal(chiSquareProbability(Infinity, 3, "upper"), 0);
  equal(fProbability(0, 3, 4, "upper"), 1);
  equal(fProbability(Infinity, 3, 4), 1);
  equal(studentTProbability(0, 3), 0.5);
  equal(studentTProbability(Infinity, 3, "upper"), 0);
  equal(normalProbability(-Infinity), 0);
});

Deno.test("distributions refuse what is not a probability, a value or degrees of freedom", () => {
  throws(() => normalQuantile(1), {
    name: "RangeError",
    message:
      "Cannot find a normal quantile as probability must be above 0 and below 1: current value is 1",
  });
  throws(() => normalProbability(NaN), {
    name: "RangeError",
    message:
      "Cannot find a normal probability as the value must be a number: current value is NaN",
  });
  throws(() => studentTProbability(NaN, 3), {
    name: "RangeError",
    message:
      "Cannot find a probability of Student's t as the value must be a number: current value is NaN",
  });
  throws(() => studentTQuantile(0.5, 0), {
    name: "RangeError",
    message:
      "Cannot find a quantile of Student's t as degrees of freedom must be above 0: current value is 0",
  });
  throws(() => chiSquareQuantile(0.5, Infinity), {
    name: "RangeError",
    message:
      "Cannot find a chi-square quantile as degrees of freedom must be finite: current value is Infinity",
  });
  throws(() => chiSquareProbability(-1, 2), {
    name: "RangeError",
    message:
      "Cannot find a chi-square probability as the value must be 0 or more: current value is -1",
  });
  throws(() => fProbability(-1, 2, 3), {
    name: "RangeError",
    message:
      "Cannot find a probability of F as the value must be 0 or more: current value is -1",
  });
  throws(() => fQuantile(0.5, Infinity, 3), {
    name: "RangeError",
    message:
      "Cannot find a quantile of F as numerator degrees of freedom must be finite: current value is Infinity",
  });
  throws(() => fQuantile(0.5, 3, -1), {
    name: "RangeError",
    message:
      "Cannot find a quantile of F as denominator degrees of freedom must be above 0: current value is -1",
  });
});
