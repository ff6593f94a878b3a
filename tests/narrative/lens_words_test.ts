import { deepEqual, equal, match } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import {
  lensReport,
  lensSentences,
  lensTable,
  openPlan,
} from "sagbook/narrative/mod.ts";
import type { Piece } from "sagbook/records/piece.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { BENCH, withFolder } from "../records/_bench_of_cases.ts";

const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");
const estimate = (value: number, own: number) => ({
  value,
  own,
  dof: Infinity,
  common: {},
});
const LENS = {
  index: 1.5,
  indexUncertainty: 0,
  thickness: mm(9),
  thicknessUncertainty: mm(0),
} as const;
const lens = (changes: Partial<Piece["lens"]> = {}): Piece["lens"] => ({
  ...LENS,
  ...changes,
});
const words = (
  form: Piece["form"],
  of: Piece["lens"],
  radius = 100,
): string => {
  const about = { form, unit: "mm" as const, lens: of };
  const report = lensReport(about, estimate(radius, 0.05));
  return plain(lensSentences(report, about).join("\n"));
};

Deno.test("lensSentences() names power with sign and index, and the tooling convention", () => {
  // 1000 · 0.5 / 100 = 5 D; at 1.530: 5.3 D.
  match(
    words("convex", lens()),
    /^The measured convex surface has a power of 5\.0000 ± 0\.0049 D \(n = 1\.500\) in air; on tools marked for 1\.530 it is 5\.3000 ± 0\.0052 D\.$/,
  );
  match(words("concave", lens()), /a power of −5\.0000 ± 0\.0049 D/);
});

Deno.test("lensSentences() gives the focal length of both surfaces with thickness", () => {
  const second = {
    form: "convex",
    radius: mm(100),
    radiusUncertainty: mm(0.05),
  } as const;
  // P = 5 + 5 − (9/1.5)·25/1000 = 9.85 D; f = 101.5228; bfl = f (1 − 0.006·5) = 98.4772.
  const text = words("convex", lens({ second }));
  match(
    text,
    /a power of 9\.85\d+ ± .* D, a focal length of 101\.52\d? ± .* mm and a back focal length of 98\.4[78]\d? ± .* mm/,
  );
  match(
    text,
    /Most of its doubt is radius of (the measured|the second) surface \(50 % of the variance\)/,
  );
  const flat = words("convex", lens({ second: { form: "flat" } }));
  match(flat, /a focal length of 200\.\d+ ± 0\.20 mm/);
});

Deno.test("lensSentences() states no focal length for a lens without power", () => {
  const second = {
    form: "concave",
    radius: mm(97),
    radiusUncertainty: mm(0.05),
  } as const;
  // 5 − 5.1546 + (9/1.5)·25.77/1000 = 0.0000 D.
  match(
    words("convex", lens({ second })),
    /none within what is known of it, so it has no focal length to state/,
  );
});

Deno.test("lensTable() sets both surfaces and the thickness beside the whole", async () => {
  const second = { form: "flat" } as const;
  const about = { form: "convex" as const, lens: lens({ second }) };
  const report = lensReport(about, estimate(100, 0.05));
  const shown = await lensTable(report, about)![jupyterDisplay]();
  const text = plain(String(shown["text/plain"]));
  match(text, /measured surface +convex +5\.0000 ± 0\.0049 D +100 %/);
  match(text, /second surface +flat +0\.000 D +0 %/);
  match(text, /n = 1\.5; concave is negative/);
  equal(lensTable(undefined, about), undefined);
  equal(
    lensTable(
      lensReport({ form: "convex", lens: lens() }, estimate(100, 1)),
      about,
    ),
    undefined,
  );
});

Deno.test("lensSentences() compares ring and test plate", () => {
  const testPlate = {
    id: "plate 100",
    radius: mm(100),
    radiusUncertainty: mm(0.01),
    diameter: mm(40),
    fringes: 4,
    touch: "centre",
    wavelength: mm(0.000589),
  } as const;
  const compare = (radius: number): string => {
    const about = { form: "concave" as const, unit: "mm" as const, testPlate };
    const report = lensReport(about, estimate(radius, 0.05));
    return plain(lensSentences(report, about).join("\n"));
  };
  // Half diameter 20: 4 · 0.2945 µm · 2R²/a² = 0.0589 mm longer (1 µm of it
  // from the next order).
  match(
    compare(100.06),
    /^The fringes against plate 100 make the radius 100\.05[78]\d? ± 0\.02\d? mm\.\nRing and plate agree/,
  );
  match(
    compare(101),
    /Ring and plate do not agree: the ring reads 0\.9\d ± 0\.10 mm longer \(E_n 9/,
  );
});

Deno.test("openPlan() says nothing of lenses for a piece that is none, and waits for readings of one that is", async () => {
  deepEqual(
    lensSentences(lensReport({ form: "convex" }, undefined), {
      form: "convex",
      unit: "mm",
    }),
    [],
  );
  const piece = {
    name: "invented lens",
    form: "convex",
    diameter: "50 mm",
    bevel: "0.5 mm",
    target: { radius: "155 mm" },
    lens: { index: 1.5168 },
    invented: true,
  };
  const rings = [{
    id: "small",
    radius: "10 mm",
    ball_radius: "1.5 mm",
    radius_uncertainty: "0.002 mm",
    ball_radius_uncertainty: "0.001 mm",
    foot: "foot out",
  }];
  const open = (more: Record<string, string> = {}) =>
    withFolder(
      { piece, bench: { ...BENCH, rings }, files: more },
      (path) => openPlan(path, { studies: 20, today: "2031-05-17" }),
    );
  match((await open()).lensWords.join(), /waits for readings/);
  // A ring of 10 mm with balls of 1.5 mm on R = 155 convex: 0.3198 mm.
  const { lensWords, answer, choices } = await open({
    "readings.csv": `session,zeroing,zone,reading,unit\n${
      [320, 319, 320, 320, 321].map((um, k) =>
        `S1,${k + 1},centre,${(um / 1000).toFixed(3)},mm`
      ).join("\n")
    }\n`,
  });
  match(plain(answer[0]), /^The radius is 15[45]\.\d+ ± 0\.\d+ mm/);
  match(plain(lensWords[0]), /a power of 3\.3\d+ ± 0\.0\d+ D \(n = 1\.5168\)/);
  equal(choices[0].recommended, "small");
});
