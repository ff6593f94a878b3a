import { deepEqual, equal, ok, rejects } from "node:assert/strict";
import Papa from "papaparse";
import { prose } from "sagbook/display/prose.ts";
import { table } from "sagbook/display/table.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import {
  differencesTable,
  zonesTable,
} from "sagbook/narrative/report_tables.ts";
import { tableCsv } from "sagbook/narrative/table_csv.ts";
import { HOSTILE } from "../tasks/_hostile.ts";

const rowsOf = (csv: string, delimiter = ","): string[][] => {
  equal(csv[0], "\uFEFF", "the mark of UTF-8");
  ok(csv.endsWith("\r\n") && !/[^\r]\n/.test(csv), "CRLF");
  const { data, errors } = Papa.parse<string[]>(csv.slice(1).trimEnd(), {
    delimiter,
    newline: "\r\n",
  });
  deepEqual(errors, []);
  return data;
};

Deno.test("tableCsv() puts the unit into the name and numbers alone below it", async () => {
  const rows = rowsOf(
    await tableCsv(table([
      {
        zone: "50 %",
        sag: "0.6012 ± 0.0011 mm",
        range: "−0.52 µm to 1.79 µm",
        scatter: "0.76 µm (0.65 µm to 0.91 µm)",
        turn: "45°",
        share: "12 %",
        many: "−8.96 × 10⁶",
        wait: "12 min",
      },
      {
        zone: "edge",
        sag: "0.5990 mm",
        range: "needs two sets",
        scatter: "—",
        turn: "",
        share: "below 1 %",
        many: "known",
        wait: "1.9 h",
      },
    ])),
  );
  deepEqual(rows, [
    [
      "zone",
      "sag (mm)",
      "sag ± (mm)",
      "range low (µm)",
      "range high (µm)",
      "scatter (µm)",
      "scatter low (µm)",
      "scatter high (µm)",
      "turn (°)",
      "share (%)",
      "many",
      "wait",
      "unit of wait",
    ],
    [
      ...["50 %", "0.6012", "0.0011", "-0.52", "1.79", "0.76", "0.65", "0.91"],
      ...["45", "12", "-8.96e6", "12", "min"],
    ],
    [
      ...["edge", "0.5990", "", "needs two sets", "", "", "", ""],
      ...["", "below 1 %", "known", "1.9", "h"],
    ],
  ]);
});

Deno.test("tableCsv() leaves names as they are: per cents among words, dates, leading noughts, mixed units", async () => {
  const rows = [
    { name: "a", zone: "50 %", date: "2031-03-04", no: "007", of: "1 mm" },
    { name: "b", zone: "edge", date: "2031-03-05", no: "+8", of: "1 mm, 2 in" },
  ];
  const [head, ...read] = rowsOf(await tableCsv(table(rows)));
  deepEqual(head, ["name", "zone", "date", "no", "of (mm)"]);
  deepEqual(
    read,
    rows.map((row) => [
      ...Object.values(row).slice(0, 4),
      row.of === "1 mm" ? "1" : row.of,
    ]),
  );
});

Deno.test("tableCsv() starts no formula, and Papa Parse reads every text back", async () => {
  const texts = Object.values(HOSTILE);
  const made = table(texts.map((text) => ({ name: text, note: text })));
  for (const decimalComma of [false, true]) {
    const csv = await tableCsv(made, { decimalComma });
    const [, ...read] = rowsOf(csv, decimalComma ? ";" : ",");
    equal(read.length, texts.length);
    for (const [i, cells] of read.entries()) {
      for (const cell of cells) {
        ok(!/^[\s\u00a0]*[=+\-@|#\t\r]/.test(cell), cell.slice(0, 40));
        const shown = texts[i].replace(/[ \t\r\n\f]+/g, " ").trim()
          .replace(/[\u00a0\u2007\u2009\u202f]/g, " ");
        equal(cell.replace(/^'(?=[=+\-@|#'])/, ""), shown);
      }
    }
  }
});

Deno.test("tableCsv() writes decimal commas with semicolons, and negative numbers stay numbers", async () => {
  const csv = await tableCsv(
    table([{
      zone: "a, b",
      change: "−1.25 µm",
      all: 3.5,
      small: "−2.5 × 10⁻⁸",
    }]),
    { decimalComma: true },
  );
  equal(
    csv,
    '\uFEFFzone;change (µm);all;small\r\n"a, b";-1,25;3,5;-2,5e-8\r\n',
  );
});

Deno.test("tableCsv() of a report gives the numbers of its page digit for digit", async () => {
  const report = await openPiece("data/metric-250");
  const zones = rowsOf(await tableCsv(zonesTable(report)));
  const { session } = report;
  equal(zones.length - 1, session!.zones.length);
  const sag = zones[0].indexOf("mean sag (mm)");
  for (const [i, { mean }] of session!.zones.entries()) {
    ok(Math.abs(Number(zones[i + 1][sag]) - mean.sag) <= 0.00005000001);
  }
  const pairs = rowsOf(await tableCsv(differencesTable(report)));
  const column = pairs[0].indexOf("difference (µm)");
  for (const [i, { mean }] of session!.differences.entries()) {
    // The page gives the outer zone less the inner one.
    ok(Math.abs(Number(pairs[i + 1][column]) + mean * 1000) <= 0.005000001);
  }
});

Deno.test("tableCsv() refuses what shows no table", async () => {
  await rejects(tableCsv(prose("no table")), {
    name: "TypeError",
    message: "Cannot write CSV as the value must show a table: it shows none",
  });
});

Deno.test("tableCsv() takes a budget in inches apart as it does one in millimetres", async () => {
  for (const unit of ["mm", "in"]) {
    const rows = rowsOf(
      await tableCsv(table([
        { source: "repetition", size: `1.43 × 10⁻⁵ ${unit}` },
        { source: "flat", size: `1.28 × 10⁻⁶ 1/${unit}` },
        { source: "scale", size: "0.0005" },
      ])),
    );
    deepEqual(rows, [
      ["source", "size", "unit of size"],
      ["repetition", "1.43e-5", unit],
      ["flat", "1.28e-6", `1/${unit}`],
      ["scale", "0.0005", ""],
    ]);
  }
});
