/**
 * What to read next without a plan: the same places, set by set.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import type { Reading } from "../records/reading.ts";
import {
  type BegunSet,
  type Next,
  type Route,
  signedLabel,
  type Step,
} from "./_record_route.ts";

/** Directions that spread over half a turn however many are read. */
const DIAMETERS = [0, 60, 120, 30, 90, 150, 15, 75, 135, 45, 105, 165];

/** Reads the same places in every set, one set after another. */
export class FreeRoute implements Route {
  readonly zones: readonly string[];
  readonly #foot: string;
  readonly #ring: string;
  readonly #skipped = new Set<string>();
  readonly #closed = new Set<string>();

  /** Sets places, feet and ring. */
  constructor(zones: readonly string[], foot: string, ring: string) {
    this.zones = zones;
    this.#foot = foot;
    this.#ring = ring;
  }

  next(readings: readonly Reading[], begun: BegunSet | undefined): Next {
    const labels = [...new Set(readings.map(zeroingLabel))];
    const zeroing = begun?.zeroing ?? labels.at(-1);
    const number = labels.length +
      (zeroing === undefined || labels.includes(zeroing) ? 0 : 1);
    if (zeroing !== undefined && !this.#closed.has(zeroing)) {
      const set = readings.filter((one) => zeroingLabel(one) === zeroing);
      const read = new Set(
        set.filter(({ on }) => on === "work").map(signedLabel),
      );
      const zone = this.zones.find((one) =>
        !read.has(one) && !this.#skipped.has(`${zeroing}|${one}`)
      );
      if (zone !== undefined) {
        const step = this.#at(zone, zeroing, set, begun);
        return { kind: "step", zeroing, number, step };
      }
      const looked = set.at(-1)?.on === "flat" ||
        this.#skipped.has(`${zeroing}|flat`);
      if (!looked && set.length > 0) {
        const step = this.#at("flat", zeroing, set, begun);
        return { kind: "step", zeroing, number, step };
      }
    }
    const numbers = labels.map(Number).filter(Number.isInteger);
    const next = Math.max(labels.length, 0, ...numbers) + 1;
    const used = new Set(readings.map((one) => one.diameterDegrees));
    const diameter = DIAMETERS.find((degrees) => !used.has(degrees)) ??
      DIAMETERS[labels.length % DIAMETERS.length];
    return {
      kind: "zero",
      zeroing: String(next),
      number: labels.length + 1,
      diameter: String(diameter),
    };
  }

  #at(
    zone: string,
    zeroing: string,
    set: readonly Reading[],
    begun: BegunSet | undefined,
  ): Step {
    const key = `${zeroing}|${zone}`;
    const ring = this.#ring;
    const degrees = set.findLast(({ diameterDegrees }) =>
      diameterDegrees !== undefined
    )?.diameterDegrees;
    const diameter = begun?.diameter ??
      (degrees === undefined ? "" : String(degrees));
    if (zone === "flat") {
      // The diameter is kept with it, for whoever goes on from here.
      const cells = { ring, zeroing, zone, diameter_deg: diameter };
      return { on: "flat", label: zone, cells, key };
    }
    return {
      on: "work",
      label: zone,
      key,
      cells: {
        ring,
        zeroing,
        zone,
        diameter_deg: diameter,
        foot_deg: this.#foot,
      },
    };
  }

  skip(step: Step): void {
    this.#skipped.add(step.key);
  }

  close(zeroing: string): void {
    this.#closed.add(zeroing);
  }

  open(zeroing: string): void {
    this.#closed.delete(zeroing);
  }

  extra(zone: string, zeroing: string, set: readonly Reading[]): Step {
    return this.#at(zone, zeroing, set, undefined);
  }
}
