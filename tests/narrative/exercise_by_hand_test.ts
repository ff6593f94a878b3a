import { equal } from "node:assert/strict";
import { drawExercise } from "sagbook/exercises/draw_exercise.ts";
import { byHandWords } from "sagbook/narrative/exercise_by_hand.ts";
import { Random } from "sagbook/numerics/random.ts";
import type { SessionAnalysis } from "sagbook/zones/analyse_session.ts";

type Read = SessionAnalysis["readings"][number];

const drawn = drawExercise(new Random(4), "student-01");
const exercise = {
  ...drawn,
  gauge: {
    ...drawn.gauge,
    statedRadius: 50,
    ballRadius: 3,
    unit: "mm",
    step: 0.001,
  },
} as const;

const read = (
  zeroing: string,
  label: string,
  offset: number,
  sag: number,
): Read =>
  ({
    reading: { zeroing, zone: { label }, offset, sag },
    sag: 99,
    place: 0,
  }) as unknown as Read;

Deno.test("byHandWords() puts the first zeroing's readings as they stand into R = r²/(2s) + s/2 + b", () => {
  const text = byHandWords(exercise, {
    readings: [
      read("class / 1", "centre", 0, 0.418),
      read("class / 1", "edge", 80, 0.42),
      read("class / 1", "-edge", -80, 0.422),
      read("class / 2", "centre", 0, 0.5),
    ],
    looks: [
      { zeroing: "class / 1", sag: 0.004 },
      { zeroing: "class / 2", sag: 0.009 },
    ] as unknown as SessionAnalysis["looks"],
  });
  // 2500/0.836 + 0.209 + 3 = 2993.639; 2500/0.842 + 0.2105 + 3 = 2972.332.
  equal(
    text?.replaceAll("\u00a0", " "),
    "The first set by hand, the readings as they stand and the two ends of a place averaged (R = r²/(2s) + s/2 + b, r = 50.000 mm, b = 3.00 mm): centre 0.418 mm, R = 2994 mm; edge 0.4210 mm, R = 2972 mm. The edge less the centre is +3.0 µm; the flat then shows 0.004 mm, the drift of the zero in this set.",
  );
});

Deno.test("byHandWords() says nothing of a session without a reading", () => {
  equal(byHandWords(exercise, { readings: [], looks: [] }), undefined);
});
