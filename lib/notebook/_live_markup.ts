/**
 * A live figure as HTML: its still picture and numbers, and what the page's own
 * script needs to take their place.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import { LIVE_TYPE } from "../display/live.ts";
import {
  outputMarkup,
  type OutputPlace,
  type OutputTools,
} from "./_output_markup.ts";
import { isJsonObject, type JsonValue, type Output } from "./document.ts";

/** The pairs of a list, as far as they are pairs of texts. */
function pairs(list: JsonValue | undefined): [string, string][] {
  if (!Array.isArray(list)) return [];
  return list.filter((pair): pair is [string, string] =>
    Array.isArray(pair) && pair.length === 2 &&
    pair.every((text) => typeof text === "string")
  );
}

/** Settings as far as they are finite numbers and short words. */
function settings(value: JsonValue | undefined): Record<string, JsonValue> {
  if (!isJsonObject(value)) return {};
  return Object.fromEntries(
    Object.entries(value).filter(([, one]) =>
      typeof one === "number" || (typeof one === "string" && one.length < 100)
    ),
  );
}

/**
 * Shows an output that is a live figure.
 *
 * Only here do the marks come from that the page's script looks for: what a
 * cell itself writes as HTML is cleaned of them. They carry a name and plain
 * settings, whoever wrote the notebook.
 *
 * @returns HTML, or `undefined` if the output is no live figure with a picture.
 */
export function liveMarkup(
  output: Output,
  place: OutputPlace,
  tools: OutputTools,
  canBeLive: boolean,
): string | undefined {
  if (!("data" in output)) return undefined;
  const live = output.data[LIVE_TYPE];
  const svg = output.data["image/svg+xml"];
  if (!isJsonObject(live) || typeof svg !== "string") return undefined;
  const { figure } = live;
  if (typeof figure !== "string" || !/^[a-z-]{1,60}$/.test(figure)) {
    return undefined;
  }
  const picture = outputMarkup(
    { ...output, data: { "image/svg+xml": svg } },
    place,
    tools,
  );
  if (picture === "") return undefined;
  const list = pairs(live.numbers).map(([label, text]) =>
    `<div><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(text)}</dd></div>`
  ).join("");
  const marks = canBeLive
    ? ` data-live="${figure}" data-settings="${
      escapeHtml(JSON.stringify(settings(live.settings)))
    }"`
    : "";
  return `<div class="sb-live"${marks}>${picture}<dl>${list}</dl></div>`;
}
