import { deepEqual, equal, match, ok } from "node:assert/strict";
import type { Page } from "playwright-core";
import { liveFigure } from "sagbook/live/live_figure.ts";
import { ROOT } from "../tasks/_run_task.ts";
import { testInNotebook } from "./_notebook_server.ts";

const NAME =
  "liveFigure() stands still in Debian's Jupyter Notebook until it is trusted, then moves by keyboard and pointer";
const FILE = "teaching-the-geometry.ipynb";
/** Live figures in the class. */
const COUNT = 13;

/** Opens the notebook and waits until it is shown. */
async function open(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/notebooks/${FILE}`);
  await loaded(page);
}

async function loaded(page: Page): Promise<void> {
  await page.waitForFunction(
    "globalThis.Jupyter?.notebook?._fully_loaded",
    undefined,
    { timeout: 60_000 },
  );
}

const told = async (page: Page) =>
  await page.evaluate(
    `[...document.querySelector("[data-is-live]").querySelectorAll("output")].map((one) => one.textContent)`,
  ) as string[];

const own = (settings: Record<string, number>) =>
  liveFigure("chord-and-sag", settings).numbers.map(([, text]) => text);

testInNotebook(
  NAME,
  async (folder) => {
    await Deno.copyFile(`${ROOT}notebooks/${FILE}`, `${folder}/${FILE}`);
  },
  async (page, address) => {
    const errors: string[] = [];
    const strangers: string[] = [];
    page.on("pageerror", (error) => errors.push(String(error)));
    page.on("request", (request) => {
      const url = request.url();
      if (!url.startsWith(address) && !/^(?:data|blob|about):/.test(url)) {
        strangers.push(url);
      }
    });
    await open(page, address);
    const pictures = page.locator(".output img[src^='data:image/svg+xml']");
    await pictures.nth(COUNT - 1).waitFor({ timeout: 60_000 });
    equal(await pictures.count(), COUNT);
    equal(await page.locator("[data-is-live]").count(), 0);
    for (const picture of await pictures.all()) {
      ok((await picture.getAttribute("alt") ?? "").length > 40);
    }
    await page.waitForFunction(
      `[...document.querySelectorAll(".output img")]
          .every((one) => one.complete && one.naturalWidth > 100)`,
      undefined,
      { timeout: 30_000 },
    );
    match(
      await page.locator(".output").nth(1).innerText(),
      /Sag: 0\.6013\smm[^]*A still picture/,
    );

    await page.evaluate("Jupyter.notebook.trust_notebook()");
    await page.click(".modal-footer .btn-danger");
    await page.locator("[data-is-live]").nth(COUNT - 1).waitFor({
      timeout: 60_000,
    });
    await loaded(page);
    equal(await page.locator("[data-is-live]").count(), COUNT);
    deepEqual(await told(page), own({}));
    const range = page.locator("[data-is-live] input[type=range]").first();
    await range.focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    deepEqual(await told(page), own({ radius: 3020 }));
    await range.scrollIntoViewIfNeeded();
    const box = await range.boundingBox();
    ok(box);
    await page.mouse.click(box.x + box.width * 0.7, box.y + box.height / 2);
    const clicked = Number(await range.inputValue());
    ok(clicked > 3500, String(clicked));
    deepEqual(await told(page), own({ radius: clicked }));
    // Letters and figures typed here are not commands of the notebook.
    const cells = await page.locator(".cell").count();
    const field = page.locator("[data-is-live] input[type=number]").first();
    await field.click();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("2500");
    deepEqual(await told(page), own({ radius: 2500 }));
    equal(await page.locator(".cell").count(), cells);
    deepEqual(errors, []);
    deepEqual(strangers, []);
  },
);
