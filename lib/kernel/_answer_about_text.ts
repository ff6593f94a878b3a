import type { CellChecker } from "../cells/cell_checker.ts";
import type { JsonObject } from "../protocol/message.ts";
import { pointsFromUnits, unitsFromPoints } from "./_code_points.ts";

/** Text and cursor of a request, the cursor in UTF-16 units. */
function read(content: JsonObject): { code: string; at: number } {
  const code = typeof content.code === "string" ? content.code : "";
  const points = typeof content.cursor_pos === "number"
    ? content.cursor_pos
    : [...code].length;
  return { code, at: unitsFromPoints(code, points) };
}

/** Answers `complete_request`. */
export async function complete(
  checker: CellChecker,
  content: JsonObject,
): Promise<JsonObject> {
  const { code, at } = read(content);
  const [prefix] = /[\p{ID_Continue}$\u200c\u200d]*$/u.exec(code.slice(0, at))!;
  const start = pointsFromUnits(code, at - prefix.length);
  const end = pointsFromUnits(code, at);
  const found = await checker.complete(code, at, prefix).catch(() => []);
  return {
    status: "ok",
    matches: found.map(({ text }) => text),
    cursor_start: start,
    cursor_end: end,
    metadata: {
      _jupyter_types_experimental: found.map(({ text, kind }) => ({
        start,
        end,
        text,
        type: kind,
      })),
    },
  };
}

/** Answers `inspect_request`. */
export async function inspect(
  checker: CellChecker,
  content: JsonObject,
): Promise<JsonObject> {
  const { code, at } = read(content);
  const before = /[\p{ID_Continue}$]/u.test(code[at] ?? "") ? at : at - 1;
  const markdown = await checker.hover(code, Math.max(0, before))
    .catch(() => undefined);
  if (markdown === undefined) {
    return { status: "ok", found: false, data: {}, metadata: {} };
  }
  const plain = markdown.replace(/^```\w*\n|^```$\n?/gm, "").trim();
  return {
    status: "ok",
    found: true,
    data: { "text/plain": plain, "text/markdown": markdown },
    metadata: {},
  };
}
