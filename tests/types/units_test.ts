import { deepEqual, equal, match, ok } from "node:assert/strict";
import { addPowers, type Dioptres, dioptres } from "sagbook/units/dioptre.ts";
import { explainUnitMixUp } from "sagbook/units/explain_unit_mix_up.ts";
import {
  type Inches,
  inches,
  inchesToMillimetres,
  type Millimetres,
  millimetres,
} from "sagbook/units/length.ts";

const wantsMillimetres = (length: Millimetres): number => length;
const wantsInches = (length: Inches): number => length;

Deno.test("Millimetres and Inches are not exchanged, nor made from bare numbers, when type-checked", () => {
  // @ts-expect-error millimetres are not inches
  equal(wantsInches(millimetres(1)), 1);
  // @ts-expect-error inches are not millimetres
  equal(wantsMillimetres(inches(1)), 1);
  // @ts-expect-error a bare number has no unit
  equal(wantsMillimetres(1), 1);
  // @ts-expect-error a sum has lost its unit and must be marked again
  equal(wantsMillimetres(millimetres(1) + millimetres(1)), 2);
  // @ts-expect-error nor can a list smuggle one in
  const list: Millimetres[] = [inches(1)];
  equal(list.length, 1);
  equal(wantsMillimetres(inchesToMillimetres(inches(1))), 25.4);
});

Deno.test("Dioptres of two indices are not mixed when type-checked", () => {
  const marked = dioptres(1, 1.53);
  const other: Dioptres<1.5> = dioptres(1, 1.5);
  let refused = 0;
  try {
    // @ts-expect-error the powers are meant for two indices
    addPowers(marked, other);
  } catch {
    refused++;
  }
  equal(refused, 1);
  // @ts-expect-error a power is made by dioptres() only
  const bare: Dioptres = { dioptres: 1, index: 1.5 };
  equal(bare.index, 1.5);
});

/** Type-checks a program and gives the compiler's complaints. */
async function diagnose(
  program: string,
): Promise<{ success: boolean; text: string }> {
  const folder = await Deno.makeTempDir();
  try {
    const file = `${folder}/mix_up.ts`;
    await Deno.writeTextFile(file, program);
    const config = new URL("../../deno.json", import.meta.url).pathname;
    const { success, stderr } = await new Deno.Command(Deno.execPath(), {
      args: ["check", "--quiet", "--config", config, file],
      env: { NO_COLOR: "1" },
      stdout: "null",
    }).output();
    return { success, text: new TextDecoder().decode(stderr) };
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const HEADER = `
  import { dioptres, type Dioptres } from "sagbook/units/dioptre.ts";
  import { inches, type Inches, millimetres, type Millimetres } from "sagbook/units/length.ts";
  const wantsInches = (length: Inches): number => length;
  const wantsMillimetres = (length: Millimetres): number => length;
  const wantsPower = (power: Dioptres<1.53>): number => power.dioptres;
`;

Deno.test("The compiler stops a program that passes millimetres where inches are asked for", async () => {
  const right = await diagnose(`${HEADER} wantsInches(inches(1));`);
  deepEqual(right, { success: true, text: "" });
  const wrong = await diagnose(`${HEADER} wantsInches(millimetres(1));`);
  ok(!wrong.success);
  match(wrong.text, /TS2345/);
  equal(
    explainUnitMixUp({ code: 2345, message: wrong.text }),
    "This place asks for inches but was given millimetres: millimetresToInches(…) converts it.",
  );
});

Deno.test("explainUnitMixUp() puts the compiler's own words into a sentence with the mend", async () => {
  const cases = [
    [
      "wantsMillimetres(inches(1));",
      "This place asks for millimetres but was given inches: inchesToMillimetres(…) converts it.",
    ],
    [
      "wantsMillimetres(25.4);",
      "This place asks for millimetres but was given a bare number: millimetres(…) marks a number of millimetres, and inchesToMillimetres(inches(…)) takes inches.",
    ],
    [
      "wantsInches(inches(1) * 2);",
      "This place asks for inches but was given a bare number: inches(…) marks a number of inches, and millimetresToInches(millimetres(…)) takes millimetres.",
    ],
    [
      "const wide: { diameter: Millimetres } = { diameter: inches(12) }; wide;",
      "This place asks for millimetres but was given inches: inchesToMillimetres(…) converts it.",
    ],
    [
      "wantsPower(dioptres(1, 1.5));",
      "This place asks for a power meant for index 1.53 but was given one meant for 1.5: powerAtIndex(…, 1.53) gives the same curve's power.",
    ],
  ];
  for (const [line, sentence] of cases) {
    const { text } = await diagnose(`${HEADER} ${line}`);
    const code = Number(/TS(\d+)/.exec(text)?.[1]);
    equal(explainUnitMixUp({ code, message: text }), sentence, text);
  }
});

Deno.test("explainUnitMixUp() says nothing about other complaints", () => {
  const other = "Type 'string' is not assignable to type 'Millimetres'.";
  equal(explainUnitMixUp({ code: 2322, message: other }), undefined);
  equal(
    explainUnitMixUp({ code: 2304, message: "Cannot find name 'x'." }),
    undefined,
  );
});
