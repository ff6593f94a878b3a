import { deepEqual, equal, ok } from "node:assert/strict";
import { copyPiece, runTask } from "../tasks/_run_task.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

testWith(
  "chromium",
  "task report makes a page whose first screen is the answer, quiet, self-contained and accessible",
  async () => {
    const folder = await copyPiece("metric-250");
    equal((await runTask("report", [folder])).code, 0);
    const file = `${folder}/report/session.html`;
    await using browser = await TestBrowser.start();
    for (const dark of [false, true]) {
      const open = await browser.openFile(file, {
        dark,
        width: 1280,
        height: 720,
      });
      deepEqual(open.complaints, []);
      deepEqual(open.requests, []);
      deepEqual(await open.seriousFindings(), []);
      const answer = open.page.locator('[aria-label="The answer"]');
      const box = await answer.boundingBox();
      ok(box && box.y + box.height < 720, JSON.stringify(box));
    }
    for (const width of [360, 768]) {
      const { page } = await browser.openFile(file, { width, height: 740 });
      const beyond = await page.evaluate(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth",
      );
      equal(beyond, 0, `${width} px wide`);
    }
    const { page } = await browser.openFile(file);
    const cut = await page.evaluate(`[...document.querySelectorAll("svg text")]
      .filter((text) => {
        const box = text.getBoundingClientRect();
        const svg = text.ownerSVGElement.getBoundingClientRect();
        return box.width > 0 && (box.left < svg.left - 1 ||
          box.right > svg.right + 1 || box.top < svg.top - 1 ||
          box.bottom > svg.bottom + 1);
      }).map((text) => text.textContent)`);
    deepEqual(cut, []);
    await Deno.remove(folder, { recursive: true });
  },
);
