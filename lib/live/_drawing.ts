import type { Shape } from "./_shape.ts";

/** A number that is set by a slider or typed. */
export interface NumberControl {
  readonly kind: "number";
  readonly id: string;
  readonly label: string;
  /** Unit behind the number; empty for a plain number. */
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly start: number;
}

/** One of a few named choices. */
export interface ChoiceControl {
  readonly kind: "choice";
  readonly id: string;
  readonly label: string;
  /** Names as values are written, with the words shown. */
  readonly options: Readonly<Record<string, string>>;
  readonly start: string;
}

/** What the reader may set. */
export type Control = NumberControl | ChoiceControl;

/** One number that the figure tells. */
export interface ToldNumber {
  readonly label: string;
  /** Figures and unit, ready to read. */
  readonly text: string;
}

/** A picture at given settings. */
export interface Picture {
  /** Size in px at which words have their own size. */
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** What it shows, in words. */
  readonly description: string;
  readonly numbers: readonly ToldNumber[];
}

/** What is set: numbers by id, choices by id. */
export interface Settings {
  readonly numbers: Readonly<Record<string, number>>;
  readonly choices: Readonly<Record<string, string>>;
}

/** A figure that can be drawn at any settings within its controls. */
export interface Drawing {
  readonly title: string;
  readonly controls: readonly Control[];
  readonly draw: (settings: Settings) => Picture;
}

/** A number control in one line. */
export function slider(
  id: string,
  label: string,
  unit: string,
  [least, most, step]: readonly [number, number, number],
  start: number,
): NumberControl {
  return { kind: "number", id, label, unit, least, most, step, start };
}

/** The settings a drawing starts with, some of them given. */
export function settingsOf(
  { controls }: Drawing,
  given: Readonly<Record<string, unknown>> = {},
): Settings {
  const numbers: Record<string, number> = {};
  const choices: Record<string, string> = {};
  for (const control of controls) {
    const value = given[control.id];
    if (control.kind === "choice") {
      choices[control.id] = typeof value === "string" &&
          Object.hasOwn(control.options, value)
        ? value
        : control.start;
    } else {
      numbers[control.id] = isWithin(control, value) ? value : control.start;
    }
  }
  return { numbers, choices };
}

/** Whether a value is a number that a control takes. */
export function isWithin(
  { least, most }: NumberControl,
  value: unknown,
): value is number {
  return typeof value === "number" && value >= least && value <= most;
}
