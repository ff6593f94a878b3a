import { deepEqual, equal, ok, throws } from "node:assert/strict";
import { millimetres as mm } from "sagbook/units/length.ts";
import {
  amountIn,
  KNOWN_UNITS,
  lengthFrom,
  type LengthUnitName,
  parseUnit,
} from "sagbook/units/length_unit.ts";
import { type LengthContext, parseLength } from "sagbook/units/parse_length.ts";

const value = (text: string, context?: LengthContext): unknown => {
  const read = parseLength(text, context);
  return read.kind === "length" ? read.value : read.kind;
};

/** The cells of one line of the case file, with doubled quotes undone. */
const unitRows = (): string[][] =>
  Deno.readTextFileSync(
    new URL("../cases/C05-unit-words.csv", import.meta.url),
  ).trimEnd().split("\n").slice(1).map((line) =>
    line.split(",").map((cell) =>
      cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell
    )
  );

Deno.test("parseUnit() and parseLength() read 14 spellings of one length (case C05)", () => {
  const rows = unitRows();
  equal(rows.length, 17);
  for (const [, , , , , reading, unit] of rows.slice(0, 14)) {
    const named = parseUnit(unit);
    ok(named.kind === "unit", unit);
    const apart = value(reading, { defaultUnit: named.unit });
    ok(Math.abs((apart as number) - 0.715) < 1e-6, `${reading} ${unit}`);
    const together = value(`${reading}${unit}`);
    ok(Math.abs((together as number) - 0.715) < 1e-6, `${reading}${unit}`);
  }
});

Deno.test("parseUnit() refuses what it does not know with the list (case C05)", () => {
  const [blank, furlong, capital] = unitRows().slice(14).map((row) => row[6]);
  deepEqual(parseUnit(blank), { kind: "blank" });
  for (const unit of [furlong, capital]) {
    deepEqual(parseUnit(unit), {
      kind: "refused",
      reason: `"${unit}" is not a known unit of length: ${KNOWN_UNITS}`,
    });
    deepEqual(parseLength(`0.715 ${unit}`, { defaultUnit: "mm" }), {
      kind: "refused",
      part: "unit",
      reason: `"${unit}" is not a known unit of length: ${KNOWN_UNITS}`,
    });
  }
});

Deno.test("parseLength() takes the default unit and says so, or refuses", () => {
  deepEqual(parseLength("0.715", { defaultUnit: "mm" }), {
    kind: "length",
    value: 0.715,
    amount: 0.715,
    unit: "mm",
    unitAssumed: true,
    decimals: 3,
    step: 0.001,
  });
  deepEqual(parseLength("0.715"), {
    kind: "refused",
    part: "missing unit",
    reason: "it names no unit and none is set for it",
  });
  equal(value("0.715in", { defaultUnit: "mm" }), 0.715 * 127 / 5);
});

Deno.test("parseLength() reads fractions of an inch exactly", () => {
  const cases: [string, number][] = [
    ["11 13/16 in", 300.0375],
    ["11-13/16 in", 300.0375],
    ['11 13/16"', 300.0375],
    ["11 13⁄16 in", 300.0375],
    ["13/16 in", 20.6375],
    ["-1 1/2 in", -38.1],
    ["− ½ in", -12.7],
    ["11½ in", 292.1],
    ["11 ⅞ inches", 301.625],
    ["11.81 in", 299.974],
    ['0.0237"', 0.60198],
  ];
  for (const [text, expected] of cases) {
    ok(Math.abs((value(text) as number) - expected) < 1e-12, text);
  }
  const read = parseLength("11 13/16 in");
  ok(read.kind === "length");
  equal(read.step, 25.4 / 16);
  equal(read.decimals, undefined);
  for (
    const [text, reason] of [
      ["3/0 in", "it divides by 0"],
      ["1 3/2 in", "the fraction after a whole number must be below 1"],
    ]
  ) deepEqual(parseLength(text), { kind: "refused", part: "number", reason });
});

Deno.test("parseLength() gives the display step that the decimals show", () => {
  const steps: [string, number][] = [
    ["0.7150 mm", 1e-4],
    ["715 um", 1e-3],
    ["0.02815 in", 2.54e-4],
    ["28.15 thou", 2.54e-4],
    ["12,5 mm", 0.1],
  ];
  for (const [text, step] of steps) {
    const read = parseLength(text);
    ok(read.kind === "length" && Math.abs(read.step - step) < 1e-15, text);
  }
});

Deno.test("parseLength() gives both lengths where the number has two readings", () => {
  deepEqual(parseLength("1.430 um", { decimal: "," }), {
    kind: "ambiguous",
    readings: [lengthFrom(1.43, "µm"), 1.43],
    amounts: [1.43, 1430],
    unit: "µm",
    unitAssumed: false,
  });
});

Deno.test("parseLength() refuses two lengths, feet, lone units and words; blank is blank", () => {
  for (
    const text of ["11 ft 3 in", "300 mm 5", "mm", "wide", "5 e", "11' 3\""]
  ) {
    equal(value(text), "refused", text);
  }
  equal(value(" \u00a0"), "blank");
});

Deno.test("lengthFrom() and amountIn() undo each other in every unit", () => {
  const units: LengthUnitName[] = [
    "mm",
    "cm",
    "m",
    "µm",
    "nm",
    "in",
    "thou",
    "µin",
  ];
  for (const unit of units) {
    const back = amountIn(lengthFrom(0.7153, unit), unit);
    ok(Math.abs(back - 0.7153) < 1e-15, unit);
    deepEqual(parseUnit(unit), { kind: "unit", unit });
  }
  equal(lengthFrom(1, "in"), 25.4);
  equal(amountIn(mm(25.4), "thou"), 1000);
  throws(() => lengthFrom(NaN, "mm"), RangeError);
});
