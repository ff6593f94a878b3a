import { readDiagnostics } from "./_server_answers.ts";
import type { ChainedCell } from "./cell_chain.ts";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import type { LanguageServer } from "./language_server.ts";

const NOT_FETCHED = new Set([
  "not-installed-npm",
  "not-installed-jsr",
  "no-cache",
  "no-cache-npm",
  "no-cache-data",
]);

/** What is wrong with a module that is open on the server. */
export async function diagnose(
  server: LanguageServer,
  module: ChainedCell,
): Promise<CellDiagnostic[]> {
  const ask = async () =>
    readDiagnostics(
      await server.request("textDocument/diagnostic", {
        textDocument: { uri: module.uri },
      }),
      module.cell.source,
    ).map((one) => withoutChain(one, module));
  const found = await ask();
  if (!found.some(({ code }) => NOT_FETCHED.has(String(code)))) return found;
  // Packages that are not on this machine yet are fetched, as a run would.
  await server.request("workspace/executeCommand", {
    command: "deno.cache",
    arguments: [[], module.uri],
  }).catch(() => {});
  return await ask();
}

/** The server's words for a name of an earlier cell that is no variable. */
const NOT_ASSIGNED = /^Cannot assign to '(.+)' because it is an import\.$/;

/** Says of the cells, not of the modules that stand for them. */
function withoutChain(
  diagnostic: CellDiagnostic,
  { cell }: ChainedCell,
): CellDiagnostic {
  const [, name] = NOT_ASSIGNED.exec(diagnostic.message) ?? [];
  const isOwn = cell.names.some((one) => one.name === name);
  if (name === undefined || isOwn) return diagnostic;
  return {
    ...diagnostic,
    message:
      `Cannot assign to '${name}', which an earlier cell declares as a constant (or a function, class or import). Declare it there with let, or anew in this cell.`,
  };
}
