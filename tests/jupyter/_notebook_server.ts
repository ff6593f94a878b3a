/** Debian's Jupyter Notebook, served for a browser. */
import { ok } from "node:assert/strict";
import type { Page } from "playwright-core";
import { chromiumPath } from "../browser/_page.ts";
import { installBoth } from "./_kernels.ts";

/** Whether this machine has the server and a browser. */
async function hasServer(): Promise<boolean> {
  try {
    const { success } = await new Deno.Command("jupyter", {
      args: ["notebook", "--version"],
      stdout: "null",
      stderr: "null",
    }).output();
    return success && chromiumPath !== undefined;
  } catch {
    return false;
  }
}

/** A server in a folder, on a port of its own; ended by its process id. */
async function startServer(folder: string, env: Record<string, string>) {
  const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  const { port } = listener.addr;
  listener.close();
  const server = new Deno.Command("jupyter", {
    args: [
      "notebook",
      "--no-browser",
      "--allow-root",
      "--ip=127.0.0.1",
      `--port=${port}`,
      "--NotebookApp.token=",
      "--NotebookApp.password=",
      `--notebook-dir=${folder}`,
    ],
    cwd: folder,
    env,
    stdin: "null",
    stdout: "null",
    stderr: "null",
  }).spawn();
  const address = `http://127.0.0.1:${port}`;
  for (let tries = 0; tries < 300; tries++) {
    try {
      await (await fetch(`${address}/api`)).body?.cancel();
      return { server, address };
    } catch {
      await new Promise((done) => setTimeout(done, 100));
    }
  }
  server.kill();
  throw new Error("the notebook server does not answer");
}

const isThere = await hasServer();
const mustRun = Deno.env.get("SAGBOOK_ALL") === "1";

/**
 * Tests something in the notebook's own page, on both kernels; skipped, and
 * said so, where the server or a browser is missing, unless all must run.
 *
 * @param prepare Puts notebooks into the served folder.
 * @param use Works in a browser's page, with the server's address.
 */
export function testInNotebook(
  name: string,
  prepare: (folder: string) => Promise<void>,
  use: (page: Page, address: string) => Promise<void>,
): void {
  if (!isThere && !mustRun) {
    console.log(`skipped: ${name} needs jupyter-notebook and chromium`);
  }
  Deno.test({
    name,
    ignore: !isThere && !mustRun,
    // The browser's driver keeps timers of its own.
    sanitizeOps: false,
    sanitizeResources: false,
    async fn() {
      ok(
        isThere,
        "SAGBOOK_ALL=1 allows no skip, but jupyter-notebook or chromium is missing",
      );
      const { folder, env } = await installBoth();
      await prepare(folder);
      const { server, address } = await startServer(folder, env);
      const { chromium } = await import("playwright-core");
      const browser = await chromium.launch({
        executablePath: chromiumPath,
        args: ["--no-sandbox", "--disable-gpu"],
      });
      try {
        const page = await browser.newPage({
          viewport: { width: 1200, height: 900 },
        });
        await use(page, address);
      } finally {
        await browser.close();
        server.kill("SIGTERM");
        await server.status;
        await Deno.remove(folder, { recursive: true });
      }
    },
  });
}
