/**
 * How far readings of this gauge scattered before, from the piece's own folder.
 *
 * @module
 */
import type { Bench } from "../records/bench.ts";
import type { Piece } from "../records/piece.ts";
import type { Reading } from "../records/reading.ts";
import { analyseSession } from "../zones/analyse_session.ts";
import { splitSessions } from "../zones/split_sessions.ts";

/** A pooled standard deviation. */
export interface BenchScatter {
  /** Standard deviation in mm of sag. */
  readonly standardDeviation: number;
  /** Its degrees of freedom, at least 1. */
  readonly dof: number;
}

/** What earlier sessions show of a gauge under one ring. */
export interface GaugeScatter {
  /** Of the innermost zone from zeroing to zeroing. */
  readonly zeroing?: BenchScatter;
  /** Of the difference of two zones from set to set. */
  readonly difference?: BenchScatter;
}

/** Sums squares and degrees of freedom. */
class Pool {
  #squares = 0;
  #dof = 0;

  /** Adds a standard deviation with its degrees of freedom. */
  add(deviation: number | undefined, dof: number): void {
    if (deviation === undefined || dof < 1) return;
    this.#squares += dof * deviation * deviation;
    this.#dof += dof;
  }

  /** The pooled standard deviation, where there is one. */
  get(): BenchScatter | undefined {
    return this.#dof < 1 ? undefined : {
      standardDeviation: Math.sqrt(this.#squares / this.#dof),
      dof: this.#dof,
    };
  }
}

/**
 * Pools the scatter of sessions read with one ring.
 *
 * Each session gives its own standard deviations, so that a surface that
 * changed between sessions adds nothing; readings of one session share its
 * grade and its day. Differences between zones are pooled over all pairs, which
 * share readings: their degrees of freedom are taken from one pair only.
 *
 * @param readings Readings of a piece, in the order of the files.
 * @param ring Id of the ring.
 * @param piece The piece.
 * @param bench The bench.
 * @returns What is known; empty when no session has two zeroings.
 *
 * @example
 * ```ts
 * import { gaugeScatter } from "sagbook/narrative/bench_scatter.ts";
 * import { readPieceFolder } from "sagbook/records/read_piece_folder.ts";
 * import { ok } from "node:assert/strict";
 *
 * const { piece, bench, readings } = await readPieceFolder("data/metric-250");
 * const { zeroing } = gaugeScatter(readings, "ring 100", piece, bench);
 * ok(zeroing !== undefined && zeroing.dof > 8);
 * ```
 */
export function gaugeScatter(
  readings: readonly Reading[],
  ring: string,
  piece: Piece,
  bench: Bench,
): GaugeScatter {
  const [zeroings, differences] = [new Pool(), new Pool()];
  // Without tolerances nothing is judged and no plan is sought.
  const { sphericity: _, ...plain } = piece;
  for (const group of splitSessions(readings)) {
    if (group[0].ring !== ring) continue;
    const session = analyseSession(group, plain, bench);
    if (session === undefined) continue;
    const { mean } = session.zones[0];
    zeroings.add(mean.deviation, mean.dof);
    const pairs = session.differences.filter(({ dof }) => dof > 0);
    const most = Math.max(0, ...pairs.map(({ dof }) => dof));
    const sum = pairs.reduce((total, { deviation = 0, dof }) => ({
      squares: total.squares + dof * deviation ** 2,
      dof: total.dof + dof,
    }), { squares: 0, dof: 0 });
    differences.add(
      sum.dof === 0 ? undefined : Math.sqrt(sum.squares / sum.dof),
      most,
    );
  }
  const zeroing = zeroings.get();
  const difference = differences.get();
  return {
    ...(zeroing === undefined ? {} : { zeroing }),
    ...(difference === undefined ? {} : { difference }),
  };
}
