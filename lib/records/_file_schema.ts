/**
 * The shapes of the JSON files as zod schemas.
 *
 * @module
 */
import * as z from "zod";

const length = z.union([
  z.string(),
  z.strictObject({ value: z.number(), unit: z.string() }),
]).meta({
  description:
    'A length with its unit: "300 mm", "11 13/16 in" or { "value": 300, "unit": "mm" }',
});
const said = (text: string) => length.meta({ description: text });
const words = (text: string) => z.string().meta({ description: text });
const schemaKey = words("The schema this file follows, for editors").optional();

/** The shape of `piece.json`. */
export const pieceSchema = z.strictObject({
  $schema: schemaKey,
  name: z.string().min(1).meta({ description: "Your name for the piece" }),
  form: z.enum(["concave", "convex"]).meta({
    description: "Which way the measured surface curves",
  }),
  diameter: said("Outer diameter"),
  bevel: said("Width of the bevel along the radius").optional(),
  margin: said("How far inside the bevel every foot must stay").optional(),
  thickness: said("Thickness at the edge").optional(),
  glass: words("The glass").optional(),
  target: z.strictObject({
    radius: said("Wanted radius of curvature").optional(),
    focal_length: said("Wanted focal length").optional(),
    focal_ratio: z.number().positive().optional(),
    tolerance: z.union([length, z.number().positive()]).optional(),
  }).optional().meta({
    description:
      "Where the radius should go: radius, focal_length or focal_ratio, with a tolerance of the same kind",
  }),
  sphericity_tolerance: z.strictObject({
    sag: said("Largest difference of two zones at the gauge").optional(),
    surface: said("Peak-to-valley error of the surface").optional(),
    radius: said("Largest difference of two zones' radii").optional(),
  }).optional().meta({
    description:
      "How far from a sphere is still good: exactly one of the three",
  }),
  starting_radius: said("Radius before work began").optional(),
  lens: z.strictObject({
    index: z.number().gt(1).lt(5).meta({
      description: "Refractive index of the glass",
    }),
    index_uncertainty: z.number().nonnegative().optional(),
    thickness: said("Thickness at the centre").optional(),
    thickness_uncertainty: said("Standard uncertainty of the thickness")
      .optional(),
    second_surface: z.strictObject({
      form: z.enum(["concave", "convex", "flat"]).meta({
        description: "Which way it curves, seen from its own outside",
      }),
      radius: said("Its radius of curvature; a flat has none").optional(),
      radius_uncertainty: said("Standard uncertainty of its radius").optional(),
    }).optional().meta({
      description: "The surface that is not being measured",
    }),
  }).optional().meta({ description: "What makes the piece a lens" }),
  test_plate: z.strictObject({
    id: z.string().min(1).meta({ description: "Your name for the plate" }),
    radius: said("Its radius of curvature"),
    radius_uncertainty: said("Standard uncertainty of its radius"),
    diameter: said("Diameter over which fringes were counted"),
    fringes: z.number().nonnegative().meta({
      description: "Fringes from the centre to the edge of that diameter",
    }),
    fringe_uncertainty: z.number().nonnegative().optional(),
    touch: z.enum(["centre", "edge"]).meta({
      description: "Where plate and work touch",
    }),
    wavelength: said("Wavelength of the light"),
  }).optional().meta({
    description: "Fringes seen against a test plate of the other form",
  }),
  unit: z.enum(["mm", "in"]).optional().meta({
    description: "The unit answers are given in",
  }),
  bench: words("Relative path of a shared bench file").optional(),
  invented: z.boolean().optional().meta({
    description: "True for invented demonstration data",
  }),
  note: words("Anything else").optional(),
});

const setRing = z.strictObject({
  circle_radius: said("Foot circle radius set in the gauge"),
  ball_radius: said("Ball radius set in the gauge").optional(),
  index: z.number().gt(1).optional().meta({
    description: "Refractive index set in a gauge that shows power",
  }),
});

const gauge = z.strictObject({
  id: words("Your name for the gauge").optional(),
  shows: z.enum(["sag", "radius", "power"]).optional(),
  set_ring: setRing.optional(),
  counts_up_on: z.enum(["concave", "convex"]).optional().meta({
    description: "The surface on which its numbers grow",
  }),
  unit: z.enum(["mm", "in"]).optional().meta({
    description: "The unit of a reading that names none",
  }),
  display_step: z.union([
    length,
    z.strictObject({ mm: length.optional(), in: length.optional() }),
  ]).optional(),
  scale_uncertainty: z.union([z.number().nonnegative(), z.string()]).optional()
    .meta({
      description: 'Standard uncertainty of the scale: 0.001 or "0.1 %"',
    }),
  stem_tilt_deg: z.number().gt(-45).lt(45).optional(),
});

const spacings = z.union([z.array(length).length(3), z.string()]).optional()
  .meta({
    description:
      "The three spacings of the balls, or the path of a CSV file that holds them",
  });
const spacingsMeasured = z.enum(["centre to centre", "outside to outside"])
  .optional();

const calibration = z.strictObject({
  spacings,
  spacings_measured: spacingsMeasured,
  caliper: z.strictObject({
    id: words("Your name for the caliper").optional(),
    uncertainty: said("Standard uncertainty of one figure").optional(),
    scale_uncertainty: z.number().nonnegative().lt(0.1).optional(),
  }).optional(),
  known_surfaces: z.array(z.strictObject({
    id: z.string().min(1).meta({ description: "Your name for the surface" }),
    form: z.enum(["concave", "convex"]).meta({
      description: "Which way it curves; radius and sags carry no sign",
    }),
    radius: said("Its radius of curvature, from its certificate"),
    radius_uncertainty: said("Standard uncertainty of its radius"),
    sags: z.array(length).min(1).meta({
      description: "Sags read on it, one for each zeroing, above 0",
    }),
  })).min(1).optional(),
  earlier: z.array(z.strictObject({
    on: words("Date of that calibration, year-month-day"),
    radius: said("Radius of the foot circle it found"),
    radius_uncertainty: said("Standard uncertainty of that"),
  })).min(1).optional(),
  every_months: z.number().int().positive().lte(600).optional().meta({
    description: "How many months a calibration holds",
  }),
  twin: words("Name of the ring of the bench that is its duplicate").optional(),
}).optional().meta({ description: "What was measured to calibrate the ring" });

const ring = z.strictObject({
  id: z.string().min(1).meta({ description: "Your name for the ring" }),
  feet: z.enum(["balls", "edge", "bar"]).optional(),
  radius: said("Radius of the circle through the ball centres").optional(),
  spacings,
  spacings_measured: spacingsMeasured,
  ball_radius: said("Ball radius").optional(),
  ball_diameter: said("Ball diameter, instead of the radius").optional(),
  probe_offset: said("Distance of the probe from the circle's centre")
    .optional(),
  inner_radius: said("Inner radius of a sharp edge").optional(),
  outer_radius: said("Outer radius of a sharp edge").optional(),
  span: said("Distance between the feet of a bar").optional(),
  radius_uncertainty: said("Standard uncertainty of the radius").optional(),
  ball_radius_uncertainty: said("Standard uncertainty of the ball radius")
    .optional(),
  material: words("What it is made of").optional(),
  expansion: z.number().nonnegative().lt(1e-3).optional(),
  foot: z.union([z.number(), z.string()]).optional().meta({
    description:
      'How foot 1 stands: degrees, "foot out", "feet out", "unknown"',
  }),
  calibrated_on: words("Date of the last calibration, year-month-day")
    .optional(),
  calibration,
  measured: z.boolean().optional().meta({
    description: "False while the sizes are stand-ins that nobody has measured",
  }),
  note: words("Anything else").optional(),
});

const stroke = z.strictObject({
  position: z.enum(["mirror on top", "tool on top", "alternate"]),
  stroke: words("The stroke in your words"),
});
const strokeFor = (text: string) =>
  stroke.optional().meta({ description: text });

const work = z.strictObject({
  strokes: z.strictObject({
    deep_centre: strokeFor("Centre deeper than edge, radius not too short"),
    deep_centre_short: strokeFor("Centre deeper than edge, radius too short"),
    deep_edge: strokeFor("Edge deeper than centre, radius not too long"),
    deep_edge_long: strokeFor("Edge deeper than centre, radius too long"),
    shorten: strokeFor("A sphere that must become shorter"),
    lengthen: strokeFor("A sphere that must become longer"),
  }).optional().meta({
    description:
      "Your strokes on concave work; on convex work mirror and tool change places",
  }),
  pit_grain_sizes: z.number().positive().lte(10).optional().meta({
    description:
      "Mean grain sizes of the grade before to take off for its pits",
  }),
  removal: z.strictObject({
    amount: said("Glass taken off everywhere by one wet or minute"),
    uncertainty: said("Standard uncertainty of that").optional(),
    per: z.enum(["wet", "minute"]),
  }).optional().meta({
    description: "Your rate of removal, used where no thickness was read",
  }),
  thickness_uncertainty: said("Standard uncertainty of one thickness")
    .optional(),
});

/** The shape of `bench.json`. */
export const benchSchema = z.strictObject({
  $schema: schemaKey,
  gauge,
  rings: z.array(ring).min(1),
  flat: z.strictObject({
    id: words("Your name for the flat").optional(),
    size: said("Its side or diameter").optional(),
    flatness: said("Largest departure from a plane").optional(),
  }).optional(),
  work: work.optional().meta({
    description: "How you work, where it is not as is common",
  }),
  decimal_mark: z.enum(["point", "comma"]).optional(),
  note: words("Anything else").optional(),
});
