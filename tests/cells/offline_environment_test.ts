import { match } from "node:assert/strict";
import { offlineEnvironment } from "sagbook/cells/offline_environment.ts";

Deno.test("offlineEnvironment() keeps a runtime from fetching modules and packages, in whatever way proxies were set before", async () => {
  const server = Deno.serve(
    { hostname: "127.0.0.1", port: 0, onListen: () => {} },
    () =>
      new Response("export default 1;", {
        headers: { "content-type": "text/javascript" },
      }),
  );
  const proxy = `http://127.0.0.1:${server.addr.port}`;
  const cache = await Deno.makeTempDir();
  const script = `for (const name of Deno.args) {
    await import(name).then(() => console.log("came"), () => console.log("no"));
  }`;
  const run = async (env: Record<string, string>, ...names: string[]) => {
    const { stdout } = await new Deno.Command(Deno.execPath(), {
      args: ["eval", "--no-config", "--quiet", script, ...names],
      env: {
        NO_COLOR: "1",
        DENO_DIR: cache,
        DENO_NO_UPDATE_CHECK: "1",
        HTTP_PROXY: proxy,
        http_proxy: proxy,
        ...env,
      },
    }).output();
    return new TextDecoder().decode(stdout);
  };
  const module = "http://example.org/x.ts";
  match(await run(offlineEnvironment(), module, "npm:x@1"), /^no\nno\n$/);
  // Without it, the same module comes through that proxy.
  match(await run({}, module), /^came\n$/);
  await server.shutdown();
  await Deno.remove(cache, { recursive: true });
});
