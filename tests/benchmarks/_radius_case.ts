/** One radius with every source of its equation, for benchmarks. */
import type { Ring } from "sagbook/records/bench.ts";
import type { RadiusMeasurement } from "sagbook/uncertainty/radius_measurement.ts";
import { millimetres as mm } from "sagbook/units/length.ts";

const RING: Ring = {
  id: "A",
  shape: {
    kind: "balls",
    circleRadius: mm(60),
    ballRadius: mm(3),
    probeOffset: mm(0),
  },
  radiusUncertainty: mm(0.02),
  radiusUncertaintyAssumed: false,
  ballRadiusUncertainty: mm(0.001),
  expansion: 11.5e-6,
  foot: { kind: "unknown" },
};

/** All fifteen inputs vary. */
export const RADIUS_CASE: RadiusMeasurement = {
  form: "concave",
  sag: { value: 0.715, own: 0.0005, dof: 4, common: { zero: 0.001 } },
  ring: RING,
  zeroing: { standardUncertainty: 0.0003 },
  drift: { standardUncertainty: 0.0002 },
  step: mm(0.001),
  gauge: { id: "G", scaleUncertainty: 0.001, tiltDegrees: 1 },
  tilt: { standardUncertaintyDegrees: 1 },
  flat: { id: "F", size: mm(150), flatness: mm(0.001) },
  probeOffsetUncertainty: mm(0.1),
  ringWarmerBy: { value: 2, halfWidth: 2 },
  work: { thickness: mm(25), expansion: 3.3e-6 },
  upperFaceWarmerBy: { value: 0, halfWidth: 0.5 },
  centring: { standardUncertainty: 3, conic: -1 },
};
