/**
 * What a session needs to know, from flags, the folder or the terminal.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import { ringNamed } from "../narrative/bench_ring_named.ts";
import type { Ring } from "../records/bench.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Reading } from "../records/reading.ts";
import { readLine } from "./_record_reading.ts";
import { signedLabel } from "./_record_route.ts";

/** A wrong call or something missing, in words for the user. */
export class StartError extends Error {}

/** Flags as read. */
export type Flags = Readonly<Record<string, string | true>>;

/** Asks at the terminal; `undefined` where nobody can answer. */
export type Ask = ((question: string) => Promise<string>) | undefined;

const USUAL_ZONES = ["centre", "50% reach", "edge"];
const ZONE_CHOICES: Readonly<Record<string, readonly string[]>> = {
  "1": ["centre"],
  "2": ["centre", "edge"],
  "3": USUAL_ZONES,
  "4": ["centre", "50% reach", "-50% reach", "edge", "-edge"],
};
const FEET = ["foot out", "feet out", "unknown"];

/** What a flag says, blanks trimmed; `undefined` for nothing. */
export function textOf(flags: Flags, name: string): string | undefined {
  const value = flags[name];
  return typeof value === "string" && value.trim() !== ""
    ? value.trim()
    : undefined;
}

/** Times that a question is asked again. */
const TRIES = 5;

/** A number from a list, or nothing for Enter; anything else is asked again. */
async function numberOf(
  ask: NonNullable<Ask>,
  question: string,
  most: number,
): Promise<string> {
  let said = "";
  for (let k = 0; k < TRIES; k++) {
    const typed = (await ask(`${said}${question}`)).trim();
    if (typed === "" || /^[1-9]$/.test(typed) && Number(typed) <= most) {
      return typed;
    }
    said = `Type a number from 1 to ${most}, or Enter alone. `;
  }
  return "";
}

/** The ring that was named, or used before in this session, or is asked for. */
export async function ringOf(
  { bench, readings }: PieceFolder,
  flags: Flags,
  session: string,
  ask: Ask,
): Promise<Ring> {
  const name = textOf(flags, "ring") ??
    readings.findLast((one) => one.session === session)?.ring;
  const found = ringNamed(bench, name);
  if (typeof found !== "string") return found;
  if (name !== undefined || ask === undefined) throw new StartError(found);
  const list = bench.rings.map(({ id }, k) => `${k + 1} ${id}`).join(", ");
  const typed = await ask(`Ring: ${list}: `);
  const ring = bench.rings[Number(typed) - 1];
  if (ring === undefined) throw new StartError(found);
  return ring;
}

/** Places of one set, as the first whole set of some readings had them. */
function zonesRead(readings: readonly Reading[]): readonly string[] {
  const first = readings.find(({ on }) => on === "work");
  if (first === undefined) return [];
  return [
    ...new Set(
      readings.filter((one) =>
        one.zeroing === first.zeroing && one.on === "work"
      )
        .map(signedLabel),
    ),
  ];
}

/** The places of a set: given, as before, or asked for; all of them readable. */
export async function zonesOf(
  { piece, bench, readings }: PieceFolder,
  flags: Flags,
  session: string,
  ring: Ring,
  ask: Ask,
): Promise<readonly string[]> {
  const given = textOf(flags, "zones");
  const mine = readings.filter((one) => one.session === session);
  // A set is whole once another was begun, or the flat looked at after it.
  const whole = new Set(mine.map(zeroingLabel)).size > 1 ||
    (mine.at(-1)?.on === "flat" && mine[0].on === "work");
  const before = whole ? zonesRead(mine) : zonesRead(
    readings.filter((one) => one.ring === ring.id && one.session !== session),
  );
  let zones = given?.split(/\s*,\s*/).filter((zone) => zone !== "") ??
    (before.length > 0 ? before : USUAL_ZONES);
  if (given === undefined && ask !== undefined && !whole) {
    const typed = await numberOf(
      ask,
      `Places of a set: 1 centre; 2 centre, edge; 3 centre, 50% reach, edge; 4 the same at both ends (Enter: ${
        zones.join(", ")
      }): `,
      4,
    );
    zones = ZONE_CHOICES[typed] ?? zones;
  }
  const found: string[] = [];
  for (const zone of zones) {
    const { reading, problems } = await readLine(
      {
        session,
        zeroing: "1",
        ring: ring.id,
        zone,
        reading: bench.gauge.shows.kind === "radius" ? "1e6" : "1",
        unit: bench.gauge.shows.kind === "power" ? "" : "mm",
      },
      piece,
      bench,
    );
    if (reading !== undefined && reading.on === "work") {
      found.push(signedLabel(reading));
      continue;
    }
    const why = problems.find(({ severity }) => severity === "refused");
    throw new StartError(
      `The place ${zone.slice(0, 40)} cannot be read${
        why === undefined ? "" : `: ${why.message}`
      }.`,
    );
  }
  return [...new Set(found)];
}

/** How foot 1 stands: given, as the bench says, or asked for. */
export async function footOf(
  flags: Flags,
  ring: Ring,
  ask: Ask,
): Promise<string> {
  const given = textOf(flags, "foot");
  if (given !== undefined) return given;
  // Written into every line: the bench's default may change one day.
  if (ring.foot.kind === "angle") return String(ring.foot.degrees);
  if (ring.foot.kind !== "unknown") return ring.foot.kind;
  if (ring.shape.kind === "edge" || ask === undefined) return "";
  const typed = await numberOf(
    ask,
    "Foot 1 points: 1 one foot out, 2 two feet out, 3 not noted (Enter: 3): ",
    3,
  );
  return FEET[Number(typed) - 1] ?? "";
}
