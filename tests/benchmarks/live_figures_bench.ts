/**
 * How long a live figure takes from a moved slider to its new picture: the
 * drawing alone here, and in a browser when run as a program.
 */
import { LIVE_FIGURES, liveFigure } from "sagbook/live/live_figure.ts";
import { liveScript } from "sagbook/live/live_script.ts";
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { settingsOf } from "../../lib/live/_drawing.ts";
import { DRAWINGS } from "../../lib/live/_drawings.ts";

for (const name of LIVE_FIGURES) {
  const drawing = DRAWINGS[name];
  const settings = settingsOf(drawing);
  Deno.bench(`draw ${name}`, { group: "drawing" }, () => {
    drawing.draw(settings);
  });
}

Deno.bench("liveFigure(), picture and numbers as text", () => {
  liveFigure("blind-and-seeing");
});

/**
 * Moves the first slider of a figure 20 times and waits for each new frame;
 * the time runs from the event to after the browser has painted.
 */
const MEASURE = `async (host) => {
  const range = host.querySelector("input[type=range]");
  const [low, high] = [Number(range.min), Number(range.max)];
  const frame = () => new Promise((done) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = done;
    port2.postMessage(0);
  }));
  const [work, seen] = [[], []];
  host.scrollIntoView();
  await frame();
  for (let k = 0; k <= 20; k++) {
    range.value = low + (high - low) * ((k * 7) % 21) / 20;
    const start = performance.now();
    range.dispatchEvent(new Event("input"));
    host.getBoundingClientRect();
    work.push(performance.now() - start);
    await frame();
    seen.push(performance.now() - start);
  }
  const at = (list, part) => list.slice(1).sort((a, b) => a - b)[Math.ceil(part * 20) - 1];
  return [at(work, 0.5), at(work, 0.95), at(seen, 0.5), at(seen, 0.95)];
}`;

if (import.meta.main) {
  const { TestBrowser } = await import("../browser/_page.ts");
  const { notebook } = await readNotebook(
    new URL("../../notebooks/teaching-the-geometry.ipynb", import.meta.url)
      .pathname,
  );
  const html = await exportHtml(notebook, {
    layout: "reader",
    reading: "room",
    liveScript: await liveScript(),
  });
  await using browser = await TestBrowser.start();
  const { page } = await browser.open(html, { width: 1280, height: 800 });
  console.log(
    "A slider moved 20 times in Chromium, ms (wanted: a repaint within 50):\n\n" +
      "| figure | drawn and laid out, median | 95 % | painted, median | 95 % |\n" +
      "| --- | ---: | ---: | ---: | ---: |",
  );
  const met = new Set<string>();
  const hosts = page.locator("[data-is-live]");
  for (let index = 0; index < await hosts.count(); index++) {
    const name = await hosts.nth(index).getAttribute("data-live") ?? "";
    if (met.has(name)) continue;
    met.add(name);
    const times = await page.evaluate(
      `(${MEASURE})(document.querySelectorAll("[data-is-live]")[${index}])`,
    ) as number[];
    console.log(
      `| ${name} | ${times.map((time) => time.toFixed(1)).join(" | ")} |`,
    );
  }
  console.log(`\nThe page: ${(html.length / 1e6).toFixed(2)} MB.`);
}
