import { deepEqual, equal, match, ok } from "node:assert/strict";
import type { Page } from "playwright-core";
import { LIVE_FIGURES, liveFigure } from "sagbook/live/live_figure.ts";
import { liveScript } from "sagbook/live/live_script.ts";
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { readNotebook } from "sagbook/notebook/read_notebook.ts";
import type { Drawing } from "../../lib/live/_drawing.ts";
import { DRAWINGS } from "../../lib/live/_drawings.ts";
import { ROOT } from "../tasks/_run_task.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

/** The class as `deno task teach` writes it, from its saved outputs. */
async function classPage(): Promise<string> {
  const { notebook } = await readNotebook(
    `${ROOT}notebooks/teaching-the-geometry.ipynb`,
  );
  return await exportHtml(notebook, {
    layout: "reader",
    reading: "room",
    liveScript: await liveScript(),
  });
}

/** What one live figure shows now. */
interface Shown {
  readonly name: (typeof LIVE_FIGURES)[number];
  readonly settings: Record<string, number | string>;
  readonly numbers: [string, string][];
  readonly title: string;
  readonly description: string;
}

/** Reads a live figure as a reader sees it: its controls and its numbers. */
const READ = `(index) => {
  const host = document.querySelectorAll("[data-is-live]")[index];
  const settings = {};
  for (const field of host.querySelectorAll("input[type=number],select")) {
    settings[field.id.replace(/^live-\\d+-/, "")] =
      field.tagName === "SELECT" ? field.value : Number(field.value);
  }
  return {
    name: host.dataset.live,
    settings,
    numbers: [...host.querySelectorAll("dl > div")].map((row) =>
      [row.querySelector("dt").textContent, row.querySelector("output").textContent]),
    title: host.querySelector("svg title").textContent,
    description: host.querySelector("svg desc").textContent,
  };
}`;

const read = (page: Page, index: number) =>
  page.evaluate(`(${READ})(${index})`) as Promise<Shown>;

/** The figure shows what the library says, figure by figure. */
function agrees({ name, settings, numbers, title, description }: Shown): void {
  const own = liveFigure(name, settings);
  deepEqual(numbers, own.numbers.map((pair) => [...pair]), name);
  deepEqual([title, description], [own.title, own.description], name);
}

testWith(
  "chromium",
  "liveFigure() in the class's page shows the library's numbers, set by keyboard, by pointer, by touch and typed",
  async () => {
    await using browser = await TestBrowser.start();
    const html = await classPage();
    ok(html.length < 1_500_000, `${html.length} characters`);
    const { page, complaints, requests } = await browser.open(html, {
      width: 1280,
      height: 720,
    });
    const hosts = page.locator("[data-is-live]");
    const count = await hosts.count();
    equal(count, 13);
    equal(
      await page.locator("[data-live]:not([data-is-live])").count(),
      0,
    );
    const names = new Set<string>();
    const debug = await page.context().newCDPSession(page);
    for (let index = 0; index < count; index++) {
      const host = hosts.nth(index);
      const start = await read(page, index);
      names.add(start.name);
      agrees(start);
      const ranges = host.locator("input[type=range]");
      for (let k = 0; k < await ranges.count(); k++) {
        const range = ranges.nth(k);
        const before = await range.inputValue();
        await range.focus();
        await page.keyboard.press(
          before === await range.getAttribute("max")
            ? "ArrowLeft"
            : "ArrowRight",
        );
        ok(await range.inputValue() !== before, start.name);
        agrees(await read(page, index));
        await range.scrollIntoViewIfNeeded();
        const box = await range.boundingBox();
        ok(box && box.height >= 24, "room for a finger");
        const y = box.y + box.height / 2;
        await page.mouse.move(box.x + box.width * 0.3, y);
        await page.mouse.down();
        await page.mouse.move(box.x + box.width * 0.62, y, { steps: 3 });
        await page.mouse.up();
        const dragged = await range.inputValue();
        ok(dragged !== before, start.name);
        agrees(await read(page, index));
        const touch = { x: box.x + box.width * 0.4, y };
        await debug.send("Input.dispatchTouchEvent", {
          type: "touchStart",
          touchPoints: [touch],
        });
        await debug.send("Input.dispatchTouchEvent", {
          type: "touchEnd",
          touchPoints: [],
        });
        await page.waitForFunction(
          ([at, old]: [Element, string]) =>
            (at as unknown as { value: string }).value !== old,
          [await range.elementHandle(), dragged] as never,
          { timeout: 10_000 },
        );
        agrees(await read(page, index));
      }
      for (const choice of await host.locator("select").all()) {
        await choice.focus();
        const before = await choice.inputValue();
        await page.keyboard.press("ArrowDown");
        if (await choice.inputValue() === before) {
          await page.keyboard.press("ArrowUp");
        }
        ok(await choice.inputValue() !== before);
        agrees(await read(page, index));
      }
      const drawing: Drawing = DRAWINGS[start.name];
      const first = drawing.controls.find((one) => one.kind === "number");
      ok(first);
      const field = host.locator("input[type=number]").first();
      const typed = first.least + 3 * first.step;
      await field.fill(String(typed));
      equal((await read(page, index)).settings[first.id], typed);
      agrees(await read(page, index));
      const good = await read(page, index);
      for (const wrong of ["", String(first.most + first.step), "1e999"]) {
        await field.fill(wrong);
        equal(await field.getAttribute("aria-invalid"), "true", wrong);
        deepEqual((await read(page, index)).numbers, good.numbers);
        match(
          await host.locator(".lv-wrong").first().innerText(),
          / to /,
        );
      }
      await host.locator("button").click();
      deepEqual(await read(page, index), start);
    }
    deepEqual([...names].sort(), [...LIVE_FIGURES].sort());
    deepEqual([complaints, requests], [[], []]);
  },
);

testWith(
  "chromium",
  "liveFigure() in the class's page is accessible, whole at 360 px, and legible from the back of a room",
  async () => {
    await using browser = await TestBrowser.start();
    const html = await classPage();
    for (const dark of [false, true]) {
      const open = await browser.open(html, { dark, width: 1280, height: 720 });
      deepEqual(await open.seriousFindings(), []);
      // A fold is read too.
      await open.page.evaluate(
        "document.querySelectorAll('details').forEach((one) => one.open = true)",
      );
      deepEqual(await open.seriousFindings(), []);
      const small = await open.page.evaluate(
        `[...document.querySelectorAll("[data-is-live] svg")].flatMap((svg) => {
          const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          return [...svg.querySelectorAll("text")]
            .map((text) => Number(text.getAttribute("font-size")) * scale)
            .filter((size) => size < 720 / 36);
        }).concat([...document.querySelectorAll("main p, main label, main dt, main output, main td")]
          .filter((one) => one.checkVisibility())
          .map((one) => parseFloat(getComputedStyle(one).fontSize))
          .filter((size) => size < 720 / 36))`,
      );
      // A letter of a 36th of the picture's height: common practice, no source.
      deepEqual(small, []);
      const unnamed = await open.page.evaluate(
        `[...document.querySelectorAll("main svg")].filter((svg) =>
          !svg.querySelector("title")?.textContent || !svg.querySelector("desc")?.textContent).length`,
      );
      equal(unnamed, 0);
      await open.page.close();
    }
    for (const width of [360, 768]) {
      const { page } = await browser.open(html, { width, height: 740 });
      const beyond = await page.evaluate(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth",
      );
      equal(beyond, 0, `${width} px`);
      await page.close();
    }
    // On a phone all words in pictures keep 12 px, live and still.
    for (const shown of [html, html.replace(/<script>[^]*<\/script>/, "")]) {
      const { page } = await browser.open(shown, { width: 360, height: 740 });
      const small = await page.evaluate(
        `[...document.querySelectorAll("main svg")].flatMap((svg) => {
          const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          return [...svg.querySelectorAll("text")]
            .map((text) => [text.textContent, parseFloat(getComputedStyle(text).fontSize) * scale])
            .filter(([, size]) => size < 12);
        })`,
      );
      deepEqual(small, []);
      equal(await page.locator("main svg text").count() > 100, true);
      await page.close();
    }
  },
);

testWith(
  "chromium",
  "liveFigure() covers no word with another and cuts none off, at the ends of every slider",
  async () => {
    await using browser = await TestBrowser.start();
    const html = await classPage();
    for (const width of [1280, 360]) {
      const { page } = await browser.open(html, { width });
      const hosts = page.locator("[data-is-live]");
      const wrong = await page.evaluate(`(() => {
      const wrong = [];
      const look = (svg, where) => {
        const frame = svg.getBoundingClientRect();
        const scale = frame.width / svg.viewBox.baseVal.width;
        const texts = [...svg.querySelectorAll("text")];
        const boxes = texts.map((text) => text.getBoundingClientRect());
        boxes.forEach((a, i) => {
          const name = where + ": " + texts[i].textContent;
          if (a.left < frame.left - 1 || a.right > frame.right + 1 ||
            a.top < frame.top - 1 || a.bottom > frame.bottom + 1) wrong.push("cut " + name);
          boxes.slice(i + 1).forEach((b, j) => {
            const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            if (across > 2 * scale && down > 6 * scale) wrong.push("over " + name + " | " + texts[i + 1 + j].textContent);
          });
        });
      };
      const set = (input, value) => {
        input.value = value;
        input.dispatchEvent(new Event("input"));
      };
      for (const host of document.querySelectorAll("[data-is-live]")) {
        const svg = host.querySelector("svg");
        look(svg, host.dataset.live);
        const choices = [...host.querySelectorAll("select")].flatMap((list) =>
          [...list.options].map((option) => [list, option.value]));
        for (const [list, value] of choices.length > 0 ? choices : [[null, null]]) {
          if (list) set(list, value);
          for (const range of host.querySelectorAll("input[type=range]")) {
            const start = range.value;
            for (const end of [range.min, range.max]) {
              set(range, end);
              look(svg, host.dataset.live + " " + range.getAttribute("aria-label") + " " + end);
            }
            set(range, start);
          }
        }
      }
      return [...new Set(wrong)];
    })()`);
      ok(await hosts.count() > 0);
      deepEqual(wrong, [], `${width} px: ${wrong}`);
      await page.close();
    }
  },
);

testWith(
  "chromium",
  "exportHtml() with live figures runs no script but its own, and shows them still where scripts are off",
  async () => {
    await using browser = await TestBrowser.start();
    const html = await classPage();
    const strange = html.replace(
      "</main>",
      "</main><script>document.title='taken'</script><img src='data:image/png;base64,x' onerror=\"document.title='taken'\">",
    );
    const open = await browser.open(strange);
    equal(await open.page.locator("[data-is-live]").count(), 13);
    ok(await open.page.title() !== "taken");
    const refused = open.complaints.filter((one) =>
      /Content Security|CSP/.test(one)
    );
    ok(refused.length >= 2, open.complaints.join("\n"));
    // The page's own script may make elements, and not read markup from text.
    const tried = await open.page.evaluate(
      `(() => { try { document.createElement("div").innerHTML = "<b>x</b>"; return "read"; } catch (error) { return error.name; } })()`,
    );
    equal(tried, "TypeError");

    const still = await browser.open(
      html.replace(/<script>[^]*<\/script>/, ""),
    );
    equal(await still.page.locator("[data-is-live]").count(), 0);
    const pictures = still.page.locator("[data-live] svg[role=img]");
    equal(await pictures.count(), 13);
    for (const picture of await pictures.all()) {
      ok((await picture.locator("desc").textContent() ?? "").length > 40);
      ok(await picture.isVisible());
    }
    equal(await still.page.locator("[data-live] dd").count() > 30, true);
    deepEqual([still.complaints, await still.seriousFindings()], [[], []]);
  },
);
