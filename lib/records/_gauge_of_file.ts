/**
 * The gauge of `bench.json`, in millimetres.
 *
 * @module
 */
import { type Millimetres, millimetres } from "../units/length.ts";
import type { Gauge, GaugeShows } from "./bench.ts";
import type { GaugeFile } from "./bench_file.ts";
import type { FileLengths } from "./_file_lengths.ts";
import type { LengthUnit } from "./piece.ts";

const ZERO = millimetres(0);
const UNIT_WORDS = { mm: "millimetres", in: "inches" } as const;

function shows(file: GaugeFile, read: FileLengths): GaugeShows | undefined {
  const kind = file.shows ?? "sag";
  if (kind === "sag") return { kind };
  const set = file.set_ring;
  if (set === undefined) {
    return read.say(
      "refused",
      "missing-key",
      "gauge.set_ring",
      `a gauge that shows ${kind} has a ring size set in it, and this is missing`,
      { mend: 'add "set_ring": { "circle_radius": "…", "ball_radius": "…" }' },
    );
  }
  const circleRadius = read.length(
    set.circle_radius,
    "gauge.set_ring.circle_radius",
  );
  const ballRadius = read.length(
    set.ball_radius,
    "gauge.set_ring.ball_radius",
    "0 or more",
  ) ?? ZERO;
  if (circleRadius === undefined) return undefined;
  if (kind === "radius") return { kind, circleRadius, ballRadius };
  if (set.index === undefined) {
    return read.say(
      "refused",
      "missing-key",
      "gauge.set_ring.index",
      "a gauge that shows power has a refractive index set in it, and this is missing",
      { mend: 'add "index": 1.53, or the index your gauge was made for' },
    );
  }
  return { kind, index: set.index, circleRadius, ballRadius };
}

function steps(
  file: GaugeFile,
  read: FileLengths,
): Partial<Record<LengthUnit, Millimetres>> {
  const step = file.display_step;
  if (step === undefined) {
    read.say(
      "note",
      "no-display-step",
      "gauge.display_step",
      "no display step is given: its share of the uncertainty cannot be counted",
      { mend: 'add "display_step": "0.001 mm", or what your display steps by' },
    );
    return {};
  }
  if (typeof step === "string" || "value" in step) {
    const length = read.length(step, "gauge.display_step");
    const unit = read.unitOf(step);
    if (length === undefined || unit === undefined) return {};
    if (file.unit === undefined || file.unit === unit) {
      return { [unit]: length };
    }
    read.say(
      "note",
      "step-in-other-unit",
      "gauge.display_step",
      `the display step is given in ${
        UNIT_WORDS[unit]
      }, but the gauge reads in ${
        UNIT_WORDS[file.unit]
      }; the same step was taken for both`,
      {
        mend:
          'give both, as "display_step": { "mm": "0.001 mm", "in": "0.00005 in" }',
      },
    );
    return { mm: length, in: length };
  }
  const mm = read.length(step.mm, "gauge.display_step.mm");
  const inch = read.length(step.in, "gauge.display_step.in");
  return {
    ...(mm === undefined ? {} : { mm }),
    ...(inch === undefined ? {} : { in: inch }),
  };
}

function scaleUncertainty(file: GaugeFile, read: FileLengths): number {
  const given = file.scale_uncertainty;
  if (given === undefined) {
    read.say(
      "note",
      "no-scale-uncertainty",
      "gauge.scale_uncertainty",
      "no uncertainty of the gauge's scale is given; it was taken as 0",
      { mend: 'add it as a fraction or as "0.1 %"' },
    );
    return 0;
  }
  if (typeof given === "number") {
    if (given < 0.1) return given;
  } else {
    const match = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*%\s*$/.exec(given);
    const percent = Number(match?.[1].replace(",", ".") ?? NaN);
    if (percent < 10) return percent / 100;
  }
  read.say(
    "refused",
    "wrong-value",
    "gauge.scale_uncertainty",
    "this is no fraction of the sag below one tenth",
    {
      value: String(given),
      expected: 'a fraction such as 0.001, or "0.1 %"',
      mend: "write the fraction, not a length",
    },
  );
  return 0;
}

/** Makes a gauge; `undefined` when something that it needs was refused. */
export function gaugeOfFile(
  file: GaugeFile,
  read: FileLengths,
): Gauge | undefined {
  const before = read.refusals;
  const shown = shows(file, read);
  const result = {
    id: file.id ?? "gauge",
    countsUpOn: file.counts_up_on ?? "declared surface",
    ...(file.unit === undefined ? {} : { unit: file.unit }),
    steps: steps(file, read),
    scaleUncertainty: scaleUncertainty(file, read),
    ...(file.stem_tilt_deg === undefined
      ? {}
      : { tiltDegrees: file.stem_tilt_deg }),
  } as const;
  if (shown === undefined || read.refusals > before) return undefined;
  return { ...result, shows: shown };
}
