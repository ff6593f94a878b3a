import { equal, match } from "node:assert/strict";
import { nextStepSentence } from "sagbook/narrative/next_step_sentence.ts";
import {
  type RadiusStatement,
  rangeOf,
  standsToTarget,
  type TargetInWords,
  whatHelps,
  writeDoubt,
  writeTarget,
} from "sagbook/narrative/mod.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const plain = (text: string): string => text.replace(/\s/g, " ");

/** A radius with a budget of so much repeating and so much ring, of 100. */
function radius(
  given: Pick<RadiusStatement, "expanded" | "interval">,
  ring = 0,
): RadiusStatement {
  const line = (source: string, share: number, common?: string) => ({
    source,
    share: share / 100,
    ...(common === undefined ? {} : { common }),
  });
  return {
    radius: mm(2201),
    ...given,
    over: "all zones",
    covers: "everything",
    budget: {
      lines: [
        line("repetition", 100 - ring),
        line("ring radius", ring, "ring A radius"),
      ],
    },
  } as unknown as RadiusStatement;
}

const said = (stated: RadiusStatement, beyond: boolean): string =>
  plain(nextStepSentence(
    beyond ? { kind: "near target", beyond } : { kind: "near target" },
    { sphericity: {}, zones: [], sets: { length: 6 } },
    stated,
  ));

Deno.test("nextStepSentence() says that the target lies within the doubt only where it does", () => {
  const even = radius({ expanded: mm(6.84) });
  equal(
    said(even, false),
    "Next: the target lies within the doubt of the radius (±6.8 mm), so it may be reached or not; go on if the next grades can still move it, or read more sets first.",
  );
  equal(
    said(even, true),
    "Next: the radius may be within the tolerance of the target or not, since its doubt (±6.8 mm) leaves that open; go on if the next grades can still move it, or read more sets first.",
  );
});

Deno.test("nextStepSentence() gives the ends of an uneven doubt, and no more sets where they do little", () => {
  const uneven = { interval: { low: 2158.4, high: 2245.2 } };
  equal(
    said(radius(uneven, 96), false),
    "Next: the target lies within the doubt of the radius (2158 mm to 2245 mm), so it may be reached or not; go on if the next grades can still move it, or measure the ring better first — more sets do little, since the largest part of the doubt comes from the ring's radius.",
  );
  match(said(radius(uneven, 40), false), /or read more sets first\.$/);
});

/** A radius whose budget holds these lines. */
const doubtful = (
  ...lines: { source: string; share: number; common?: string }[]
) => ({ radius: mm(2200), budget: { lines } });

Deno.test("whatHelps() names a cure for every source that more sets leave as it is", () => {
  const cure = (source: string) =>
    whatHelps(doubtful({ source, share: 0.9, common: source }));
  match(cure("gauge scale"), /^check the gauge's scale/);
  match(cure("reference flat"), /^zero on a flat that is known better/);
  match(cure("ball radius"), /^measure the balls better/);
  match(cure("of our own"), /comes from of our own$/);
  const step = { source: "display step of the zero", share: 0.9 };
  match(whatHelps(doubtful(step)), /^use a finer display first/);
  equal(
    whatHelps(doubtful({ source: "zeroing", share: 1 })),
    "read more sets first",
  );
});

Deno.test("whatHelps() sends no one to read sets where the ring alone exceeds the tolerance", () => {
  // Scatter leads with 9 mm, and the ring leaves 1.96 · 6 = 11.76 mm open.
  const line = (source: string, contribution: number, common?: string) => ({
    source,
    contribution,
    share: contribution ** 2 / (81 + 36),
    ...(common === undefined ? {} : { common }),
  });
  const lines = [line("repetition", 9), line("ring radius", 6, "ring A")];
  const stated = { radius: mm(2200), budget: { lines, estimate: {} } };
  const helps = (tolerance?: number) =>
    plain(whatHelps(stated, { tolerance, unit: "mm" }));
  equal(
    helps(11.7),
    "measure the ring better first — no number of sets can show the radius to be within the tolerance, since what they leave as it is makes ±12 mm by itself, most of it from the ring's radius",
  );
  equal(helps(11.8), "read more sets first");
  equal(helps(), "read more sets first");
  // The same in curvature, where R has no deviation.
  const curved = lines.map((one) => ({
    ...one,
    contribution: one.contribution / 2200 ** 2,
  }));
  const heavy = { radius: mm(2200), budget: { lines: curved } };
  match(whatHelps(heavy, { tolerance: 11.7 }), /^measure the ring better/);
  equal(whatHelps(heavy, { tolerance: 11.8 }), "read more sets first");
});

Deno.test("whatHelps() asks for more people where these differ", () => {
  match(
    whatHelps({ ...doubtful({ source: "repetition", share: 1 }), people: 2 }),
    /^have more people read first/,
  );
});

Deno.test("standsToTarget() says within, outside or not decided, with the tolerance", () => {
  const to = (
    best: number,
    low: number,
    high: number,
    target: TargetInWords = { radius: 2200, tolerance: 10 },
    covers: RadiusStatement["covers"] = "everything",
  ) =>
    plain(standsToTarget(
      { radius: mm(best), interval: { low, high }, covers },
      target,
      "mm",
      best > 2230,
    ));
  equal(
    to(2201, 2195, 2207),
    "the target is 2200 ± 10 mm, and the radius is within that",
  );
  equal(
    to(2201, 2158, 2245),
    "the target is 2200 ± 10 mm, and whether the radius is within that is not decided",
  );
  equal(
    to(2219.2, 2211.8, 2226.6),
    "that is 19.2 mm longer than the target of 2200 ± 10 mm, outside its tolerance",
  );
  equal(
    to(2231.2, 2221.8, 2236.6),
    "that is 31.2 mm longer than the target of 2200 ± 10 mm, outside its tolerance, past it",
  );
  equal(
    to(2171.2, 2165.6, 2176.8, undefined, "but repeating"),
    "the target is 2200 ± 10 mm: this one zeroing reads 28.8 mm shorter, and since nothing is known of how the zero scatters, that decides nothing",
  );
  equal(
    to(2201, 2195, 2207, { radius: 2200 }),
    "the target is 2200 mm, which lies within that doubt",
  );
  equal(
    to(2219, 2212, 2226, { radius: 2200 }),
    "that is 19.0 mm longer than the target of 2200 mm",
  );
});

Deno.test("standsToTarget() gives a distance no more figures than the radius has", () => {
  const flat = {
    radius: mm(123026),
    interval: { low: 70000, high: 620000 },
    covers: "everything",
  } as const;
  equal(
    plain(
      standsToTarget(flat, { radius: 30000, tolerance: 5000 }, "mm", false),
    ),
    "that is 90 000 mm longer than the target of 30 000 ± 5000 mm, outside its tolerance",
  );
});

Deno.test("writeTarget() gives target and tolerance the same figures, in either unit", () => {
  equal(
    plain(writeTarget({ radius: 2200, tolerance: 7.5 }, "mm")),
    "2200.0 ± 7.5 mm",
  );
  equal(
    plain(writeTarget({ radius: 2540, tolerance: 12.7 }, "in")),
    "100.0 ± 0.5 in",
  );
  equal(plain(writeTarget({ radius: 2200 }, "mm")), "2200 mm");
  // 3000 ± 15 mm are 118.1102… ± 0.5906… in: no figure of those was given.
  equal(
    plain(writeTarget({ radius: 3000, tolerance: 15 }, "in")),
    "118.11 ± 0.59 in",
  );
  equal(plain(writeTarget({ radius: 3000 }, "in")), "118.11 in");
  equal(plain(writeTarget({ radius: 2999.994 }, "in")), "118.11 in");
});

Deno.test("rangeOf() and writeDoubt() know ±, two ends, one end and nothing", () => {
  const stated = (given: Pick<RadiusStatement, "expanded" | "interval">) =>
    [rangeOf(radius(given)), writeDoubt(given, "mm")] as const;
  const [even] = stated({ expanded: mm(9) });
  equal(even?.low, 2192);
  equal(even?.high, 2210);
  const [open, words] = stated({ interval: { low: 9123 } });
  equal(open?.high, undefined);
  equal(plain(words!), "at least 9120 mm");
  equal(stated({})[0], undefined);
  equal(stated({})[1], undefined);
});

Deno.test("nextStepSentence() asks for other diameters where sets share them, and says what each chance assumes", () => {
  const needed = (
    setsNeeded: NonNullable<
      Parameters<typeof nextStepSentence>[1]["sphericity"]["setsNeeded"]
    >,
  ): string =>
    plain(nextStepSentence({ kind: "measure more", why: "undecided" }, {
      sphericity: { setsNeeded },
      zones: [],
      sets: { length: 6 },
    }));
  match(
    needed({ kind: "sets", sets: 28, chance: 0.81, atBest: 7, diameters: 3 }),
    /read 22 more sets on other diameters, 28 in all \(the 6 read lie on 3, and sets on one diameter count as one look at the surface\): .* 81 % if surface and gauge are as they look now .*the less it departs from a sphere, the fewer it takes/,
  );
  match(
    needed({ kind: "sets", sets: 25, chance: 0.81, atBest: 7 }),
    /read 19 more sets, 25 in all, each on another diameter: /,
  );
  match(
    needed({ kind: "no practical number", moreThan: 30, chance: 0.57 }),
    /even 30 sets on 30 diameters would decide with a chance of 57 % only, if surface and gauge are as they look now/,
  );
});
