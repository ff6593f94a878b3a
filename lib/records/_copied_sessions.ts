/**
 * A sheet that was copied: two sessions of the same readings.
 *
 * @module
 */
import type { Problem } from "./problem.ts";
import type { Reading } from "./reading.ts";
import { zeroingLabel } from "./zeroing_label.ts";

/** So many sessions are remembered. */
const MOST = 10_000;
/** Fewer readings of one kind may be chance. */
const FEWEST = 6;
/**
 * A display that shows nearly always the same says nothing: so often a place
 * has to read otherwise than in the set before.
 */
const FEWEST_CHANGES = 4;

interface Seen {
  readonly file: string;
  readonly line: number;
  count: number;
  changes: number;
  /** Two running sums of all that was read, in order. */
  sums: readonly [number, number];
  dated: string | undefined;
  readonly last: Map<string, number>;
}

/** A text run into a sum: 32 bits, by two multipliers (FNV-1a). */
function run(sum: number, text: string, prime: number): number {
  let now = sum;
  for (let k = 0; k < text.length; k++) {
    now = Math.imul(now ^ text.charCodeAt(k), prime) >>> 0;
  }
  return now;
}

/** Watches for sessions that hold what another one holds, in the same order. */
export class CopiedSessions {
  readonly #sessions = new Map<string, Seen>();

  /** Looks at one reading. */
  see(reading: Reading): void {
    const { session, ring, zone, offset, sag, file, line } = reading;
    let seen = this.#sessions.get(session);
    if (seen === undefined) {
      if (this.#sessions.size >= MOST) return;
      seen = {
        file,
        line,
        count: 0,
        changes: 0,
        sums: [2166136261, 40389],
        dated: reading.takenAt,
        last: new Map(),
      };
      this.#sessions.set(session, seen);
    }
    const key = [
      ring,
      zeroingLabel(reading),
      zone.label,
      offset,
      reading.diameterDegrees ?? "",
      sag,
    ].join("\u0000");
    seen.count++;
    seen.sums = [
      run(seen.sums[0], key, 16777619),
      run(seen.sums[1], key, 2654435761),
    ];
    const before = seen.last.get(zone.label);
    if (before !== undefined && before !== sag) seen.changes++;
    seen.last.set(zone.label, sag);
  }

  /** Every session that holds the readings of one before it. */
  problems(): Problem[] {
    const known = new Map<string, readonly [string, Seen]>();
    const found: Problem[] = [];
    for (const [session, seen] of this.#sessions) {
      const { count, changes, sums, dated, file, line } = seen;
      if (count < FEWEST || changes < FEWEST_CHANGES) continue;
      const key = `${count} ${sums.join(" ")}`;
      const first = known.get(key);
      if (first === undefined) {
        known.set(key, [session, seen]);
        continue;
      }
      const [name, other] = first;
      // Who names two evenings in one file, or dates them apart, has read twice.
      if (file === other.file) continue;
      if (dated !== undefined && other.dated !== dated) continue;
      found.push({
        severity: "warning",
        code: "copied-session",
        file,
        line,
        message:
          `session ${session} holds the same ${count} readings as session ${name} in ${other.file}, in the same order: was the sheet copied?`,
        mend:
          "take one copy out, or read anew; two evenings that truly read alike can be told apart by a date in a column taken_at",
      });
    }
    return found.slice(0, 20);
  }
}
