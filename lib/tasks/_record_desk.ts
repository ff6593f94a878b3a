/**
 * Where a session at the bench stands.
 *
 * @module
 */
import { effectiveFeet } from "../geometry/effective_feet.ts";
import { sagFromRadius } from "../geometry/sag_from_radius.ts";
import type { GaugeScatter } from "../narrative/bench_scatter.ts";
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { millimetres } from "../units/length.ts";
import type { Keeper } from "./_record_keeper.ts";
import type { BegunSet, Next, Route, Step } from "./_record_route.ts";
import { stampOf } from "./_record_words.ts";

/** What a session is made of. */
export interface DeskSettings {
  readonly piece: Piece;
  readonly bench: Bench;
  readonly keeper: Keeper;
  readonly route: Route;
  /** Name of the session. */
  readonly session: string;
  /** Id of the ring, or of the plan's first one. */
  readonly ring: string;
  /** Cells that every line gets unless its step says otherwise. */
  readonly cells: Readonly<Record<string, string>>;
  /** Finds what earlier sessions showed of the gauge, once it is wanted. */
  readonly scatter: () => Promise<GaugeScatter>;
  /** False where nobody can answer questions: at a gauge's cable. */
  readonly asks: boolean;
  /** Says one line. */
  readonly say: (line: string) => void;
  /** Says one line that something looks wrong. */
  readonly warn: (line: string) => void;
  /** Says how the sets so far stand. */
  readonly stand: (readings: readonly Reading[]) => Promise<void>;
  readonly now: () => Date;
}

/** A set that waits for its zero. */
export type ToZero = Next & { readonly kind: "zero" };

/** What the next line answers. */
export type Question =
  | { readonly kind: "next" }
  | { readonly kind: "diameter"; readonly next: ToZero }
  | { readonly kind: "menu" }
  | { readonly kind: "place" }
  | { readonly kind: "turn" }
  | { readonly kind: "extra"; readonly step: Step }
  | { readonly kind: "ended" };

/** The session's memory between two lines. */
export class Desk {
  /** What it is made of. */
  readonly with: DeskSettings;
  /** What the next line answers. */
  question: Question = { kind: "next" };
  /** A set that was zeroed for. */
  begun: BegunSet | undefined;
  /** What the display showed before zero was pressed. */
  zeroBefore: string | undefined;
  /** When the flat was last looked at, or zero pressed. */
  flatAt: Date;
  /** Readings since then. */
  sinceFlat = 0;
  /** Sag that the piece's target, or its start, shows; in mm. */
  readonly nominal: number | undefined;
  /** Warnings that are said once. */
  readonly told = new Set<string>();

  /** Starts, or goes on where the file stops. */
  constructor(settings: DeskSettings) {
    this.with = settings;
    // A date alone, such as the work log lends, is no time of a look.
    const { takenAt } = this.mine.at(-1) ?? {};
    const then = takenAt?.includes("T") ? Date.parse(takenAt) : NaN;
    this.nominal = nominalSag(settings);
    this.flatAt = Number.isFinite(then) ? new Date(then) : settings.now();
  }

  /** Readings of this session that count. */
  get mine(): readonly Reading[] {
    const { keeper, session } = this.with;
    return keeper.readings.filter((one) => one.session === session);
  }

  /** What comes next. */
  get next(): Next {
    const { keeper, route, session } = this.with;
    // What waits for room on the disk has been read all the same.
    const held = keeper.held.flatMap(({ cells, reading }) =>
      reading === undefined || cells.withdrawn !== undefined ? [] : [reading]
    ).filter((one) => one.session === session);
    return route.next([...this.mine, ...held], this.begun);
  }

  /** Begins a set: the gauge stands at zero on the flat. */
  begin({ zeroing }: ToZero, diameter: string | undefined): void {
    this.begun = {
      zeroing,
      ...(diameter === undefined ? {} : { diameter }),
    };
    this.flatAt = this.with.now();
    this.sinceFlat = 0;
    this.told.delete("flat-long-ago");
    this.question = { kind: "next" };
  }

  /** A line of the file, from a step's cells. */
  rowOf(cells: Readonly<Record<string, string>>): Record<string, string> {
    const { session, cells: always, now } = this.with;
    return { ...always, ...cells, session, taken_at: stampOf(now()) };
  }

  /** Warns once, until the flat has been looked at. */
  once(key: string, text: string): void {
    if (this.told.has(key)) return;
    this.told.add(key);
    this.with.warn(text);
  }
}

/** The smallest sag that the ring shows on the radii the piece is to have. */
function nominalSag({ piece, bench, ring }: DeskSettings): number | undefined {
  const { target, startingRadius, form } = piece;
  const found = bench.rings.find(({ id }) => id === ring);
  const longest = Math.max(target?.radius ?? 0, startingRadius ?? 0);
  if (found === undefined || longest === 0) return undefined;
  try {
    const feet = effectiveFeet(found.shape, form);
    return sagFromRadius(millimetres(longest), feet, form);
  } catch {
    // A ring wider than the sphere: the reader says so, line by line.
    return undefined;
  }
}

/** What is asked for now, without a line end. */
export function promptOf(desk: Desk): string {
  const { question, next } = desk;
  const { keeper, asks, route } = desk.with;
  if (keeper.held.length > 0 && question.kind === "next") {
    return "Enter saves what is held: ";
  }
  if (question.kind === "diameter") {
    return `Diameter in degrees (Enter: ${question.next.diameter}): `;
  }
  if (question.kind === "turn") return "Diameter in degrees: ";
  if (question.kind === "menu") return "Which: ";
  if (question.kind === "place") return "Place: ";
  if (question.kind === "extra") return `${question.step.label}: `;
  if (question.kind === "ended" || next.kind === "done") return "";
  const set = `Set ${next.number}${
    next.of === undefined ? "" : ` of ${next.of}`
  }`;
  if (next.kind === "step") return `${set}, ${next.step.label}: `;
  if (asks) {
    const who = next.operator === undefined ? "" : `, ${next.operator}`;
    return `${set}${who}: zero on the flat. Shown before zero (Enter: not noted): `;
  }
  const { zeroing, diameter } = next;
  const begun = { zeroing, ...(diameter === undefined ? {} : { diameter }) };
  const first = route.next(desk.mine, begun);
  return `${set}, ${first.kind === "step" ? first.step.label : "the work"}: `;
}
