/**
 * How long a live figure takes from a moved slider to its new picture: the
 * drawing alone, and in a browser.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import type { BenchReport } from "sagbook/tasks/_benchmark.ts";
import { LIVE_FIGURES, liveFigure } from "sagbook/live/live_figure.ts";
import { liveScript } from "sagbook/live/live_script.ts";
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import { settingsOf } from "sagbook/live/_drawing.ts";
import { DRAWINGS } from "sagbook/live/_drawings.ts";
import { benchProgram, type BenchSize } from "./_program.ts";
import { median } from "./_side_by_side.ts";
import { memoryOf } from "./_whole_program.ts";

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

/** The middle time of a drawing in ms, many at once since one is too short. */
function drawingTime(
  name: (typeof LIVE_FIGURES)[number],
  runs: number,
): number {
  const drawing = DRAWINGS[name];
  const settings = settingsOf(drawing);
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    for (let k = 0; k < 20; k++) drawing.draw(settings);
    times.push((performance.now() - start) / 20);
  }
  return median(times);
}

/** Slowest figure and the table of all, in a browser; undefined without one. */
async function inBrowser(html: string, most: number) {
  const { TestBrowser } = await import("../browser/_page.ts");
  const mark = crypto.randomUUID();
  Deno.env.set("SAGBOOK_BENCH", mark);
  let browser: Awaited<ReturnType<typeof TestBrowser.start>>;
  try {
    browser = await TestBrowser.start();
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    return undefined;
  }
  const table: string[] = [];
  let worst = 0;
  try {
    const { page } = await browser.open(html, { width: 1280, height: 800 });
    const met = new Set<string>();
    const hosts = page.locator("[data-is-live]");
    for (let index = 0; index < await hosts.count(); index++) {
      const name = await hosts.nth(index).getAttribute("data-live") ?? "";
      if (met.has(name) || met.size === most) continue;
      met.add(name);
      const times = await page.evaluate(
        `(${MEASURE})(document.querySelectorAll("[data-is-live]")[${index}])`,
      ) as number[];
      worst = Math.max(worst, times[3]);
      table.push(
        `| ${name} | ${times.map((time) => time.toFixed(1)).join(" | ")} |`,
      );
    }
    // This process bears the mark in name only: it was set after its start.
    return { table, worst, memory: await memoryOf(mark) };
  } finally {
    await browser[Symbol.asyncDispose]();
  }
}

async function run(size: BenchSize): Promise<BenchReport> {
  const isTiny = size === "tiny";
  const runs = isTiny ? 1 : 50;
  const drawn = LIVE_FIGURES.map((name) => drawingTime(name, runs));
  const text: number[] = [];
  for (let k = 0; k < runs; k++) {
    const start = performance.now();
    liveFigure("blind-and-seeing");
    text.push(performance.now() - start);
  }
  const { notebook } = await readNotebook(fileURLToPath(
    new URL("../../notebooks/teaching-the-geometry.ipynb", import.meta.url),
  ));
  const html = await exportHtml(notebook, {
    layout: "reader",
    reading: "room",
    liveScript: await liveScript(),
  });
  const seen = await inBrowser(html, isTiny ? 1 : Infinity);
  return {
    title: "Live figures",
    about: `A slider moved 20 times for each figure of the class's page (${
      (html.length / 1e6).toFixed(2)
    } MB) in Chromium: from the event until the picture is drawn and laid out, and until it is painted, which waits for the next of 60 frames a second. The memory is the browser's, all its processes.`,
    rows: [
      {
        what: "Slowest live figure drawn, outside a browser",
        ours: Math.max(...drawn),
      },
      {
        what: "A live figure with its numbers as text, for the still page",
        ours: median(text),
      },
      ...(seen === undefined ? [] : [{
        what: "Slowest live figure, slider moved to painted, 95 of 100 times",
        ours: seen.worst,
        memory: { ours: seen.memory },
        limit: { of: "ours" as const, atMost: 50 },
      }]),
    ],
    details: seen === undefined
      ? "Chromium is not here: not tried in a browser."
      : [
        "| figure | drawn and laid out, ms | 95 % | painted, ms | 95 % |",
        "| --- | ---: | ---: | ---: | ---: |",
        ...seen.table,
      ].join("\n"),
  };
}

if (import.meta.main) await benchProgram({ run });
