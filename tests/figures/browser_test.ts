import { deepEqual, equal, ok } from "node:assert/strict";
import { chromium } from "playwright-core";
import { hardSamples } from "./_hard_samples.ts";
import { textWidth } from "../../lib/figures/_text_width.ts";
import { samples } from "./_samples.ts";

const BROWSER = "/usr/bin/chromium";

async function isThere(path: string): Promise<boolean> {
  return await Deno.stat(path).then(() => true, () => false);
}

/** What the page finds out about the one figure in it. */
interface Seen {
  clipped: string[];
  overlapping: string[];
  strangers: string[];
  texts: number;
  xml: string;
}

/** Runs in the page: every text inside the picture, none upon another. */
const LOOK = `(() => {
  const svg = document.querySelector("svg");
  const frame = svg.getBoundingClientRect();
  const texts = [...svg.querySelectorAll("text")]
    .filter((text) => text.textContent.trim() !== "");
  const boxes = texts.map((text) => text.getBoundingClientRect());
  const clipped = texts.filter((_, i) => {
    const box = boxes[i];
    return box.left < frame.left - 0.5 || box.right > frame.right + 0.5 ||
      box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5;
  }).map((text) => text.textContent);
  const overlapping = [];
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b, j) => {
    const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
    const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    if (across > 1 && down > 5) {
      overlapping.push(texts[i].textContent + " | " + texts[i + 1 + j].textContent);
    }
  }));
  const inside = new Set(svg.querySelectorAll("*"));
  const strangers = [...document.body.querySelectorAll("*")]
    .filter((node) => node !== svg && !inside.has(node) && node.id !== "after")
    .map((node) => node.tagName);
  const parsed = new DOMParser().parseFromString(svg.outerHTML, "image/svg+xml");
  return {
    clipped, overlapping, strangers, texts: texts.length,
    xml: parsed.documentElement.tagName,
  };
})()`;

Deno.test({
  name:
    "figures: no label is clipped or covered, at its own size and 360 px wide, in light and dark",
  ignore: !(await isThere(BROWSER)),
  sanitizeOps: false,
  sanitizeResources: false,
  async fn() {
    const browser = await chromium.launch({
      executablePath: BROWSER,
      args: ["--no-sandbox"],
    });
    try {
      for (const colorScheme of ["light", "dark"] as const) {
        const page = await browser.newPage({ colorScheme });
        for (const { name, draw } of [...samples, ...hardSamples]) {
          const { svg, width } = await draw();
          for (const across of [width, 360]) {
            await page.setViewportSize({ width: across, height: 600 });
            await page.setContent(
              `<!doctype html><body style="margin:0">${svg}<p id="after"></p>`,
            );
            const seen = await page.evaluate(LOOK) as Seen;
            deepEqual(seen.clipped, [], `${name}: clipped`);
            deepEqual(seen.overlapping, [], `${name}: overlapping`);
            deepEqual(seen.strangers, [], `${name}: fell out of the picture`);
            equal(seen.xml, "svg", `${name}: not well-formed`);
            ok(seen.texts > 3, `${name}: no text`);
            // From rim to rim of a phone 360 px wide they keep 12 px.
            const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)]
              .map(([, size]) => Number(size));
            ok(
              Math.min(...sizes) * 360 / width >= 12 || width !== 480 ||
                /legend/i.test(name),
              `${name}: letters of ${Math.min(...sizes)} px`,
            );
          }
        }
        await page.close();
      }
    } finally {
      await browser.close();
    }
  },
});

Deno.test({
  name:
    "figures: one SVG is light on a light page and on paper, dark on a dark page, and as the page says",
  ignore: !(await isThere(BROWSER)),
  sanitizeOps: false,
  sanitizeResources: false,
  async fn() {
    const { svg } = await samples[0].draw();
    const browser = await chromium.launch({
      executablePath: BROWSER,
      args: ["--no-sandbox"],
    });
    try {
      const page = await browser.newPage();
      const colors = async () =>
        await page.evaluate(`["rect.f-paper", "text.f-ink"].map((name) =>
            getComputedStyle(document.querySelector("svg " + name)).fill)`);
      await page.setContent(`<!doctype html><body>${svg}`);
      const light = ["rgb(255, 255, 255)", "rgb(28, 35, 43)"];
      const dark = ["rgb(21, 25, 30)", "rgb(232, 236, 240)"];
      await page.emulateMedia({ colorScheme: "light", media: "screen" });
      deepEqual(await colors(), light);
      await page.emulateMedia({ colorScheme: "dark", media: "screen" });
      deepEqual(await colors(), dark);
      await page.emulateMedia({ colorScheme: "dark", media: "print" });
      deepEqual(await colors(), light);
      await page.setContent(
        `<!doctype html><style>body{--figure-paper:#102030}</style>${svg}`,
      );
      deepEqual((await colors() as string[])[0], "rgb(16, 32, 48)");
    } finally {
      await browser.close();
    }
  },
});

Deno.test({
  name: "textWidth() is at least the width in a browser, for every usual face",
  ignore: !(await isThere(BROWSER)),
  sanitizeOps: false,
  sanitizeResources: false,
  async fn() {
    const browser = await chromium.launch({
      executablePath: BROWSER,
      args: ["--no-sandbox"],
    });
    try {
      const page = await browser.newPage();
      const texts = [
        "Sag less sag at centre (µm)",
        "−12.345 to +67.890 mm, ±1.5 σ",
        "the quick brown fox jumps over the lazy dog",
        "THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG",
        "100 % · 15 µm aluminium oxide × 2 – 3 °C …",
      ];
      const measured = await page.evaluate(`((texts) => {
        const pen = document.createElement("canvas").getContext("2d");
        return ["DejaVu Sans", "Liberation Sans", "system-ui, sans-serif"]
          .flatMap((face) => ["", "600 "].flatMap((weight) => texts.map((text) => {
            pen.font = weight + "100px " + face;
            return [text, weight !== "", pen.measureText(text).width];
          })));
      })(${JSON.stringify(texts)})`) as [string, boolean, number][];
      for (const [text, bold, width] of measured) {
        const estimate = textWidth(text, 100, bold);
        ok(estimate >= width - 0.5, `${text}: ${estimate} < ${width}`);
      }
    } finally {
      await browser.close();
    }
  },
});

if (!(await isThere(BROWSER))) {
  console.log(`skipped: figures in a browser needs ${BROWSER}`);
  if (Deno.env.get("SAGBOOK_ALL") === "1") {
    throw new Error(
      `Cannot skip the figures in a browser under SAGBOOK_ALL=1: install ${BROWSER}`,
    );
  }
}
