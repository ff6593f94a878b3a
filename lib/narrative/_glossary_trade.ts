/**
 * Words of the workshop: the gauge, the glass and the work on it.
 *
 * @module
 */
import type { GlossaryEntry } from "./glossary.ts";

/** Words of the workshop, in the order of the alphabet. */
export const TRADE_WORDS: readonly GlossaryEntry[] = [
  {
    term: "astigmatism",
    meaning:
      "A surface that curves more along one diameter than across it. Three feet on a ring take the mean of both, so they never see it.",
  },
  {
    term: "ball radius",
    unit: "b, in mm or inches",
    meaning:
      "Half the diameter of the balls the gauge stands on. A ball touches one ball radius away from its own centre, so b is added to the radius of a concave surface and taken off that of a convex one.",
    forms: ["balls?"],
  },
  {
    term: "bevel",
    unit: "in mm or inches",
    meaning:
      "The slope ground round the rim so that it does not chip. No foot may stand on it.",
  },
  {
    term: "centre of curvature",
    meaning:
      "The middle of the sphere that the surface is part of, one radius of curvature away from it.",
  },
  {
    term: "conic constant",
    unit: "a pure number",
    meaning:
      "How a surface departs from a sphere towards its edge: 0 for a sphere, −1 for a paraboloid.",
    forms: ["conic"],
  },
  {
    term: "diameter",
    unit: "as a line: in degrees",
    meaning:
      "The size of the work; and a line across it along which sets are read. Sets on several diameters see more of the surface than sets on one.",
    forms: ["diameters"],
  },
  {
    term: "display step",
    unit: "in mm or inches",
    meaning:
      "The smallest change the gauge's display can show. What is smaller than a step hides in it.",
  },
  {
    term: "drift",
    meaning:
      "A zero that creeps while a set is read, mostly because hands warm the gauge. Looks back at the flat show it.",
    forms: ["creeps", "zero had not moved", "zero moved"],
  },
  {
    term: "feet out, foot out",
    meaning:
      "How the ring stands off the centre: with one foot towards the rim, or with two. With one foot out it reaches further towards the edge.",
    forms: ["foot out", "feet out", "two feet pointed out"],
  },
  {
    term: "focal length",
    unit: "f, in mm or inches",
    meaning:
      "How far from a mirror the light of a star comes together. Of a sphere it is half the radius of curvature.",
  },
  {
    term: "focal ratio",
    unit: "a pure number, written f/6",
    meaning: "Focal length divided by the diameter of the mirror.",
  },
  {
    term: "foot circle",
    unit: "r, in mm or inches",
    meaning:
      "The circle through the centres of the three balls (or along the touching edge of a sharp ring). Its radius counts twice in the radius of curvature.",
  },
  {
    term: "gauge scale",
    unit: "a pure number",
    meaning:
      "How true the gauge's millimetre is. An error of scale makes every sag too large or too small by the same share.",
  },
  {
    term: "grade",
    meaning:
      "The grain size of the abrasive the surface was last ground with, such as F320.",
    forms: ["grades"],
  },
  {
    term: "half diameter",
    unit: "in mm or inches",
    meaning:
      "From the centre of the work to its rim. Places may be given in per cent of it.",
  },
  {
    term: "lap",
    meaning:
      "The tool a surface is polished on, faced with pitch. Pitch is melted to make it: it burns, and its fumes catch fire.",
    forms: ["pitch"],
  },
  {
    term: "look at the flat",
    meaning:
      "A reading on the reference flat, beside the zeroing, that shows whether the zero has crept. It counts as no reading of the work.",
    forms: [
      "looks? at the flat",
      "looked at again",
      "looked back",
      "looks? back",
    ],
  },
  {
    term: "lopsided wear",
    meaning:
      "One side of the work lower than the other (coma). It shows when both ends of a diameter are read.",
    forms: ["lopsided"],
  },
  {
    term: "loupe",
    meaning:
      "A strong magnifier. Whether the pits of a grade are gone is seen through it, never by the gauge.",
  },
  {
    term: "paraboloid",
    meaning:
      "The shape that brings all light of a star to one point. A mirror ground to a sphere is figured to it at the end.",
    forms: ["figured to"],
  },
  {
    term: "peak to valley",
    unit: "in µm, nm or inches",
    meaning:
      "From the highest to the lowest point of a departure. A few bad spots make it large.",
  },
  {
    term: "pits",
    meaning:
      "The small holes a grain leaves in ground glass. The next finer grade has to grind past the deepest of them.",
  },
  {
    term: "position",
    meaning:
      "Which disc lies on top while grinding. The upper one grows hollow: the mirror on top deepens, the tool on top flattens it.",
    forms: ["mirror on top", "tool on top"],
  },
  {
    term: "radius of curvature",
    unit: "R, in mm or inches",
    meaning:
      "The radius of the sphere that the surface is part of. When grinding is over it is the ground radius.",
    forms: ["ground radius", "radius"],
  },
  {
    term: "reach",
    unit: "in mm or inches",
    meaning:
      "How far the middle of the ring may leave the centre of the work before a foot meets the bevel. Zones may be given in per cent of it.",
  },
  {
    term: "reference flat",
    meaning:
      "A surface known to be flat, on which the gauge is set to zero. The gauge takes its departure from flat for part of the work.",
    forms: ["flat"],
  },
  {
    term: "ring",
    meaning:
      "The three balls (or the edge) that the gauge stands on, with the probe in the middle. Large rings are surest of the radius, small ones see small faults.",
    forms: ["rings"],
  },
  {
    term: "sag",
    unit: "s, in mm or inches",
    meaning:
      "How deep, or how high, the surface stands under the probe, seen from the plane in which the feet touch: the reading on the work less that on a flat.",
  },
  {
    term: "sag of the whole surface",
    unit: "in mm or inches",
    meaning:
      "How deep the work is from rim to centre, worked out from the radius.",
  },
  {
    term: "session",
    meaning:
      "All readings of the surface between two stretches of work, with one gauge.",
    forms: ["sessions"],
  },
  {
    term: "set",
    meaning:
      "Readings of several zones on one zero, along one diameter. What its readings differ by is free of the zero.",
    forms: ["sets"],
  },
  {
    term: "stroke",
    meaning:
      "How the upper disc is pushed over the lower one: how far, and how far aside.",
    forms: ["strokes"],
  },
  {
    term: "surface power",
    unit: "in dioptres (1/m)",
    meaning:
      "How strongly the surface would bend light if the glass had a stated index: (n − 1) divided by the radius in metres.",
    forms: ["dioptres?"],
  },
  {
    term: "target",
    meaning: "The radius, or focal length, that the work is to end with.",
  },
  {
    term: "temperature gradient in the work",
    unit: "in K",
    meaning:
      "One face of the glass warmer than the other. It bends the glass, and the gauge reads the bend.",
    forms: ["temperature gradient", "gradient left to itself"],
  },
  {
    term: "tolerance",
    meaning:
      "How far from the wanted value is still good. You state it; the verdicts are about it.",
  },
  {
    term: "turned edge",
    meaning:
      "A rim that falls away from the rest of the surface. A foot has to touch it for the gauge to see it.",
  },
  {
    term: "two-foot bar",
    meaning:
      "A gauge on two feet and a probe. It reads along one line only, so turned on the work it shows astigmatism.",
  },
  {
    term: "wets",
    meaning:
      "Charges of abrasive and water, each ground until it is used up. Work is counted in wets or in minutes.",
    forms: ["one wet"],
  },
  {
    term: "zeroing",
    meaning:
      "Setting the gauge to zero on the flat. Each zeroing is a little off, and what is off goes into all its readings alike.",
    forms: ["zeroings", "zeroed", "fresh zero", "zero"],
  },
  {
    term: "zone",
    meaning:
      "A place on the work by its distance from the centre: centre, half way out, edge.",
    forms: ["zones"],
  },
];
