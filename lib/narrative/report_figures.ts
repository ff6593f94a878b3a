/**
 * The figures of a report.
 *
 * @module
 */
import type { Figure } from "../figures/figure.ts";
import { zonesFigure } from "../figures/zones_figure.ts";
import type { SphericityVerdict } from "../zones/sphericity.ts";
import type { SessionReport } from "./session_report.ts";

const TITLES: Record<SphericityVerdict["verdict"], string> = {
  within: "The zones agree within the tolerance",
  outside: "The zones differ by more than the tolerance",
  undecided: "Whether the zones agree is not decided",
  none: "How the zones compare",
};

/**
 * Draws how the zones differ from the innermost one.
 *
 * @param report The report.
 * @returns The figure; undefined when no set read two zones.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function drawZones(
  report: SessionReport,
): Promise<Figure | undefined> {
  const { session, folder: { piece } } = report;
  const against = session?.differences.filter(({ first }) => first === 0);
  if (!session || !against || against.length === 0) return undefined;
  const { zones, sets, sphericity, outliers } = session;
  const { tolerance, verdict } = sphericity;
  return await zonesFigure({
    reference: {
      label: zones[0].place.label,
      distance: zones[0].place.distance,
    },
    zones: against.map(({ second, mean, interval90, interval95 }) => ({
      label: zones[second].place.label,
      distance: zones[second].place.distance,
      difference: -mean,
      ...(interval90 ? { interval90: turned(interval90) } : {}),
      ...(interval95 ? { interval95: turned(interval95) } : {}),
      sets: sets.flatMap(({ cells }, set) => {
        const [from, to] = [cells[0], cells[second]];
        const flagged = outliers.some((flag) =>
          flag.set === set && (flag.place === second || flag.place === 0)
        );
        return from && to ? [{ difference: to.sag - from.sag, flagged }] : [];
      }),
    })),
    ...(tolerance === undefined ? {} : { tolerance: tolerance.sag }),
  }, { unit: piece.unit, title: TITLES[verdict] });
}

/** The interval of the opposite difference. */
function turned(
  { low, high }: { low: number; high: number },
): { low: number; high: number } {
  return { low: -high, high: -low };
}
