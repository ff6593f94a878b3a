import { equal, match } from "node:assert/strict";
import type { Page } from "playwright-core";
import { writeNotebook } from "sagbook/notebook/write_notebook.ts";
import { testInNotebook } from "./_notebook_server.ts";

const NAME =
  "Kernel() works in Debian's Jupyter Notebook: run all, stop, go on, complete, explain";

const SOURCES = [
  "const sagitta: number = 0.715; const keep = { v: 7 };",
  "Deno.jupyter.html`<b id='shown'>R 2520 mm</b>`",
  "while (true) {}",
  "keep.v",
  "",
];

/** Text under the cell at an index. */
const under = (page: Page, index: number) =>
  page.locator(".code_cell").nth(index).locator(".output").innerText();

/** Waits until the text under a cell fits. */
async function waitUnder(page: Page, index: number, fits: RegExp) {
  const end = Date.now() + 60_000;
  let text = "";
  while (!fits.test(text)) {
    if (Date.now() > end) throw new Error(`under cell ${index}: ${text}`);
    await new Promise((done) => setTimeout(done, 50));
    text = await under(page, index).catch(() => "");
  }
}

testInNotebook(
  NAME,
  async (folder) => {
    await writeNotebook(`${folder}/given.ipynb`, {
      metadata: {
        kernelspec: {
          name: "sagbook",
          display_name: "sagbook",
          language: "typescript",
        },
      },
      cells: SOURCES.map((source, index) => ({
        cell_type: "code",
        id: `c${index}`,
        metadata: {},
        source,
        execution_count: null,
        outputs: [],
      })),
    });
  },
  async (page, address) => {
    await page.goto(`${address}/notebooks/given.ipynb`);
    await page.waitForFunction(
      "globalThis.Jupyter?.notebook?.kernel?.is_connected()",
      undefined,
      { timeout: 60_000 },
    );

    await page.click("#celllink");
    await page.click("#run_all_cells a");
    await page.waitForSelector("#shown", { timeout: 60_000 });
    await page.waitForFunction(
      "Jupyter.notebook.get_cell(2).input_prompt_number === '*'",
    );
    await new Promise((done) => setTimeout(done, 1_000));
    equal(await under(page, 2).catch(() => ""), "");

    await page.click(
      '[data-jupyter-action="jupyter-notebook:interrupt-kernel"]',
    );
    await waitUnder(
      page,
      2,
      /Interrupted: the cell was stopped; variables are kept/,
    );

    await page.locator(".code_cell").nth(3).locator(".CodeMirror").click();
    await page.keyboard.press("Control+Enter");
    await waitUnder(page, 3, /^\s*(Out\s*\[\d+\]:)?\s*7\s*$/);

    const editor = page.locator(".code_cell").nth(4).locator(".CodeMirror");
    await editor.click();
    await page.keyboard.type("sagi");
    await page.keyboard.press("Tab");
    const text = () =>
      page.evaluate("Jupyter.notebook.get_cell(4).get_text()") as Promise<
        string
      >;
    const end = Date.now() + 30_000;
    while (await text() !== "sagitta" && Date.now() < end) {
      await new Promise((done) => setTimeout(done, 50));
    }
    equal(await text(), "sagitta");

    await page.keyboard.press("Shift+Tab");
    await page.waitForSelector("#tooltip .tooltiptext", { timeout: 30_000 });
    match(
      await page.locator("#tooltip .tooltiptext").innerText(),
      /sagitta: number/,
    );
  },
);
