/**
 * Type-checks every notebook in `notebooks/` without running it.
 *
 * @module
 */
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { checkCells } from "../cells/check_cells.ts";
import { describeDiagnostic } from "../cells/describe_diagnostic.ts";
import { readNotebook } from "../notebook/read_notebook.ts";
import { explainUnitMixUp } from "../units/explain_unit_mix_up.ts";
import { ROOT } from "./_root.ts";
import { EXIT, plainWords } from "./_task_words.ts";

async function main(): Promise<number> {
  const folder = join(ROOT, "notebooks");
  let wrong = 0;
  for await (const { name } of Deno.readDir(folder)) {
    if (!name.endsWith(".ipynb")) continue;
    const { notebook } = await readNotebook(join(folder, name));
    const cells = notebook.cells.filter((cell) => cell.cell_type === "code");
    const sources = cells.map(({ source }) => source);
    const found = await checkCells(sources, {
      folder: pathToFileURL(folder + "/").href,
      config: join(ROOT, "deno.json"),
    });
    found.forEach((diagnostics, index) => {
      for (const diagnostic of diagnostics) {
        wrong++;
        const where = `${name}, cell ${cells[index].id}`;
        console.error(
          describeDiagnostic(diagnostic, sources[index], where, [
            explainUnitMixUp,
          ]).join("\n"),
        );
      }
    });
    console.log(`${name}: ${cells.length} cells checked`);
  }
  return wrong === 0 ? EXIT.ok : EXIT.failed;
}

if (import.meta.main) {
  try {
    Deno.exit(await main());
  } catch (error) {
    console.error(plainWords(error));
    Deno.exit(EXIT.failed);
  }
}
