/**
 * Builds mixed models from the formulas in reference files.
 *
 * @module
 */
import {
  interceptColumn,
  levelColumns,
  treatmentColumns,
} from "sagbook/statistics/design_columns.ts";
import type {
  FixedColumn,
  MixedModel,
} from "sagbook/statistics/mixed_model.ts";
import type { Reference } from "./_references.ts";

/** Level labels in the order R would give them. */
function sortedLevels(labels: (string | number)[]): (string | number)[] {
  const distinct = [...new Set(labels)];
  return distinct.sort((a, b) =>
    typeof a === "number" && typeof b === "number"
      ? a - b
      : String(a) < String(b)
      ? -1
      : 1
  );
}

/**
 * The model of a formula such as `y ~ zone + (1 | block)`: text columns are
 * factors with treatment contrasts, number columns are covariates.
 */
export function modelOf(
  formula: string,
  rows: Reference[],
  coding: "treatment" | "cell means" = "treatment",
): MixedModel {
  const [response, right] = formula.split("~").map((part) => part.trim());
  const random = [...right.matchAll(/\(1 \| (\w+)\)/g)].map(([, name]) => ({
    name,
    labels: rows.map((row) => row[name]),
  }));
  const terms = right.replace(/\(1 \| \w+\)/g, "").split("+")
    .map((term) => term.trim()).filter((term) => term && term !== "1");
  let fixed: FixedColumn[] = [interceptColumn(rows.length)];
  for (const term of terms) {
    const values = rows.map((row) => row[term]);
    if (typeof values[0] === "number") {
      fixed.push({ name: term, values });
      continue;
    }
    const order = sortedLevels(values);
    if (coding === "cell means") fixed = levelColumns("", values, order);
    else fixed.push(...treatmentColumns(term, values, order).slice(1));
  }
  return { response: rows.map((row) => row[response]), fixed, random };
}
