/** Debian's Jupyter Notebook, served for a browser. */
import { chromiumPath } from "../browser/_page.ts";

/** Whether this machine has the server and a browser. */
export async function hasServer(): Promise<boolean> {
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
export async function startServer(folder: string, env: Record<string, string>) {
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
