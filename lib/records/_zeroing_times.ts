/**
 * Zeroings of one session that overlap in time.
 *
 * @module
 */
import { zeroingLabel } from "./zeroing_label.ts";
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";

/** So many zeroings are remembered. */
const MOST = 10_000;
/** So many readings are looked at: a longer log is a machine's. */
const LAST = 40_000;

interface Span {
  readonly session: string;
  readonly label: string;
  readonly file: string;
  readonly line: number;
  from: number;
  to: number;
}

/** Watches the clock: zero is pressed once, and a zeroing ends with the next. */
export class ZeroingTimes {
  readonly #spans = new Map<string, Span>();
  #seen = 0;

  /** Looks at one reading. */
  see(
    { session, zeroing, takenAt, file, line, ring, operator }: Reading,
  ): void {
    if (takenAt === undefined || takenAt.length <= 10) return;
    if (this.#seen++ >= LAST) return;
    const time = Date.parse(takenAt);
    if (Number.isNaN(time)) return;
    const key = `${session}\u0000${zeroing}`;
    const span = this.#spans.get(key);
    if (span === undefined) {
      if (this.#spans.size >= MOST) return;
      const label = zeroingLabel({ session, zeroing });
      // Two people, or two rings, may each have a gauge of their own.
      const who = `${session}\u0000${ring}\u0000${operator ?? ""}`;
      this.#spans.set(key, {
        session: who,
        label,
        file,
        line,
        from: time,
        to: time,
      });
      return;
    }
    if (time < span.from) span.from = time;
    if (time > span.to) span.to = time;
  }

  /** The first pair of each session that overlaps. */
  problems(): Problem[] {
    const sessions = new Map<string, Span[]>();
    for (const span of this.#spans.values()) {
      const list = sessions.get(span.session);
      if (list === undefined) sessions.set(span.session, [span]);
      else list.push(span);
    }
    return [...sessions.values()].flatMap((spans): Problem[] => {
      spans.sort((a, b) => a.from - b.from || a.line - b.line);
      let open = spans[0];
      for (const next of spans.slice(1)) {
        if (next.from < open.to) {
          return [{
            severity: "warning",
            code: "zeroings-overlap",
            file: next.file,
            line: next.line,
            message:
              `zeroing ${next.label} begins while zeroing ${open.label} still goes on: after zero is pressed again no reading belongs to the zeroing before`,
            mend:
              "give the readings after each press of zero a zeroing of their own, or correct the times",
          }];
        }
        if (next.to > open.to) open = next;
      }
      return [];
    });
  }
}
