/**
 * Headings that a spreadsheet spread over two lines by merging cells.
 *
 * @module
 */
import { bracketed } from "./_column_names.ts";
import { unitOfWord } from "./_read_cell.ts";
import { unitsOfRow } from "./_table_rows.ts";
import { type TableLayout, tableOf } from "./_table_layout.ts";

/**
 * A header with what the line above it says: the name of a column whose own
 * heading is blank, the unit of a heading that spans several zones, and units that
 * stand above the zones.
 */
export function withHeadingsAbove(
  layout: TableLayout,
  above: readonly string[],
): TableLayout {
  const joined = layout.headings.map((heading, i) =>
    heading.trim() === "" ? above[i] ?? "" : heading
  );
  const old = tableOf(layout.headings, layout.delimiter, layout.headerLine);
  const found = tableOf(joined, layout.delimiter, layout.headerLine);
  const isBetter = found.score > old.score && found.layout.sheet &&
    found.layout.zones.length === layout.zones.length;
  const best = isBetter ? found.layout : layout;
  const units = new Map(best.units);
  for (const { index } of best.zones) {
    let at = index;
    while (at > 0 && (above[at] ?? "").trim() === "") at--;
    const unit = bracketed(above[at] ?? "");
    if (unit !== undefined && unitOfWord(unit) !== undefined) {
      if (!units.has(index)) units.set(index, unit);
    }
  }
  for (const [index, unit] of unitsOfRow(above, best) ?? []) {
    if (!units.has(index)) units.set(index, unit);
  }
  return { ...best, units };
}
