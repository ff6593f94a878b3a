import { formatLength } from "../units/format_length.ts";
import { millimetres as mm } from "../units/length.ts";
import { roundDecimal } from "../units/round_decimal.ts";
import {
  type Drawing,
  type Picture,
  type Settings,
  slider,
} from "./_drawing.ts";
import { circle, dot, line, type Shape, words } from "./_shape.ts";

/** Five readings, how many standard deviations each lies off. */
const OFF = [-1.2, -0.5, 0, 0.5, 1.2];

/** Steps shown to either side, and pixels of a step. */
const [AROUND, STEP_WIDTH] = [3, 66];

/** Whole steps nearest to a value in steps, as a display rounds. */
const rounded = (steps: number): number => Number(roundDecimal(steps, 0));

function draw({ numbers }: Settings): Picture {
  const { truth, scatter, step } = numbers;
  const readings = OFF.map((off) => truth + off * scatter);
  const shown = readings.map(rounded);
  const mean = shown.reduce((sum, one) => sum + one, 0) / shown.length;
  const areEqual = shown.every((one) => one === shown[0]);
  const x = (steps: number) => 240 + steps * STEP_WIDTH;
  const steps = Array.from({ length: 2 * AROUND + 1 }, (_, k) => k - AROUND);
  const stacked = new Map<number, number>();
  const marks = readings.flatMap((reading, k): Shape[] => {
    const level = stacked.get(shown[k]) ?? 0;
    stacked.set(shown[k], level + 1);
    const top = 96 - 13 * k;
    return [
      dot([x(reading), top], 6, "first"),
      circle([x(shown[k]), 180 + 15 * level], 6, "alarm", { width: 2.5 }),
    ];
  });
  const inMillimetres = (value: number) => mm(value * step / 1000);
  return {
    width: 480,
    height: 300,
    shapes: [
      words([12, 24], "as the surface is: dots", { role: "first" }),
      ...steps.flatMap((one) => [
        line([x(one), 118], [x(one), 134], "ink", { width: 2 }),
        line([x(one - 0.5), 122], [x(one - 0.5), 130], "quiet", { width: 1 }),
        words([x(one), 154], String(one).replace("-", "−"), {
          anchor: "middle",
          role: "quiet",
        }),
      ]),
      line([x(-AROUND - 0.5), 126], [x(AROUND + 0.5), 126], "ink"),
      line([x(truth), 36], [x(truth), 126], "second", { dash: "6 5" }),
      words([x(truth) - 8, 48], "truth", { role: "second", anchor: "end" }),
      ...marks,
      line([x(mean), 162], [x(mean), 264], "alarm", { dash: "3 4" }),
      words([12, 288], "as the display shows them: rings", { role: "alarm" }),
      words([468, 288], "steps of the display", {
        anchor: "end",
        role: "quiet",
      }),
    ],
    description:
      `Five readings scatter by ${scatter} steps about a truth that lies ${truth} steps from a mark. The display rounds each to a whole step: ${
        areEqual ? "all five look the same" : "they differ"
      }, and their mean is off by ${
        roundDecimal(mean - truth, 2).replace("-", "−")
      } steps.`,
    numbers: [
      {
        label: "The five readings",
        text: areEqual ? "all the same" : "not all the same",
      },
      {
        label: "Their mean is off by",
        text: formatLength(inMillimetres(mean - truth), "µm", 2),
      },
      {
        label: "Scatter behind the display",
        text: formatLength(inMillimetres(scatter), "µm", 2),
      },
    ],
  };
}

/** What identical readings hide. */
export const IDENTICAL_READINGS: Drawing = {
  title: "Identical readings, and what hides behind them",
  controls: [
    slider(
      "truth",
      "The truth, steps from a mark",
      "",
      [-0.5, 0.5, 0.01],
      0.35,
    ),
    slider("scatter", "Scatter, in steps", "", [0, 1.5, 0.01], 0.1),
    slider("step", "Display step", "µm", [0.1, 10, 0.1], 1),
  ],
  draw,
};
