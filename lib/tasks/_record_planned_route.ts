/**
 * What to read next along a plan.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import type { PlannedReading } from "../records/read_plan.ts";
import type { Reading } from "../records/reading.ts";
import {
  type BegunSet,
  type Next,
  type Route,
  signedLabel,
  type Step,
} from "./_record_route.ts";

/** A plan's cells; the offset names its unit, for the display's may change. */
function cellsOf({ cells, place }: PlannedReading): Record<string, string> {
  return cells.offset === undefined || place.on === "flat"
    ? { ...cells }
    : { ...cells, offset: `${Number(place.offset.toFixed(4))} mm` };
}

/** Follows the lines of a plan. */
export class PlannedRoute implements Route {
  readonly zones: readonly string[];
  readonly #plan: readonly PlannedReading[];
  readonly #sets: readonly string[];
  readonly #skipped = new Set<string>();

  /** Sets the plan; all of it belongs to one session. */
  constructor(plan: readonly PlannedReading[]) {
    this.#plan = plan;
    this.#sets = [...new Set(plan.map(({ place }) => zeroingLabel(place)))];
    this.zones = [
      ...new Set(
        plan.filter(({ place }) => place.on === "work")
          .map(({ place }) => place.zone.label),
      ),
    ];
  }

  /** How many sets there are. */
  get sets(): number {
    return this.#sets.length;
  }

  #keyOf(planned: PlannedReading): string {
    return `line ${planned.line}`;
  }

  /** A reading's name in the plan: its step number, or else its place. */
  #nameOf(reading: Reading, note: string | undefined): string {
    if (note !== undefined && /^step \d+$/.test(note)) return note;
    return [
      zeroingLabel(reading),
      reading.ring,
      reading.on,
      reading.offset.toFixed(1),
      reading.on === "flat" ? "" : reading.diameterDegrees ?? "",
      reading.operator ?? "",
    ].join("|");
  }

  next(readings: readonly Reading[], begun: BegunSet | undefined): Next {
    const taken = new Map<string, number>();
    const labels = new Set<string>();
    for (const reading of readings) {
      const name = this.#nameOf(reading, reading.note);
      taken.set(name, (taken.get(name) ?? 0) + 1);
      labels.add(zeroingLabel(reading));
    }
    for (const planned of this.#plan) {
      const { cells, place } = planned;
      const name = this.#nameOf(place, cells.note);
      const left = taken.get(name) ?? 0;
      if (left > 0) {
        taken.set(name, left - 1);
        continue;
      }
      const key = this.#keyOf(planned);
      if (this.#skipped.has(key)) continue;
      const zeroing = zeroingLabel(place);
      const number = this.#sets.indexOf(zeroing) + 1;
      const where = { zeroing, number, of: this.#sets.length };
      if (!labels.has(zeroing) && begun?.zeroing !== zeroing) {
        const { operator } = cells;
        return {
          kind: "zero",
          ...where,
          ...(operator === undefined ? {} : { operator }),
        };
      }
      const flat = place.on === "flat";
      const label = flat ? "flat" : signedLabel(place);
      return {
        kind: "step",
        ...where,
        step: { cells: cellsOf(planned), on: place.on, label, key },
      };
    }
    return { kind: "done" };
  }

  skip(step: Step): void {
    this.#skipped.add(step.key);
  }

  open(zeroing: string): void {
    for (const planned of this.#plan) {
      if (zeroingLabel(planned.place) === zeroing) {
        this.#skipped.delete(this.#keyOf(planned));
      }
    }
  }

  close(zeroing: string): void {
    for (const planned of this.#plan) {
      if (zeroingLabel(planned.place) === zeroing) {
        this.#skipped.add(this.#keyOf(planned));
      }
    }
  }

  extra(zone: string, zeroing: string): Step {
    const like =
      this.#plan.find(({ place }) =>
        zeroingLabel(place) === zeroing && place.on === "work"
      ) ?? this.#plan[0];
    const { offset: _, note: _note, ...cells } = like.cells;
    const key = `extra ${zone}`;
    return zone === "flat"
      ? {
        on: "flat",
        label: "flat",
        cells: { ...cells, zone, diameter_deg: "", foot_deg: "" },
        key,
      }
      : { on: "work", label: zone, cells: { ...cells, zone }, key };
  }
}
