import { deepEqual, equal, ok } from "node:assert/strict";
import {
  fitText,
  shortened,
  textWidth,
  wrapText,
} from "../../lib/figures/_text_width.ts";

Deno.test("wrapText() keeps every line inside the room and loses no character", () => {
  const text =
    "Sag less sag at the centre, in micrometres, averaged over all sets";
  for (const room of [40, 90, 200, 1000]) {
    const lines = wrapText(text, 14, room);
    ok(lines.every((line) => textWidth(line, 14) <= room), `${room}: ${lines}`);
    equal(lines.join("").replaceAll(" ", ""), text.replaceAll(" ", ""));
  }
});

Deno.test("wrapText() breaks a word only where it is longer than a line, and keeps line breaks", () => {
  deepEqual(wrapText("edge\n88 mm", 14, 100), ["edge", "88 mm"]);
  deepEqual(wrapText("a bb", 14, 20), ["a", "bb"]);
  ok(wrapText("aaaaaaaaaaaaaaaa", 14, 50).length > 1);
});

Deno.test("wrapText() keeps a number and its unit together", () => {
  for (const text of ["tolerance ±1.5 µm", "up to 0.039 thou", "reach 88 mm"]) {
    for (let room = 80; room < 160; room += 5) {
      const lines = wrapText(text, 14, room);
      ok(!lines.some((line) => /^(µm|mm|thou)/.test(line)), `${lines}`);
    }
  }
});

Deno.test("fitText() and shortened() end in an ellipsis where something is missing, and fit", () => {
  const text = "drift between two looks at the flat on a warm day";
  const lines = fitText(text, 14, 120, 2);
  equal(lines.length, 2);
  ok(
    lines[1].endsWith("…") && lines.every((line) => textWidth(line, 14) <= 120),
  );
  deepEqual(fitText("repeat", 14, 120, 2), ["repeat"]);
  equal(shortened("repeat", 14, 120), "repeat");
  ok(textWidth(shortened(text, 14, 80), 14) <= 80);
});
