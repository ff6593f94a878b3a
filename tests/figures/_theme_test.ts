import { deepEqual, equal, ok } from "node:assert/strict";
import { type Role, roleOf, ROLES } from "../../lib/figures/_theme.ts";

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) =>
    parseInt(hex.slice(i, i + 2), 16) / 255
  )
    .map((c) => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio as WCAG 2.2 defines it. */
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

/** What red-green blind eyes see (Machado, Oliveira, Fernandes 2009, severity 1). */
const BLIND = {
  protan: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [
    -0.003882,
    -0.048116,
    1.051998,
  ]],
  deutan: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [
    -0.01182,
    0.04294,
    0.968881,
  ]],
};

function seen(hex: string, matrix: number[][]): number[] {
  const linear = [1, 3, 5].map((i) =>
    (parseInt(hex.slice(i, i + 2), 16) / 255) ** 2.2
  );
  return matrix.map((row) =>
    Math.max(0, row.reduce((sum, m, i) => sum + m * linear[i], 0)) ** (1 / 2.2)
  );
}

Deno.test("ROLES: text has at least 4.5 to 1 and marks 3 to 1 on paper and on every ground they meet (WCAG 2.2, 1.4.3 and 1.4.11)", () => {
  for (const theme of [0, 1] as const) {
    const color = (role: Role) => ROLES[role][theme];
    for (const text of ["ink", "quiet"] as const) {
      ok(contrast(color(text), color("paper")) >= 4.5, `${text} ${theme}`);
    }
    const marks = [
      "first",
      "second",
      "third",
      "alarm",
      "bandEdge",
      "quiet",
      "middle",
      "low",
      "lowest",
      "high",
      "highest",
    ] as const;
    for (const mark of marks) {
      const ratio = contrast(color(mark), color("paper"));
      ok(ratio >= 3, `${mark} ${theme}: ${ratio}`);
    }
    for (const ground of ["band", "haze", "veil"] as const) {
      for (
        const mark of ["ink", "first", "second", "third", "alarm"] as const
      ) {
        const ratio = contrast(color(mark), color(ground));
        ok(ratio >= 3, `${mark} on ${ground} ${theme}: ${ratio}`);
      }
    }
  }
});

Deno.test("ROLES: first and second, low and high stay apart for red-green blind eyes", () => {
  for (const [name, matrix] of Object.entries(BLIND)) {
    for (
      const [a, b] of [["first", "second"], ["low", "high"], [
        "lowest",
        "highest",
      ]] as const
    ) {
      for (const theme of [0, 1] as const) {
        const [x, y] = [
          seen(ROLES[a][theme], matrix),
          seen(ROLES[b][theme], matrix),
        ];
        const distance = Math.hypot(...x.map((c, i) => c - y[i]));
        ok(distance > 0.2, `${a} and ${b}, ${name}, ${theme}: ${distance}`);
      }
    }
  }
});

Deno.test("roleOf() knows its own stand-ins and no other colour", () => {
  equal(roleOf("var(--alarm)"), "alarm");
  equal(roleOf("currentColor"), "ink");
  deepEqual(["var(--other)", "red", "none"].map(roleOf), [
    undefined,
    undefined,
    undefined,
  ]);
});
