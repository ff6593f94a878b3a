import { deepEqual, equal, ok, throws } from "node:assert/strict";
import {
  formatLength,
  formatWithUncertainty,
  groupFigures,
  readableUnit,
  roundToUncertainty,
} from "sagbook/units/format_length.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { parseLength } from "sagbook/units/parse_length.ts";
import { parseNumber } from "sagbook/units/parse_number.ts";
import { decimalsFor, roundDecimal } from "sagbook/units/round_decimal.ts";
import { Random } from "sagbook/numerics/random.ts";

const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("formatWithUncertainty() keeps two figures of U and stops the value there", () => {
  const cases: [number, number, string][] = [
    [2519.7368, 1.3742, "2519.7 ± 1.4 mm"],
    [2519.7368, 0.0996, "2519.74 ± 0.10 mm"],
    [2519.7368, 9.96, "2520 ± 10 mm"],
    [2519.7368, 13.6, "2520 ± 14 mm"],
    [180_003.2, 1240, "180 000 ± 1200 mm"],
    [180_003.2, 96_400, "180 000 ± 96 000 mm"],
    [0.715, 0.00052, "0.71500 ± 0.00052 mm"],
    [0.3, 1.4, "0.3 ± 1.4 mm"],
    [-0.0004, 0.012, "0.000 ± 0.012 mm"],
    [-12.345, 0.12, "−12.34 ± 0.12 mm"],
  ];
  for (const [value, uncertainty, text] of cases) {
    equal(plain(formatWithUncertainty(mm(value), mm(uncertainty))), text);
  }
});

Deno.test("formatWithUncertainty() agrees with the GUM's own rounded results", () => {
  // JCGM 100:2008, 7.2.6: ρ(25 °C) = 10.057 62 Ω, u 27 mΩ → 10.058 Ω.
  equal(roundToUncertainty(10.05762, 0.027).value, "10.058");
  // JCGM 100:2008, H.1.7: l = 50 000 838 nm, u 32 nm.
  const gauge = roundToUncertainty(50_000_838, 31.66);
  equal(plain(gauge.value), "50 000 838");
  equal(gauge.uncertainty, "32");
});

Deno.test("formatWithUncertainty() writes inches and micrometres with figures of their own", () => {
  const write = (value: number, u: number, unit: "in" | "µm" | "thou") =>
    plain(formatWithUncertainty(mm(value), mm(u), unit));
  equal(write(2519.7368, 1.3742, "in"), "99.202 ± 0.054 in");
  equal(write(0.0123, 0.00042, "µm"), "12.30 ± 0.42 µm");
  equal(write(0.0254, 0.00254, "thou"), "1.00 ± 0.10 thou");
});

Deno.test("roundToUncertainty() writes no ± for an uncertainty of 0", () => {
  deepEqual(roundToUncertainty(2520.84, 0), {
    value: "2520.84",
    uncertainty: "",
    decimals: 2,
  });
  equal(roundToUncertainty(1 / 3, 0).value, "0.333333333333");
  equal(roundToUncertainty(0, 0).value, "0");
  equal(roundToUncertainty(3e15, 0).decimals, 0);
  equal(plain(formatWithUncertainty(mm(300), mm(0))), "300 mm");
});

Deno.test("roundToUncertainty() never shows a figure that U does not support, nor moves by more than half of the last", () => {
  const random = new Random(1);
  for (let i = 0; i < 3000; i++) {
    const u = 10 ** (8 * random.uniform() - 5);
    const value = random.normal() * 10 ** (6 * random.uniform() - 2);
    const rounded = roundToUncertainty(value, u);
    const read = (text: string): number => {
      const number = parseNumber(text, { decimal: "." });
      ok(number.kind === "number");
      return number.value;
    };
    const last = 10 ** -rounded.decimals;
    ok(Math.abs(read(rounded.uncertainty) - u) <= last * 0.500001);
    ok(Math.abs(read(rounded.value) - value) <= last * 0.500001);
    const figures = Math.round(read(rounded.uncertainty) / last);
    ok(figures >= 10 && figures <= 99, `${u}: ${rounded.uncertainty}`);
  }
});

Deno.test("roundDecimal() sends decimal ties to the even figure", () => {
  const cases: [number, number, string][] = [
    [0.5, 0, "0"],
    [1.5, 0, "2"],
    [2.5, 0, "2"],
    [-2.5, 0, "-2"],
    [2.675, 2, "2.68"],
    [1.005, 2, "1.00"],
    [0.15, 1, "0.2"],
    [0.25, 1, "0.2"],
    [25, -1, "20"],
    [35, -1, "40"],
    [4, -1, "0"],
    [-0.4, 0, "0"],
    [1e21, 0, "1000000000000000000000"],
    [1e-7, 9, "0.000000100"],
    [123.456, 5, "123.45600"],
  ];
  for (const [value, decimals, text] of cases) {
    equal(roundDecimal(value, decimals), text, `${value} to ${decimals}`);
  }
});

Deno.test("decimalsFor() finds the place of the second figure, also after a carry", () => {
  const cases: [number, number][] = [
    [1.4, 1],
    [0.0994, 3],
    [0.0996, 2],
    [9.94, 1],
    [9.96, 0],
    [10, 0],
    [99.4, 0],
    [99.6, -1],
    [1240, -2],
  ];
  for (const [u, decimals] of cases) {
    const place = decimalsFor(u);
    equal(place, decimals, `${u}`);
    const figures = Number(roundDecimal(u, place)) * 10 ** place;
    ok(figures >= 9.999 && figures <= 99.001, `${u}: ${place}`);
  }
  equal(decimalsFor(0.0314, 1), 2);
});

Deno.test("groupFigures() sets off five figures or more before the point", () => {
  equal(plain(groupFigures("9999.9999")), "9999.9999");
  equal(plain(groupFigures("-1234567.1234567")), "−1 234 567.1234567");
});

Deno.test("formatLength() writes what parseLength() reads back", () => {
  const random = new Random(2);
  const units = ["mm", "µm", "in", "thou", "µin", "cm", "m", "nm"] as const;
  for (let i = 0; i < 800; i++) {
    const value = mm(random.normal() * 300);
    const unit = units[i % units.length];
    const text = formatLength(value, unit, unit === "nm" ? 1 : 7);
    const read = parseLength(text, { decimal: "." });
    ok(read.kind === "length", text);
    ok(Math.abs(read.value - value) <= 0.51 * read.step, text);
    equal(read.unit, unit);
  }
});

Deno.test("readableUnit() keeps small lengths out of strings of zeros", () => {
  const metric = [0, 5e-4, 1e-3, 0.0999, 0.1, 3000].map((x) =>
    readableUnit(mm(x), "mm")
  );
  deepEqual(metric, ["mm", "nm", "µm", "µm", "mm", "mm"]);
  const inch = [0, 0.001, 0.0254, -0.2, 0.3].map((x) =>
    readableUnit(mm(x), "in")
  );
  deepEqual(inch, ["in", "µin", "thou", "thou", "in"]);
});

Deno.test("roundToUncertainty() and roundDecimal() refuse what has no place to round to", () => {
  throws(() => roundToUncertainty(1, NaN), {
    name: "RangeError",
    message:
      "Cannot find a place to round to as the uncertainty must be finite and above 0: current value is NaN",
  });
  throws(() => roundToUncertainty(1, -1), RangeError);
  throws(() => roundToUncertainty(1, Infinity), RangeError);
  throws(() => roundToUncertainty(NaN, 1), {
    name: "RangeError",
    message: "Cannot round a number as it must be finite: current value is NaN",
  });
  throws(() => roundDecimal(1, 0.5), {
    name: "RangeError",
    message:
      "Cannot round a number as the place must be a whole number from -300 to 300: current value is 0.5",
  });
});
