/**
 * What a plan is made for, what it may cost, and what it does.
 *
 * @module
 */
import type {
  Decide,
  Decision,
  PlannedZone,
  StudySize,
} from "./scatter_model.ts";

/** What has to be decided, and what is taken to be true. */
export interface PlanQuestion {
  /** The places every set reads, and the sag there if all is as assumed. */
  readonly zones: readonly PlannedZone[];
  /** The analysis that decides; its verdicts are what the plan counts. */
  readonly decide: Decide;
  /** The verdict that is right if all is as assumed. */
  readonly truth: Exclude<Decision, "undecided">;
  /**
   * Change of sag from the first occasion to each, in mm, for a question about
   * a change; one occasion without a change unless stated.
   */
  readonly changes?: readonly number[];
}

/** Minutes that the parts of a study take. */
export interface StudyTimes {
  /** Wiping and zeroing. */
  readonly zeroing: number;
  /** One look at the flat. */
  readonly look: number;
  /** Lifting, setting down and reading. */
  readonly reading: number;
  /** Marking and turning to another diameter. */
  readonly diameter: number;
}

/** Bounds and choices of the search. */
export interface PlanOptions {
  /** Wanted probability of the right verdict; 0.8 unless stated. */
  readonly wanted?: number;
  /** Seed of the simulation; 1 unless stated. */
  readonly seed?: number;
  /** Most zeroings on one occasion; 40 unless stated. */
  readonly mostZeroings?: number;
  /** Numbers of readings of a zone in a set to try; 1 to 3 unless stated. */
  readonly repeats?: readonly number[];
  /**
   * Numbers of diameters to try; `each` gives every zeroing its own. One, and
   * one for each zeroing, unless stated.
   */
  readonly diameters?: readonly (number | "each")[];
  /** Minutes of the parts; {@link STUDY_TIMES} unless stated. */
  readonly times?: StudyTimes;
  /** Simulated studies behind a stated chance; 2000 unless stated. */
  readonly studies?: number;
}

/** A study and what it does. */
export interface StudyPlan extends StudySize {
  /** Number of occasions. */
  readonly occasions: number;
  /** Readings of the work in all. */
  readonly readings: number;
  /** Looks at the flat in all: before and after each set. */
  readonly looks: number;
  /** Minutes in all. */
  readonly minutes: number;
  /** Probability of the right verdict, from simulation. */
  readonly chance: number;
  /** Probability of the opposite verdict. */
  readonly wrong: number;
  /** Standard error of `chance`. */
  readonly chanceError: number;
}

/** The answer of the planner. */
export type PlanAnswer =
  | {
    readonly kind: "plan";
    /** The cheapest plan that reaches the wanted probability. */
    readonly best: StudyPlan;
    /** The cheapest plans of other shapes that reach it, by minutes. */
    readonly alternatives: readonly StudyPlan[];
  }
  | {
    readonly kind: "no plan";
    /**
     * `display`: without a display step a plan would do; `too many`: more
     * zeroings than allowed; `occasion`: the scatter from one occasion to the
     * next stands in the way, however much is read on each; `common`: what all
     * readings share does.
     */
    readonly reason: "display" | "too many" | "occasion" | "common";
    /** The plan that came nearest. */
    readonly nearest: StudyPlan;
  };

/** Minutes of the parts of a study: common practice, no source. */
export const STUDY_TIMES: StudyTimes = {
  zeroing: 1,
  look: 0.5,
  reading: 0.5,
  diameter: 0.5,
};
