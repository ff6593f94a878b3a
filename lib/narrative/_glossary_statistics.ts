/**
 * Words of the statistics: how sure a number is, and why.
 *
 * @module
 */
import type { GlossaryEntry } from "./glossary.ts";

/** Words of the statistics, in the order of the alphabet. */
export const STATISTICS_WORDS: readonly GlossaryEntry[] = [
  {
    term: "±",
    unit: "R ± U",
    meaning:
      "The value, and how far to either side of it the true one may well lie: 95 % sure unless the page says another figure.",
  },
  {
    term: "90 %, 95 %",
    meaning:
      "How sure an interval is: made this way again and again, intervals hold the true value 90, or 95, times in 100, if the readings are what they are taken for.",
    forms: ["95 %", "90 %"],
  },
  {
    term: "budget",
    meaning:
      "The list of everything that makes the radius unsure, each with its share.",
  },
  {
    term: "chance",
    unit: "in %",
    meaning:
      "How often out of 100 a thing would happen, if surface and gauge are as they look now.",
    forms: ["chances"],
  },
  {
    term: "coverage",
    unit: "in %",
    meaning:
      "How often an interval really holds the true value. For the intervals used here it was counted by simulation.",
  },
  {
    term: "degrees of freedom",
    unit: "a number, also with a fraction",
    meaning:
      "How many readings a scatter was learnt from, less what was learnt beside it. The fewer, the wider the interval. Where several sources are joined they are called effective.",
  },
  {
    term: "E_n",
    unit: "a pure number",
    meaning:
      "The difference of two results divided by how unsure it is (both expanded uncertainties, in quadrature). 1 or less: they agree.",
  },
  {
    term: "interval",
    meaning:
      "From where to where the true value may lie, at the stated sureness.",
    forms: ["intervals"],
  },
  {
    term: "limited by the display",
    meaning:
      "Readings scatter less than the display step, so that they repeat and look certain. The interval then comes from the step, and more readings hardly narrow it.",
    forms: [
      "hides within the display step",
      "display’s limit",
      "display's limit",
    ],
  },
  {
    term: "line with errors in both",
    meaning:
      "A straight line through points that are unsure in both directions, which an ordinary fit would draw too flat (Deming, York).",
    forms: ["straight line with errors in both", "Deming", "York"],
  },
  {
    term: "measure more",
    meaning:
      "The readings do not decide the question. The sentence goes on with how many sets probably would.",
  },
  {
    term: "Monte Carlo",
    meaning:
      "Working out an uncertainty by drawing every source many times at random, from a stated seed, and looking at how the results spread.",
    forms: ["drawn at random", "seed"],
  },
  {
    term: "not counted",
    meaning:
      "Sources of doubt that nobody gave a figure for, so that they are in no interval.",
    forms: ["Uncertainty leaves out"],
  },
  {
    term: "not decided",
    meaning:
      "The readings leave open whether the zones agree within the tolerance. It is neither good news nor bad.",
    forms: ["undecided"],
  },
  {
    term: "out of tolerance",
    meaning:
      "Two zones, or the two ends of a diameter, were shown to differ by more than the tolerance: even the end of the interval that favours the surface lies outside.",
    forms: ["It is not a sphere within"],
  },
  {
    term: "part in a thousand",
    unit: "‰",
    meaning: "A tenth of a per cent: 1 mm in 1 m.",
    forms: ["parts in a thousand", "‰"],
  },
  {
    term: "repetition",
    meaning:
      "How far readings of the same place lie apart, from setting the gauge down, from zeroing it anew, and from who reads where people differ by more. More sets (or people) make its part of the doubt smaller; they do nothing for the ring or the scale.",
  },
  {
    term: "restricted maximum likelihood",
    unit: "REML",
    meaning:
      "A way to split scatter into its sources that also works when the readings are not a full pattern.",
    forms: ["REML"],
  },
  {
    term: "risk",
    unit: "in %",
    meaning:
      "The chance of something unwanted, such as grinding past the target.",
  },
  {
    term: "scatter",
    unit: "in the unit of the readings",
    meaning: "How far readings of one and the same thing lie apart.",
    forms: ["scatters"],
  },
  {
    term: "sensitivity",
    meaning:
      "By how much the radius moves for one unit of a source: one µm of sag, one mm of ring.",
  },
  {
    term: "share of the variance",
    unit: "in %",
    meaning:
      "How much of the doubt a source brings. Shares are taken of the squares: a source half as large as another brings a quarter as much.",
    forms: ["shares of the variance", "% of the variance"],
  },
  {
    term: "six times the scatter",
    unit: "in % of the tolerance or of a stretch of work",
    meaning:
      "Six standard deviations: the width that holds nearly all readings, held against what is to be decided. Above 100 % one reading cannot decide it.",
    forms: ["six times", "six standard deviations"],
  },
  {
    term: "standard deviation",
    unit: "in the unit of the readings",
    meaning:
      "How far a reading typically lies from the mean. About 95 in 100 lie within two of them.",
    forms: ["standard deviations"],
  },
  {
    term: "standard uncertainty",
    unit: "u",
    meaning:
      "How unsure a value is, as one standard deviation. About two of them make the ± that is 95 % sure.",
    forms: ["standard uncertainties", "standard error"],
  },
  {
    term: "within tolerance",
    meaning:
      "Every pair of zones was shown to agree within the tolerance: the whole interval of each difference lies inside. That no difference shows is not enough for it.",
    forms: ["It is a sphere within", "decides within"],
  },
];

/** Words that only the library's own documentation uses. */
export const LIBRARY_WORDS: readonly GlossaryEntry[] = [
  {
    term: "analysis of variance",
    unit: "ANOVA",
    meaning:
      "Splits scatter by comparing groups of readings; exact where the readings are a full pattern.",
    forms: ["ANOVA"],
  },
  {
    term: "Bonferroni",
    meaning:
      "Asks more of each of several tests, so that a single false alarm among all of them is as rare as stated.",
  },
  {
    term: "covariance",
    meaning:
      "How two unsure values move together, as when both come from one ring. It is why a difference can be surer than either value.",
  },
  {
    term: "effective degrees of freedom",
    meaning:
      "The degrees of freedom of a sum of sources, by the formula of Welch and Satterthwaite.",
    forms: ["Satterthwaite"],
  },
  {
    term: "equivalence test",
    meaning:
      "Asks for proof that a difference is small, in place of finding none. The verdict within tolerance is one.",
    forms: ["equivalence"],
  },
  {
    term: "gauge capability",
    meaning:
      "Whether a gauge is good enough for the question: its scatter held against the tolerance.",
    forms: ["capability"],
  },
  {
    term: "repeatability and reproducibility",
    meaning:
      "Scatter under the same conditions (same person, place and zero, soon after), and under changed ones (other people, zeroings, days), which includes the first. Within one workshop the vocabulary of metrology calls the second intermediate precision.",
    forms: ["repeatability", "reproducibility"],
  },
  {
    term: "Student's t",
    meaning:
      "The distribution that widens an interval when the scatter was learnt from few readings.",
    forms: ["Student’s t", "Student"],
  },
];
