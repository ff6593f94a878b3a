/**
 * A figure that recomputes in the reader's browser.
 *
 * @module
 */
import {
  type Displayable,
  jupyterDisplay,
  type MimeBundle,
} from "../display/bundle.ts";
import { LIVE_TYPE, type LiveOutput } from "../display/live.ts";
import { Markup, markup } from "../display/markup.ts";
import { type Drawing, isWithin, settingsOf } from "./_drawing.ts";
import { DRAWINGS } from "./_drawings.ts";
import { svgText } from "./_svg_text.ts";
import { liveScript } from "./live_script.ts";

/** The name of a live figure. */
export type LiveFigureName =
  | "chord-and-sag"
  | "balls-and-edge"
  | "reading-error"
  | "zero-error"
  | "points-seen"
  | "averaging"
  | "ring-size"
  | "turned-edge"
  | "blind-and-seeing"
  | "identical-readings";

/** A figure with sliders, and the picture it starts with. */
export interface LiveFigure extends Displayable {
  /** Its title. */
  readonly title: string;
  /** What the picture shows at the start, in words. */
  readonly description: string;
  /** The picture at the start: one `svg` element. */
  readonly svg: string;
  /** The numbers it tells at the start: what, and the figures with their unit. */
  readonly numbers: readonly (readonly [string, string])[];
  /** Forms for a notebook: live, still, and as text. */
  [jupyterDisplay](): Promise<MimeBundle>;
}

/** The names of all live figures, in the order of a class. */
export const LIVE_FIGURES: readonly LiveFigureName[] = Object.freeze(
  Object.keys(DRAWINGS) as LiveFigureName[],
);

function checked(
  drawing: Drawing,
  start: Readonly<Record<string, number | string>>,
): void {
  for (const [id, value] of Object.entries(start)) {
    const control = drawing.controls.find((one) => one.id === id);
    if (control === undefined) {
      const known = drawing.controls.map((one) => one.id).join(", ");
      throw new RangeError(
        `Cannot set a live figure as its settings are ${known}: current value is ${id}`,
      );
    }
    if (control.kind === "number" && !isWithin(control, value)) {
      throw new RangeError(
        `Cannot set a live figure as ${id} must lie from ${control.least} to ${control.most} ${control.unit}: current value is ${value} ${control.unit}`,
      );
    }
    if (
      control.kind === "choice" &&
      !(typeof value === "string" && Object.hasOwn(control.options, value))
    ) {
      const known = Object.keys(control.options).join(", ");
      throw new RangeError(
        `Cannot set a live figure as ${id} must be one of ${known}: current value is ${value}`,
      );
    }
  }
}

/** Base 64 of a text, as a data address needs it. */
function base64(text: string): string {
  let bytes = "";
  for (const byte of new TextEncoder().encode(text)) {
    bytes += String.fromCharCode(byte);
  }
  return btoa(bytes);
}

/** The words under a picture that stands still. */
const STILL =
  "A still picture: its sliders move in a trusted notebook, and in the page that deno task teach makes.";

/**
 * Makes a figure with sliders that a cell may return.
 *
 * In the exported page and in a trusted notebook the browser redraws it with
 * this library's own geometry, compiled; nothing is asked of any host. Where
 * scripts are off, or the notebook is not trusted, the picture and numbers it
 * starts with stay. Tested in Chromium, in the page and in Debian's Jupyter
 * Notebook 6.4; elsewhere untested.
 *
 * @param name Which figure.
 * @param start Settings to start with; the figure's own unless given.
 * @returns The figure, ready to be returned from a notebook cell.
 * @throws {RangeError} If a setting is unknown or outside its range.
 *
 * @example
 * ```ts
 * import { liveFigure } from "sagbook/live/live_figure.ts";
 * import { deepEqual } from "node:assert/strict";
 *
 * const { numbers } = liveFigure("chord-and-sag", { radius: 2000, circle: 50, ball: 0 });
 * deepEqual(numbers[0], ["Sag", "0.6251\u00a0mm"]);
 * ```
 */
export function liveFigure(
  name: LiveFigureName,
  start: Readonly<Record<string, number | string>> = {},
): LiveFigure {
  if (!Object.hasOwn(DRAWINGS, name)) {
    throw new RangeError(
      `Cannot make a live figure as its name must be one of ${
        LIVE_FIGURES.join(", ")
      }: current value is ${name}`,
    );
  }
  const drawing: Drawing = DRAWINGS[name];
  checked(drawing, start);
  const settings = settingsOf(drawing, start);
  const picture = drawing.draw(settings);
  const { title } = drawing;
  const { description } = picture;
  const svg = svgText(picture, title);
  const numbers = picture.numbers.map(({ label, text }) =>
    [label, text] as const
  );
  const output: LiveOutput = {
    figure: name,
    settings: { ...settings.numbers, ...settings.choices },
    numbers,
  };
  return {
    title,
    description,
    svg,
    numbers,
    [jupyterDisplay]: async () => ({
      "text/html":
        markup`<figure data-live="${name}" data-settings="${
          JSON.stringify(output.settings)
        }"><img alt="${title}. ${description}" src="data:image/svg+xml;base64,${
          base64(svg)
        }" width="${picture.width}" height="${picture.height}">${
          numbers.map(([label, text]) =>
            markup`<p>${label}: <b>${text}</b></p>`
          )
        }<figcaption>${STILL}</figcaption></figure><script>${new Markup(
          await liveScript(),
        )}</script>`.html,
      "image/svg+xml": svg,
      [LIVE_TYPE]: { ...output },
      "text/plain": [
        `${title}. ${description}`,
        ...numbers.map(([label, text]) => `${label}: ${text}`),
      ].join("\n"),
    }),
  };
}
