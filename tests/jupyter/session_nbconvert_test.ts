import { equal, match } from "node:assert/strict";
import { ROOT } from "../tasks/_run_task.ts";
import { testWith } from "../browser/_needs.ts";
import { writeRuntimeKernel } from "./_runtime_kernel.ts";

testWith(
  "jupyter",
  "session.ipynb runs under Debian's jupyter-nbconvert on Deno's own kernel",
  async () => {
    const home = await Deno.makeTempDir({ prefix: "jupyter-" });
    await writeRuntimeKernel(`${home}/data`);
    // The runtime's own kernel now and then sends an output after the reply
    // that ends its cell, and nbconvert no longer listens then.
    let html = "";
    for (let tries = 0; tries < 4 && !isWhole(html); tries++) {
      html = await convert(home);
    }
    match(html, /The radius of curvature/);
    match(html, /<svg/);
    await Deno.remove(home, { recursive: true });
  },
);

const isWhole = (html: string): boolean =>
  html.includes("The radius of curvature") && html.includes("<svg");

/** Runs and converts the notebook, which must succeed; gives the page. */
async function convert(home: string): Promise<string> {
  const { code, stderr } = await new Deno.Command("jupyter", {
    args: [
      "nbconvert",
      "--to",
      "html",
      "--execute",
      "--output-dir",
      home,
      `${ROOT}notebooks/session.ipynb`,
    ],
    env: {
      JUPYTER_DATA_DIR: `${home}/data`,
      JUPYTER_RUNTIME_DIR: `${home}/run`,
      JUPYTER_CONFIG_DIR: `${home}/config`,
    },
    stdout: "null",
    stderr: "piped",
  }).output();
  equal(code, 0, new TextDecoder().decode(stderr).slice(-2000));
  return await Deno.readTextFile(`${home}/session.html`);
}
