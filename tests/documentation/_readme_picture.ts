/**
 * The picture of README: the first screen of a report, and the words on it.
 *
 * @module
 */
import { copyPiece, ROOT, runTask } from "../tasks/_run_task.ts";
import { chromiumPath, TestBrowser } from "../browser/_page.ts";

/** The picture, from the project's root. */
export const PICTURE = "tests/goldens/report.png";
/** The words that stand on it, kept when it was taken. */
export const WORDS = "tests/goldens/report.txt";

/** Takes the picture anew and keeps the words that stand on it. */
async function takePicture(): Promise<void> {
  const folder = await copyPiece("metric-250");
  try {
    const { code, err } = await runTask("report", [folder]);
    if (code !== 0) throw new Error(err);
    await using browser = await TestBrowser.start();
    const file = `${folder}/report/session.html`;
    const { page } = await browser.openFile(file, { width: 860, height: 720 });
    const box = await page.locator("svg").first().boundingBox();
    const answer = page.locator('[aria-label="The answer"] p');
    const words = await answer.allInnerTexts();
    await page.screenshot({
      path: ROOT + PICTURE,
      fullPage: true,
      clip: {
        x: 0,
        y: 0,
        width: 860,
        height: Math.ceil(box!.y + box!.height + 4),
      },
    });
    await Deno.writeTextFile(ROOT + WORDS, `${words.join("\n")}\n`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

if (import.meta.main) {
  if (chromiumPath === undefined) {
    console.error(
      "The picture of README needs Chromium, and was left as it is.",
    );
  } else await takePicture();
}
