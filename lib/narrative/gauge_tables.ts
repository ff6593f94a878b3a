/**
 * The tables of a study of the gauge.
 *
 * @module
 */
import { ringName } from "../records/ring_name.ts";
import type { FootDirection } from "../geometry/feet.ts";
import type { Displayable } from "../display/bundle.ts";
import { table } from "../display/table.ts";
import {
  benchSheetCsv,
  benchSheetTable,
} from "../repeatability/bench_sheet_csv.ts";
import {
  type BenchSheet,
  writeBenchSheet,
} from "../repeatability/bench_sheet.ts";
import type {
  ScatterFigure,
  Spread,
} from "../repeatability/surface_components.ts";
import { formatLength } from "../units/format_length.ts";
import { millimetres } from "../units/length.ts";
import { amountIn, type LengthUnitName } from "../units/length_unit.ts";
import { decimalsFor } from "../units/round_decimal.ts";
import { nameSources } from "./scatter_words.ts";
import type { GaugeReport } from "./gauge_report.ts";
import { smallUnit } from "./sag_words.ts";

/**
 * Tabulates the components: standard deviation in sag and in radius with
 * intervals, share of the variance, share of the tolerance.
 *
 * @param report The report.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function componentsTable(report: GaugeReport): Displayable {
  const { main, capability, folder: { piece: { unit } } } = report;
  if (!main || main.figures.length === 0) {
    return table([], { caption: "No component of scatter can be estimated." });
  }
  const small = smallUnit(unit);
  const lines = capability?.kind === "judged" ? capability.lines : [];
  const shares = capability?.kind === "judged" ? capability.contributions : [];
  const row = (figure: ScatterFigure, name: string, total: boolean) => {
    const same = (sources: readonly string[]): boolean =>
      sources.join() === figure.sources.join();
    const line = lines.find(({ kind, sources }) =>
      total ? kind === "total" : kind === "figure" && same(sources)
    );
    const share = shares.find(({ sources }) => same(sources));
    const percent = (value: number | undefined): string =>
      value === undefined ? "—" : `${Math.round(value)} %`;
    return {
      source: name,
      "how many": total ? "—" : `${figure.levels}`,
      "scatter in sag": writeSpread(figure.sag, small),
      "in radius": figure.radius ? writeSpread(figure.radius, unit) : "—",
      "share of the variance": total ? "100 %" : percent(share?.percent),
      "six times, of the tolerance": percent(line?.percentOfTolerance),
      "six times, of one stretch": percent(line?.percentOfChange),
    };
  };
  return table([
    ...main.figures.map((figure) =>
      row(figure, nameSources(figure.sources), false)
    ),
    ...(main.total ? [row(main.total, "a reading on a fresh zero", true)] : []),
  ], {
    caption:
      "How much each source scatters a reading: the standard deviation and, in brackets, its 95 % interval.",
  });
}

function writeSpread(
  { deviation, interval }: Spread,
  unit: LengthUnitName,
): string {
  const amount = amountIn(millimetres(deviation), unit);
  const decimals = amount === 0 ? 1 : Math.max(0, decimalsFor(amount));
  const write = (length: number): string =>
    formatLength(millimetres(length), unit, decimals);
  const bare = (length: number): string => write(length).replace(/\s\S+$/, "");
  return interval === undefined
    ? write(deviation)
    : `${write(deviation)} (${bare(interval.low)} to ${bare(interval.high)})`;
}

/**
 * Writes the first plan of a report as a sheet to take to the bench.
 *
 * @param report The report.
 * @param seed Seed of the order of chance.
 * @returns The sheet; undefined when no plan decides.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function planSheet(
  report: GaugeReport,
  seed: number = 1,
): BenchSheet | undefined {
  const { main, plans } = report;
  const wanted = [...plans].reverse().find(({ answer }) =>
    answer.kind === "plan"
  );
  if (!main || wanted?.answer.kind !== "plan") return undefined;
  return writeBenchSheet({
    session: "next",
    ring: main.ring,
    ...gradeNow(report),
    zones: wanted.zones,
    size: wanted.answer.best,
    foot: footOf(report, main.ring),
    unit: report.folder.bench.gauge.unit ?? report.folder.piece.unit,
    seed,
  });
}

/** The grade that the work is at: that of the last reading of it. */
function gradeNow(
  { folder: { readings } }: GaugeReport,
): { readonly grade?: string } {
  const grade = readings.findLast(({ on }) => on === "work")?.grade;
  return grade === undefined ? {} : { grade };
}

/** How the feet stood in the study; as the bench says where it does not. */
function footOf(
  { folder: { bench, readings } }: GaugeReport,
  id: string,
): FootDirection {
  const unknown: FootDirection = { kind: "unknown" };
  const counts = new Map<string, { foot: FootDirection; count: number }>();
  for (const { on, ring, offset, foot } of readings) {
    if (on !== "work" || ring !== id || offset === 0) continue;
    const key = JSON.stringify(foot);
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { foot, count: 1 });
    else known.count++;
  }
  const [most] = [...counts.values()].sort((a, b) => b.count - a.count);
  const usual = bench.rings.find((ring) => ring.id === id)?.foot ?? unknown;
  return most === undefined || most.foot.kind === "unknown" ? usual : most.foot;
}

/**
 * Writes the plan of a report as a file of readings to fill in, which
 * `readings.csv` and the recorder at the bench both read.
 *
 * @param report The report.
 * @param seed Seed of the order of chance.
 * @returns The text of the file; undefined when no plan decides.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function sheetCsv(
  report: GaugeReport,
  seed: number = 1,
): string | undefined {
  const sheet = planSheet(report, seed);
  return sheet && benchSheetCsv(sheet);
}

const COLUMNS: Record<string, string> = {
  number: "step",
  act: "do",
  zeroing: "zeroing",
  operator: "who",
  diameter: "diameter",
  foot: "foot 1",
  zone: "zone",
  offset: "from centre",
  reading: "reading",
};

/**
 * Shows a bench sheet as a table to print and write on.
 *
 * @param sheet The sheet, or undefined when no plan decides.
 * @returns A table a cell may return.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function sheetTable(sheet: BenchSheet | undefined): Displayable {
  if (!sheet) {
    return table([], { caption: "No plan decides, so there is no sheet." });
  }
  const { columns, rows } = benchSheetTable(sheet);
  return table(
    rows.map((cells) =>
      Object.fromEntries(cells.map((cell, k) => [COLUMNS[columns[k]], cell]))
    ),
    {
      columns: columns.map((column) => COLUMNS[column]),
      caption: `The plan${
        sheet.ring === undefined ? "" : ` with ${ringName(sheet.ring)}`
      }, step by step, in an order of chance.`,
    },
  );
}
