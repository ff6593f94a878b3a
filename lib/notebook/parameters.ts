/**
 * A notebook made to run with other values than its own.
 *
 * @module
 */
import { makeCellId } from "./_cell_id.ts";
import {
  type Cell,
  cellTags,
  type CodeCell,
  type JsonValue,
  type Notebook,
} from "./document.ts";

/** The tag of the cell that declares a notebook's parameters. */
export const PARAMETERS_TAG = "parameters";

/** The tag of the cell that sets them for one run. */
export const RUN_PARAMETERS_TAG = "parameters-of-this-run";

/** True for the cell that a run has put in; it has no number of its own. */
export function isRunParameters(cell: Cell): boolean {
  return cellTags(cell).includes(RUN_PARAMETERS_TAG);
}

/**
 * Numbers cells as their author counts them, from 1: the cell that a run has
 * put in shares the number of the one before.
 *
 * @param cells Cells of one notebook.
 * @returns A number for each cell.
 */
export function cellNumbers(cells: readonly Cell[]): number[] {
  let number = 0;
  return cells.map((cell) => isRunParameters(cell) ? number : ++number);
}

const DECLARATION =
  /^[ \t]*(?:export[ \t]+)?(const|let|var)[ \t]+([A-Za-z_$][\w$]*)[ \t]*(?::[ \t]*([^=\n]+?))?[ \t]*=/gm;

/** JSON is TypeScript, but for numbers that JSON cannot hold. */
function literal(name: string, value: JsonValue): string {
  return JSON.stringify(value, (_, inner) => {
    if (typeof inner === "number" && !Number.isFinite(inner)) {
      throw new RangeError(
        `Cannot set parameter ${name} as numbers must be finite: current value is ${inner}`,
      );
    }
    return inner;
  }, 2);
}

/**
 * Puts a cell with the given values after the cell tagged `parameters`, which
 * keeps the defaults. Each is declared as there: `const` or `let`, with the
 * type that is written there. A cell put in by an earlier run is replaced.
 *
 * @param notebook The notebook; it is not changed.
 * @param values Value by name; each name must be declared in the tagged cell,
 * at the start of a line.
 * @returns A notebook with one cell more.
 * @throws {RangeError} If no cell is tagged `parameters`, if the tagged cell
 * does not declare a name, or if a number is not finite.
 *
 * @example
 * ```ts
 * import { withParameters } from "sagbook/notebook/parameters.ts";
 * import { equal } from "node:assert/strict";
 *
 * const notebook = withParameters({
 *   metadata: {},
 *   cells: [{
 *     cell_type: "code",
 *     id: "a",
 *     metadata: { tags: ["parameters"] },
 *     source: 'const folder: string = "demo";',
 *     execution_count: null,
 *     outputs: [],
 *   }],
 * }, { folder: "blank7" });
 * equal(
 *   notebook.cells[1].source,
 *   '// Set for this run.\nconst folder: string = "blank7";',
 * );
 * ```
 */
export function withParameters(
  notebook: Notebook,
  values: Readonly<Record<string, JsonValue>>,
): Notebook {
  const cells = notebook.cells.filter((cell) => !isRunParameters(cell));
  const at = cells.findIndex((cell) =>
    cell.cell_type === "code" && cellTags(cell).includes(PARAMETERS_TAG)
  );
  if (at < 0) {
    throw new RangeError(
      `Cannot set parameters as a code cell must be tagged \`${PARAMETERS_TAG}\`: the notebook has none`,
    );
  }
  const declared = new Map(
    Array.from(
      cells[at].source.matchAll(DECLARATION),
      ([, keyword, name, type]) => [name, { keyword, type }],
    ),
  );
  const lines = Object.entries(values).map(([name, value]) => {
    const found = declared.get(name);
    if (found === undefined) {
      throw new RangeError(
        `Cannot set parameter ${name} as the cell tagged \`${PARAMETERS_TAG}\` must declare it: it declares ${
          [...declared.keys()].join(", ") || "nothing"
        }`,
      );
    }
    const type = found.type === undefined ? "" : `: ${found.type}`;
    return `${found.keyword} ${name}${type} = ${literal(name, value)};`;
  });
  const source = ["// Set for this run.", ...lines].join("\n");
  const taken = new Set(cells.map((cell) => cell.id));
  const cell: CodeCell = {
    cell_type: "code",
    id: makeCellId(RUN_PARAMETERS_TAG, taken),
    metadata: { tags: [RUN_PARAMETERS_TAG] },
    source,
    execution_count: null,
    outputs: [],
  };
  return {
    metadata: notebook.metadata,
    cells: [...cells.slice(0, at + 1), cell, ...cells.slice(at + 1)],
  };
}
