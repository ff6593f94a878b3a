/**
 * What an export makes of a folder full of hostile text.
 *
 * @module
 */
import { deepEqual, equal, ok } from "node:assert/strict";
import { join } from "node:path";
import Papa from "papaparse";
import { runTask } from "../tasks/_run_task.ts";
import type { TestBrowser } from "./_page.ts";

/** What an SVG file holds that came in with hostile text, if anything did. */
const FOUND = `(() => ({
  root: document.documentElement.localName,
  broken: document.querySelectorAll("parsererror").length,
  scripts: document.querySelectorAll("script, foreignObject, style, image, a").length,
  handlers: [...document.querySelectorAll("*")].flatMap((e) =>
    e.getAttributeNames().filter((name) => name.startsWith("on"))),
}))()`;

/** Exports a folder; every file must open, and the text must stay text. */
export async function exportHoldsAsText(
  browser: TestBrowser,
  folder: string,
  codes: RegExp,
): Promise<void> {
  const { code, out, err } = await runTask("export", [
    folder,
    "--only",
    "svg,csv,json",
  ]);
  equal(code, 0, err);
  ok(!codes.test(out + err), "codes for the terminal");
  const to = join(folder, "report", "export");
  for await (const { name } of Deno.readDir(to)) {
    const path = join(to, name);
    const text = await Deno.readTextFile(path);
    if (name.endsWith(".svg")) {
      const open = await browser.openFile(path);
      deepEqual(
        [name, await open.page.evaluate(FOUND), open.requests],
        [name, { root: "svg", broken: 0, scripts: 0, handlers: [] }, []],
      );
      deepEqual(open.complaints, []);
      await open.page.close();
    } else if (name.endsWith(".csv")) {
      const { data, errors } = Papa.parse<string[]>(text.slice(1).trimEnd(), {
        delimiter: ",",
        newline: "\r\n",
      });
      deepEqual(errors, []);
      for (const cell of data.flat()) {
        const isNumber = /^-?\d+(?:\.\d+)?(?:e-?\d+)?$/.test(cell);
        ok(isNumber || !/^[\s\u00a0]*[=+\-@|#\t\r]/.test(cell), cell);
      }
    } else JSON.parse(text);
  }
}
