import { deepEqual, equal, ok } from "node:assert/strict";
import {
  type FlaggedReading,
  flagReadings,
} from "sagbook/repeatability/flag_readings.ts";
import { millimetres as mm } from "sagbook/units/length.ts";
import { reading } from "./_readings.ts";

const study = (um: readonly (readonly number[])[], step = 0.001) =>
  um.flatMap((set, k) =>
    set.map((one) =>
      reading({
        zeroing: `S1 / ${k + 1}`,
        sag: mm(one / 1000),
        step: mm(step),
      })
    )
  );
const flagged = (found: readonly FlaggedReading[]) =>
  found.map(({ index, from }) => [index, Math.round(from * 1e5) / 100]);

Deno.test("flagReadings() flags the slip alone, not the readings that it drags along", () => {
  const um = [[715, 716, 715], [716, 715, 735], [715, 715, 716], [
    716,
    716,
    715,
  ]];
  // 735 against the mean of 716 and 715.
  deepEqual(flagged(flagReadings(study(um))), [[5, 19.5]]);
  const low = [[715, 716, 715], [716, 715, 690], [715, 715, 716], [
    716,
    716,
    715,
  ]];
  deepEqual(flagged(flagReadings(study(low))), [[5, -25.5]]);
});

Deno.test("flagReadings() names of two the one farther from the other zeroings", () => {
  const um = [[715, 716], [716, 735], [715, 715], [716, 716], [715, 716]];
  deepEqual(flagged(flagReadings(study(um))), [[3, 19]]);
  deepEqual(
    flagged(flagReadings(study(um.map(([a, b]) => [b, a])))),
    [[2, 19]],
  );
});

Deno.test("flagReadings() says nothing of a zero that shifts, of a coarse display or of few readings", () => {
  deepEqual(flagReadings(study([[715, 716], [765, 766], [715, 716]])), []);
  deepEqual(
    flagReadings(
      study([[710, 720], [720, 710], [710, 740], [720, 720], [710, 710]], 0.01),
    ),
    [],
  );
  deepEqual(flagReadings(study([[715, 716], [715, 745]])), []);
  deepEqual(flagReadings(study([[715, 745, 715]])), []);
  const equal = study([[715, 715], [715, 715], [715, 715], [715, 716]]);
  deepEqual(flagReadings(equal), []);
});

Deno.test("flagReadings() takes corrected sags where they are given", () => {
  const um = [[715, 716, 715], [716, 715, 735], [715, 715, 716], [
    716,
    716,
    715,
  ]];
  const readings = study(um);
  const sag = readings.map((one, k) => k === 5 ? 0.7155 : one.sag);
  deepEqual(flagReadings(readings, sag), []);
});

Deno.test("flagReadings() is wrong at most once in twenty studies without slips", () => {
  let state = 4;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  const normal = () =>
    Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  let wrong = 0;
  for (let k = 0; k < 1000; k++) {
    const um = Array.from({ length: 5 }, () => {
      const zero = 3 * normal();
      return [0, 1, 2].map(() => 715 + zero + normal());
    });
    if (flagReadings(study(um, 0.0001)).length > 0) wrong++;
  }
  ok(wrong <= 66, `${wrong} of 1000`); // 50 and 2.3 standard deviations
  equal(wrong > 5, true);
});
