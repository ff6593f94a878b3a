import { equal, ok, throws } from "node:assert/strict";
import {
  normalRangeProbability,
  studentizedRangeProbability,
  studentizedRangeQuantile,
} from "sagbook/statistics/studentized_range.ts";
import { studentTProbability } from "sagbook/statistics/student_t_distribution.ts";
import { normalProbability } from "sagbook/statistics/normal_distribution.ts";
import { close, near, references } from "./_references.ts";

for (const [name, file] of references("studentized-range")) {
  Deno.test(`studentizedRangeQuantile() agrees with every row of ${name}`, () => {
    for (const row of file.data) {
      const label = JSON.stringify(row);
      const found = studentizedRangeQuantile(
        row.upper_tail_probability,
        row.k,
        row.df,
        "upper",
      );
      near(found, row.q, file.tolerance.relative, label);
      if (row.printed !== undefined) {
        close(found, row.printed, file.tolerance.printed_absolute, label);
      }
    }
  });
}

Deno.test("studentizedRangeProbability() of two means is Student's t of both sides", () => {
  for (const dof of [1, 2.5, 9, 200]) {
    for (const q of [0.01, 1, 4, 30]) {
      close(
        studentizedRangeProbability(q, 2, dof, "upper"),
        2 * studentTProbability(q / Math.SQRT2, dof, "upper"),
        1e-11,
        `q ${q}, dof ${dof}`,
      );
    }
  }
});

Deno.test("studentizedRangeProbability() keeps 1e-11 for many means and few degrees of freedom", () => {
  // R 4.2.2, ptukey(q, k, df, lower.tail = FALSE), itself good to about 1e-9
  close(
    studentizedRangeProbability(3, 8, 4, "upper"),
    0.515317094935261,
    1e-9,
    "8 of 4",
  );
  close(
    studentizedRangeProbability(4, 50, 30, "upper"),
    0.735073074379249,
    1e-6,
    "50 of 30",
  );
  equal(studentizedRangeProbability(0, 3, 5), 0);
});

Deno.test("normalRangeProbability() of two values is the folded normal", () => {
  for (const w of [0, 1e-3, 0.5, 3, 12, 50]) {
    close(
      normalRangeProbability(w, 2),
      2 * normalProbability(w / Math.SQRT2) - 1,
      1e-13,
      `range ${w}`,
    );
  }
});

Deno.test("studentizedRangeProbability() with known spread is normalRangeProbability()", () => {
  equal(
    studentizedRangeProbability(3, 4, Infinity),
    normalRangeProbability(3, 4),
  );
  ok(
    Math.abs(
      studentizedRangeProbability(3, 4, 1e7) - normalRangeProbability(3, 4),
    ) < 1e-6,
  );
});

Deno.test("studentized range refuses one mean, half a degree of freedom and a negative value", () => {
  throws(() => studentizedRangeQuantile(0.05, 1, 5), {
    name: "RangeError",
    message:
      "Cannot find a quantile of a studentized range as the number of values must be a whole number of at least 2: current value is 1",
  });
  throws(() => studentizedRangeQuantile(0.05, 3, 0.5), {
    name: "RangeError",
    message:
      "Cannot find a quantile of a studentized range as degrees of freedom must be at least 1: current value is 0.5",
  });
  throws(() => studentizedRangeProbability(-1, 3, 5), {
    name: "RangeError",
    message:
      "Cannot find a probability of a studentized range as the value must be 0 or more: current value is -1",
  });
  throws(() => normalRangeProbability(NaN, 3), {
    name: "RangeError",
    message:
      "Cannot find a probability of a range as the value must be 0 or more: current value is NaN",
  });
});
