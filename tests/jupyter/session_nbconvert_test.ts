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
    const html = await Deno.readTextFile(`${home}/session.html`);
    match(html, /The radius of curvature/);
    match(html, /<svg/);
    await Deno.remove(home, { recursive: true });
  },
);
