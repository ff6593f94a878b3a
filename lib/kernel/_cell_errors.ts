import {
  type CellDiagnostic,
  type Explainer,
  placeAt,
} from "../cells/cell_diagnostic.ts";
import { describeDiagnostic, explain } from "../cells/describe_diagnostic.ts";
import type { ShownError } from "./_trace.ts";

/** The error of a cell that was stopped. */
export const INTERRUPTED: ShownError = {
  ename: "Interrupted",
  evalue: "the cell was stopped; variables are kept",
  traceback: ["Interrupted: the cell was stopped; variables are kept"],
};

/** The error of a cell with which the evaluator ended. */
export function lostError(reason: string): ShownError {
  const evalue =
    `the evaluator ended (${reason}) and was started anew: all variables were lost, so run the cells above again`;
  return {
    ename: "EvaluatorRestarted",
    evalue,
    traceback: [`EvaluatorRestarted: ${evalue}`],
  };
}

/** The error of a cell that is not run, for what is wrong with its text. */
export function refusal(
  ename: string,
  source: string,
  diagnostics: readonly CellDiagnostic[],
  name: string,
  explainers: readonly Explainer[],
): ShownError {
  const [first] = diagnostics;
  const { line, column } = placeAt(source, first.start);
  const words = explain(first, explainers) ?? first.message.split("\n")[0];
  const more = diagnostics.length - 1;
  return {
    ename,
    evalue: `${name}, line ${line}, column ${column}: ${words}${
      more > 0 ? ` (and ${more} more)` : ""
    }`,
    traceback: [
      ...diagnostics.flatMap((one) =>
        describeDiagnostic(one, source, name, explainers)
      ),
      "Nothing in this cell was run.",
    ],
  };
}
