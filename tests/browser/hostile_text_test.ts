import { deepEqual, equal, match, ok } from "node:assert/strict";
import { HOSTILE, hostileCopy } from "../tasks/_hostile.ts";
import { ROOT, runTask } from "../tasks/_run_task.ts";
import { exportHoldsAsText } from "./_hostile_export.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

/** Tasks that make a page, the demo piece each reads, and the page's name. */
const TASKS = [
  ["report", "metric-250", "session"],
  ["gauge", "gauge-study", "gauge"],
  ["plan", "gauge-study", "plan"],
  ["history", "history-300", "history"],
  ["focal", "metric-250", "focal"],
] as const;

/** What a page holds that came in with hostile text, if anything did. */
const FOUND = `(() => ({
  scripts: document.scripts.length,
  handlers: [...document.querySelectorAll("*")].flatMap((e) =>
    e.getAttributeNames().filter((name) => name.startsWith("on"))),
  addresses: [...document.querySelectorAll("[href], [src]")]
    .map((e) => e.getAttribute("href") ?? e.getAttribute("src"))
    .filter((address) => !/^(#|data:)/.test(address)),
  bold: document.querySelectorAll("main b").length,
  mains: document.querySelectorAll("main").length,
  wide: document.documentElement.scrollWidth,
}))()`;
const NOTHING = {
  scripts: 0,
  handlers: [],
  addresses: [],
  bold: 0,
  mains: 1,
  wide: 360,
};
/** Codes that a terminal would obey. */
const CODES =
  // deno-lint-ignore no-control-regex
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

/** Runs a task on a folder full of a text; the text must stay text. */
async function holdsAsText(
  browser: TestBrowser,
  [task, piece, name]: (typeof TASKS)[number],
  text: string,
): Promise<void> {
  const into = await Deno.makeTempDir({ prefix: "hostile-" });
  const label = `${task}: ${text.slice(0, 40)}`;
  try {
    const folder = await hostileCopy(`${ROOT}data/${piece}`, into, text);
    const shop = await hostileCopy(
      `${ROOT}data/shop-twelve`,
      `${into}/shop`,
      text,
    );
    const args = task === "focal" ? [folder, "--shop", shop] : [folder];
    const { code, out, err } = await runTask(task, args);
    equal(code, 0, `${label}: ${err}`);
    ok(!CODES.test(out + err), label);
    const page = `${folder}/report/${name}.html`;
    match(
      await Deno.readTextFile(page),
      /http-equiv="Content-Security-Policy" content="default-src 'none';/,
    );
    const open = await browser.openFile(page, { width: 360 });
    deepEqual([label, open.complaints, open.requests], [label, [], []]);
    deepEqual([label, await open.page.evaluate(FOUND)], [label, NOTHING]);
    const shown = String(
      await open.page.evaluate("document.querySelector('h1').textContent"),
    );
    // A control code has no look of its own; all else stands there as typed.
    const plain = (typed: string) =>
      // deno-lint-ignore no-control-regex
      typed.replace(/[\s\u0000-\u001f\u007f-\u009f\ufffd]+/g, "");
    ok(
      plain(shown).includes(plain(text).slice(0, 60)) ||
        CODES.test(text),
      `${label} is shown as ${shown.slice(0, 200)}`,
    );
    await open.page.close();
    if (task === "report") await exportHoldsAsText(browser, folder, CODES);
  } finally {
    await Deno.remove(into, { recursive: true });
  }
}

for (const [kind, text] of Object.entries(HOSTILE)) {
  testWith(
    "chromium",
    `every task makes a page that shows hostile text in every field as text: ${kind}`,
    async () => {
      await using browser = await TestBrowser.start();
      for (const task of TASKS) await holdsAsText(browser, task, text);
    },
  );
}

Deno.test("task check shows hostile text in every field without a code for the terminal", async () => {
  const into = await Deno.makeTempDir({ prefix: "hostile-" });
  for (const text of Object.values(HOSTILE)) {
    const folder = await hostileCopy(`${ROOT}data/gauge-study`, into, text);
    const { code, out, err } = await runTask("check", [folder]);
    equal(code, 0, err);
    ok(!CODES.test(out + err));
  }
  await Deno.remove(into, { recursive: true });
});
