import { equal, ok, rejects } from "node:assert/strict";
import { LanguageServer } from "sagbook/cells/language_server.ts";

const folder = import.meta.resolve("./");

Deno.test("LanguageServer() answers about a document that is on no disk", async () => {
  const server = new LanguageServer({ folder });
  const uri = `${folder}nowhere.ts`;
  await server.open(uri, "export const sag: number = 'x';");
  const params = { textDocument: { uri } };
  const result = await server.request("textDocument/diagnostic", params);
  equal((result as { items: { code: number }[] }).items[0].code, 2322);
  await server.close(uri);
  await server.filesChanged([uri]);
  await server.stop();
});

Deno.test("LanguageServer.request() fails when the server refuses or has ended", async () => {
  const server = new LanguageServer({ folder });
  await rejects(server.request("no/such/method", {}));
  await server.stop();
  await rejects(server.request("textDocument/hover", {}), {
    message: "the language server has ended",
  });
  equal(server.gone, true);
});

Deno.test("LanguageServer.stop() leaves no process", async () => {
  const server = new LanguageServer({ folder });
  await server.open(`${folder}a.ts`, "");
  const { pid } = server;
  ok(pid > 0);
  await server.stop();
  await server.ended;
  if (Deno.build.os === "linux") {
    await rejects(Deno.stat(`/proc/${pid}`), Deno.errors.NotFound);
  }
});
