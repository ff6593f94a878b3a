/**
 * What to read next: along a plan, or set by set without one.
 *
 * @module
 */
import type { Reading } from "../records/reading.ts";

/** One reading to take. */
export interface Step {
  /** What its line in the file will say besides the value. */
  readonly cells: Readonly<Record<string, string>>;
  /** The work, or a look at the flat. */
  readonly on: "work" | "flat";
  /** The place in the user's words. */
  readonly label: string;
  /** What to skip when the user skips it. */
  readonly key: string;
}

/** What comes next. */
export type Next =
  | {
    readonly kind: "step";
    readonly step: Step;
    /** Label of the zeroing. */
    readonly zeroing: string;
    /** Which set it is, from 1, and of how many where that is planned. */
    readonly number: number;
    readonly of?: number;
  }
  /** A set is to be begun by zeroing. */
  | {
    readonly kind: "zero";
    readonly zeroing: string;
    readonly number: number;
    readonly of?: number;
    /** Who measures it, where the plan says. */
    readonly operator?: string;
    /** Diameter to suggest, where there is no plan. */
    readonly diameter?: string;
  }
  | { readonly kind: "done" };

/** A set that was zeroed for and has no reading yet. */
export interface BegunSet {
  readonly zeroing: string;
  readonly diameter?: string;
}

/** Where the recorder stands, read off what has been read. */
export interface Route {
  /** Finds what comes next. */
  next(readings: readonly Reading[], begun: BegunSet | undefined): Next;
  /** Passes over one step. */
  skip(step: Step): void;
  /** Passes over the rest of a set. */
  close(zeroing: string): void;
  /** Takes up a set again that was passed over. */
  open(zeroing: string): void;
  /** Cells of a reading out of turn in a set. */
  extra(zone: string, zeroing: string, set: readonly Reading[]): Step;
  /** Places that may be chosen out of turn. */
  readonly zones: readonly string[];
}

/** A place with the end of the diameter, in the user's words. */
export function signedLabel({ offset, zone }: Reading): string {
  return `${offset < 0 ? "-" : ""}${zone.label}`;
}
