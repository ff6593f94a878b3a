/**
 * What a test wants to know of a drawn figure.
 *
 * @module
 */
import type { Figure } from "sagbook/figures/figure.ts";

/** All texts in the picture, in the order of the drawing. */
export function textsOf({ svg }: Figure): string[] {
  return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/gs)]
    .flatMap(([, text]) => text.split(/<[^>]*>/))
    .map((text) =>
      text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll(
        "&amp;",
        "&",
      )
    )
    .filter((text) => text !== "");
}

/** How many elements carry a class, such as `s-alarm`. */
export function countOf(
  { svg }: Figure,
  element: string,
  style: string,
): number {
  return [
    ...svg.matchAll(
      new RegExp(`<${element} [^>]*class="[^"]*\\b${style}\\b`, "g"),
    ),
  ]
    .length;
}

/** The figure without what depends on its title alone. */
export function bodyOf({ svg }: Figure): string {
  return svg.slice(svg.indexOf("</style>")).replace(/figure-[0-9a-z]+/g, "ID");
}
