import { deepEqual, equal, ok } from "node:assert/strict";
import { copyPiece, runTask } from "../tasks/_run_task.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

/** Room between the page's own margins of 16 and 18 mm, in CSS px. */
const PAPER = [
  {
    format: "A4",
    width: (210 - 32) / 25.4 * 96,
    height: (297 - 36) / 25.4 * 96,
  },
  {
    format: "Letter",
    width: (8.5 * 25.4 - 32) / 25.4 * 96,
    height: (11 * 25.4 - 36) / 25.4 * 96,
  },
] as const;

testWith(
  "chromium",
  "task history prints the record on one page of its own, on A4 and on Letter",
  async () => {
    const folder = await copyPiece("history-300");
    try {
      equal((await runTask("history", [folder])).code, 0);
      await using browser = await TestBrowser.start();
      for (const { format, width, height } of PAPER) {
        const { page } = await browser.openFile(
          `${folder}/report/history.html`,
          { media: "print", width: Math.floor(width), height: 900 },
        );
        const found = await page.evaluate(`(() => {
          window.record = [...document.querySelectorAll("section")]
            .find((one) => one.textContent.startsWith("Record of disc 300"));
          const { breakBefore, breakAfter, breakInside } =
            getComputedStyle(window.record);
          const { height } = window.record.getBoundingClientRect();
          return { breaks: [breakBefore, breakAfter, breakInside], height };
        })()`) as { breaks: string[]; height: number };
        deepEqual(found.breaks, ["page", "page", "avoid"], format);
        ok(found.height < height, `${format}: ${found.height} px`);
        // Alone on paper it fills one page and no second one.
        await page.evaluate(
          "void document.body.replaceChildren(window.record.cloneNode(true))",
        );
        const pdf = new TextDecoder("latin1").decode(
          await page.pdf({ format, preferCSSPageSize: false }),
        );
        equal(pdf.match(/\/Type\s*\/Page\b/g)?.length, 1, format);
      }
    } finally {
      await Deno.remove(folder, { recursive: true });
    }
  },
);
