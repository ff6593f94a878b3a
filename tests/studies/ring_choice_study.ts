import { Random } from "sagbook/numerics/random.ts";
import { chooseRing } from "sagbook/uncertainty/choose_ring.ts";
import {
  chanceSeen,
  PLANNED_RULE,
  POWER_PLAN,
  POWER_RING,
} from "./_ring_choice_power.ts";
import type { Study } from "./_study.ts";

const SESSIONS = 10_000;

/** Readings simulated on surfaces that depart by the amount promised. */
export const study: Study = {
  title:
    "What the choice of ring calls detectable is seen by the whole analysis with the power stated",
  about:
    "10,000 sessions for each question and seed: readings rounded by the " +
    "display, zone differences judged by the analysis of sessions, radii by " +
    "the budget with its ring, gauge and display. Stated power 80 %; allowed " +
    "are 2 points and two simulation errors.",
  run: (seed) =>
    chooseRing([POWER_RING], { ...POWER_PLAN, halfWidth: PLANNED_RULE })
      .filter(({ recommended }) => recommended !== undefined)
      .map(({ question, rings: [answer] }) => ({
        case: question,
        measure: "chance that the amount is seen",
        value: chanceSeen(
          question,
          answer,
          SESSIONS,
          new Random(seed).fork(question),
        ),
        runs: SESSIONS,
        atLeast: 0.78,
        atMost: 0.82,
      })),
};
