/**
 * What a notebook cell may return to be shown.
 *
 * @module
 */

/** One value in several forms, keyed by MIME type; a front end picks the best. */
export interface MimeBundle {
  /** Text, or JSON for a structured MIME type. */
  readonly [mimeType: string]: string | Readonly<Record<string, unknown>>;
}

/** The method a Jupyter kernel for Deno asks a cell's value for. */
export const jupyterDisplay: unique symbol = Symbol.for(
  "Jupyter.display",
) as never;

/** A value that knows how a notebook shows it. */
export interface Displayable {
  /** Makes the forms; called once each time a cell returns the value. */
  [jupyterDisplay](): MimeBundle | Promise<MimeBundle>;
}
