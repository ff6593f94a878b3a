import type { Cell, CodeCell, Notebook, Output } from "sagbook/notebook/mod.ts";

/** A notebook of code cells: sources, or sources with tags. */
export function codeNotebook(
  ...sources: (string | [source: string, ...tags: string[]])[]
): Notebook {
  return {
    metadata: {},
    cells: sources.map((entry, index): CodeCell => {
      const [source, ...tags] = typeof entry === "string" ? [entry] : entry;
      return {
        cell_type: "code",
        id: `c${index + 1}`,
        metadata: tags.length > 0 ? { tags } : {},
        source,
        execution_count: null,
        outputs: [],
      };
    }),
  };
}

/** Outputs of a code cell. */
export function outputsOf(cell: Cell): readonly Output[] {
  return cell.cell_type === "code" ? cell.outputs : [];
}

/** Everything a cell printed or gave as plain text. */
export function textOf(cell: Cell): string {
  return outputsOf(cell).map((output) =>
    output.output_type === "stream"
      ? output.text
      : output.output_type === "error"
      ? `${output.ename}: ${output.evalue}`
      : String(output.data["text/plain"])
  ).join("");
}
