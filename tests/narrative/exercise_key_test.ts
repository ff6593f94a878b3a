import { equal, match, ok } from "node:assert/strict";
import {
  drawExercise,
  HIDDEN_KINDS,
  smallestFound,
  statedChances,
} from "sagbook/exercises/mod.ts";
import {
  exerciseKey,
  exerciseQuestion,
  reportVerdict,
} from "sagbook/narrative/exercise_key.ts";
import {
  gaugeWords,
  hiddenName,
  hiddenWords,
  seenWords,
  verdictName,
  verdictShort,
} from "sagbook/narrative/exercise_words.ts";
import { writeWholeChance } from "sagbook/narrative/write_whole_chance.ts";
import { Random } from "sagbook/numerics/random.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

const exercise = drawExercise(new Random(4), "student-01", {
  kind: "coma",
  strength: 2,
});

Deno.test("hiddenWords() states each shape with its amounts", () => {
  const mm = { ...exercise, gauge: { ...exercise.gauge, unit: "mm" } } as const;
  const say = (hidden: typeof exercise.hidden): string =>
    plain(hiddenWords(hidden, mm));
  equal(
    say({ kind: "turned edge", width: 20, depth: 0.0123 }),
    "an edge turned down over the outermost 20 mm inside the bevel, by 12.3 µm at the rim",
  );
  equal(
    say({ kind: "coma", rise: 0.0123, degrees: 40 }),
    "lopsided wear: the side towards 40° stands 12.3 µm high at the rim and the opposite side as much low",
  );
  equal(
    say({ kind: "astigmatism", rise: 0.02, degrees: 130 }),
    "astigmatism: the diameter at 130° stands 20.0 µm high at both ends and the one across it as much low",
  );
  equal(say({ kind: "sphere" }), "a sphere, and nothing else");
});

Deno.test("hiddenWords() gives the conic's peak to valley: 586 nm for a 300 mm f/5 paraboloid", () => {
  const disc = { ...exercise.disc, diameter: 300, bevel: 0 };
  const gauge = { ...exercise.gauge, unit: "mm" } as const;
  const f5 = { ...exercise, disc, gauge, trueRadius: 3000 };
  match(
    plain(hiddenWords({ kind: "conic", conic: -1 }, f5)),
    /constant −1, which departs from its best sphere by 0\.586 µm/,
  );
});

Deno.test("seenWords() says what differs, and that nothing does", () => {
  const gauge = { ...exercise.gauge, unit: "mm", step: 0.001 } as const;
  const say = (zones: number, ends: number): string =>
    plain(seenWords({ zones, ends }, { gauge }));
  match(say(0, 1e-17), /^Three feet see nothing of it/);
  match(
    say(0.0071, 0),
    /^Under this ring two zones differ by up to 7\.10 µm of sag\.$/,
  );
  match(
    say(0, 0.004),
    /the two ends of a diameter differ by up to 4\.00 µm of sag\.$/,
  );
  equal(
    say(0.0071, 0.004),
    "Under this ring two zones differ by up to 7.10 µm, and the two ends of a diameter differ by up to 4.00 µm of sag.",
  );
});

Deno.test("gaugeWords() names step, scatter and drift with its sign", () => {
  const { gauge } = exercise;
  const drifting = (driftPerReading: number) =>
    gaugeWords({
      ...exercise,
      gauge: {
        ...gauge,
        unit: "mm",
        scatter: {
          ...gauge.scatter,
          driftPerReading: driftPerReading as typeof gauge.scatter.repeat,
        },
      },
    });
  match(plain(drifting(-0.0004)), /drifts by −0\.40 µm with each reading/);
  match(drifting(0), /does not drift/);
});

Deno.test("writeWholeChance() never says 0 or 100 per cent", () => {
  equal(plain(writeWholeChance(1)), "more than 99 %");
  equal(plain(writeWholeChance(0)), "less than 1 %");
  equal(plain(writeWholeChance(0.634)), "63 %");
});

Deno.test("verdictName() and hiddenName() name everything", () => {
  const verdicts = ["within", "outside", "undecided", "none"] as const;
  equal(new Set(verdicts.map(verdictName)).size, 4);
  equal(new Set(verdicts.map(verdictShort)).size, 4);
  const names = HIDDEN_KINDS.map((kind) =>
    hiddenName({ kind } as typeof exercise.hidden)
  );
  equal(new Set(names).size, 5);
});

Deno.test("exerciseKey() says what is hidden, the stated power and what cannot be found", () => {
  for (const kind of HIDDEN_KINDS) {
    const one = drawExercise(new Random(4), "student-01", { kind });
    const stated = statedChances(one, new Random(1), 100);
    const smallest = smallestFound(one, 1, 0.8, 100);
    const report = { answer: ["R is 3000 mm.", "It is a sphere.", "Next: …"] };
    const entry = {
      exercise: one,
      stated,
      ...(smallest === undefined ? {} : { smallest }),
      report,
    };
    equal(reportVerdict(entry), "none");
    const parts = exerciseKey([entry], 42);
    const text = plain(
      parts.map((part) => "markdown" in part ? part.markdown : "").join("\n"),
    );
    match(text, /Seed 42/);
    ok(text.includes(plain(hiddenWords(one.hidden, one))), kind);
    ok(text.includes(plain(writeWholeChance(stated.power))), kind);
    match(
      text,
      kind === "sphere"
        ? /as far as three feet can tell/
        : kind === "astigmatism"
        ? /No amount of it would be found/
        : /To be found with a chance of 80 %|No practical amount/,
    );
    equal(text.includes("It is a sphere."), true);
    equal(text.includes("Next: …"), false);
  }
});

Deno.test("exerciseQuestion() asks without telling", () => {
  for (const kind of HIDDEN_KINDS) {
    const one = drawExercise(new Random(4), "student-01", { kind });
    const text = exerciseQuestion(one);
    equal(text, exerciseQuestion({ ...one, hidden: { kind: "sphere" } }));
    match(text, /Invented for a class/);
  }
});
