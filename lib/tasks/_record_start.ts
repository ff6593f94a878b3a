/**
 * How a session begins: which one, with which ring, along which route.
 *
 * @module
 */
import { join } from "node:path";
import { gaugeScatter } from "../narrative/bench_scatter.ts";
import { ringNamed } from "../narrative/bench_ring_named.ts";
import type { Ring } from "../records/bench.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Problem } from "../records/problem.ts";
import type { Reading } from "../records/reading.ts";
import { type PlannedReading, readPlan } from "../records/read_plan.ts";
import type { Looks } from "../zones/provisional_verdict.ts";
import type { DeskSettings } from "./_record_desk.ts";
import { FreeRoute } from "./_record_free_route.ts";
import { Keeper } from "./_record_keeper.ts";
import { PlannedRoute } from "./_record_planned_route.ts";
import { readLine } from "./_record_reading.ts";
import { labelOf, type Route, signedLabel } from "./_record_route.ts";

/** A wrong call or something missing, in words for the user. */
export class StartError extends Error {}

/** Flags as read. */
export type Flags = Readonly<Record<string, string | true>>;

/** Asks at the terminal; `undefined` where nobody can answer. */
export type Ask = ((question: string) => Promise<string>) | undefined;

/** What a session starts from. */
export type Start =
  & Omit<DeskSettings, "asks" | "say" | "warn" | "stand" | "now">
  & {
    readonly looks: Looks;
    /** What there is to say before the first question. */
    readonly said: readonly string[];
  };

const USUAL_ZONES = ["centre", "50% reach", "edge"];
const ZONE_CHOICES: Readonly<Record<string, readonly string[]>> = {
  "1": ["centre"],
  "2": ["centre", "edge"],
  "3": USUAL_ZONES,
  "4": ["centre", "50% reach", "-50% reach", "edge", "-edge"],
};
const FEET = ["foot out", "feet out", "unknown"];
/** A session goes on by itself when its last reading is no older. */
const HOURS_TO_GO_ON = 12;
const LONGEST_PLAN = 1_000_000;

const text = (flags: Flags, name: string): string | undefined => {
  const value = flags[name];
  return typeof value === "string" && value.trim() !== ""
    ? value.trim()
    : undefined;
};

/** The plan of a folder, where there is one. */
async function planOf(
  folder: PieceFolder,
): Promise<{ plan: readonly PlannedReading[]; problems: readonly Problem[] }> {
  const file = "plan.csv";
  let bytes: Uint8Array;
  try {
    const path = join(folder.path, file);
    const { size, isFile } = await Deno.stat(path);
    if (!isFile || size > LONGEST_PLAN) {
      throw new StartError(`${file} is no plan that can be followed.`);
    }
    bytes = await Deno.readFile(path);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) {
      return { plan: [], problems: [] };
    }
    if (error instanceof StartError) throw error;
    throw new StartError(`${file} cannot be read; check who may read it.`);
  }
  const { piece, bench } = folder;
  const { readings, problems } = await readPlan(bytes, { file, piece, bench });
  return { plan: readings, problems };
}

/** A name for a new session: the day, and a letter for a second one. */
function newName(taken: ReadonlySet<string>, now: Date): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${
    two(now.getDate())
  }`;
  if (!taken.has(day)) return day;
  for (let k = 2;; k++) {
    const name = `${day} (${k})`;
    if (!taken.has(name)) return name;
  }
}

/** The session to go on with, if its last reading is of late. */
function sessionToGoOn(
  readings: readonly Reading[],
  now: Date,
): string | undefined {
  const last = readings.findLast(({ takenAt }) => takenAt !== undefined);
  const hours = last?.takenAt === undefined
    ? Infinity
    : (now.getTime() - Date.parse(last.takenAt)) / 3_600_000;
  return hours < HOURS_TO_GO_ON ? last?.session : undefined;
}

async function ringOf(
  { bench, readings }: PieceFolder,
  flags: Flags,
  session: string,
  ask: Ask,
): Promise<Ring> {
  const name = text(flags, "ring") ??
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

async function zonesOf(
  { piece, bench, readings }: PieceFolder,
  flags: Flags,
  session: string,
  ring: Ring,
  ask: Ask,
): Promise<readonly string[]> {
  const given = text(flags, "zones");
  const mine = readings.filter((one) => one.session === session);
  const labels = new Set(mine.map(labelOf));
  const before = labels.size > 1 ? zonesRead(mine) : zonesRead(
    readings.filter((one) => one.ring === ring.id && one.session !== session),
  );
  let zones = given?.split(/\s*,\s*/).filter((zone) => zone !== "") ??
    (before.length > 0 ? before : USUAL_ZONES);
  if (given === undefined && ask !== undefined && labels.size < 2) {
    const typed = await ask(
      `Places of a set: 1 centre; 2 centre, edge; 3 centre, 50% reach, edge; 4 the same at both ends (Enter: ${
        zones.join(", ")
      }): `,
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

async function footOf(flags: Flags, ring: Ring, ask: Ask): Promise<string> {
  const given = text(flags, "foot");
  if (given !== undefined) return given;
  // Written into every line: the bench's default may change one day.
  if (ring.foot.kind === "angle") return String(ring.foot.degrees);
  if (ring.foot.kind !== "unknown") return ring.foot.kind;
  if (ring.shape.kind === "edge" || ask === undefined) return "";
  const typed = await ask(
    "Foot 1 points: 1 one foot out, 2 two feet out, 3 not noted (Enter: 3): ",
  );
  return FEET[Number(typed) - 1] ?? "";
}

function looksOf(flags: Flags, planned: number): Looks {
  const given = text(flags, "sets");
  const sets = given === undefined ? planned : Number(given);
  if (!Number.isInteger(sets) || sets < 1) {
    throw new StartError(
      `--sets needs a whole number: current value is ${given}.`,
    );
  }
  return { first: 3, last: Math.min(20, Math.max(3, sets)) };
}

/** Works out how a session begins. */
export async function startOf(
  folder: PieceFolder,
  flags: Flags,
  ask: Ask,
  now: Date,
): Promise<Start> {
  const { piece, bench, path, readings } = folder;
  const said = folder.problems.filter(({ severity, code }) =>
    severity === "refused" || code === "ring-not-measured"
  ).slice(0, 3).map(({ file, line, message }) =>
    `${file}${line === undefined ? "" : `, line ${line}`}: ${message}.`
  );
  const names = new Set(readings.map((one) => one.session));
  const plan = flags["no-plan"] ? undefined : await planOf(folder);
  const refused =
    plan?.problems.filter(({ severity }) => severity === "refused") ?? [];
  said.push(
    ...refused.slice(0, 3).map(({ line, message }) =>
      `plan.csv${
        line === undefined ? "" : `, line ${line}`
      }: ${message}; it is left out.`
    ),
  );
  const planned = plan !== undefined && plan.plan.length > 0
    ? plan.plan
    : undefined;
  const session = text(flags, "session") ??
    (flags.new ? undefined : planned?.[0].place.session) ??
    (flags.new ? undefined : sessionToGoOn(readings, now)) ??
    newName(names, now);
  if (names.has(session)) said.push(`Going on with session ${session}.`);
  let route: Route;
  let ring: Ring;
  let sets = 8;
  if (planned !== undefined) {
    const own = planned.filter(({ place }) =>
      place.session === planned[0].place.session
    ).map((one) => ({ ...one, place: ofSession(one.place, session) }));
    const along = new PlannedRoute(own);
    route = along;
    sets = along.sets;
    ring = bench.rings.find(({ id }) => id === own[0].place.ring)!;
  } else {
    ring = await ringOf(folder, flags, session, ask);
    const zones = await zonesOf(folder, flags, session, ring, ask);
    route = new FreeRoute(zones, await footOf(flags, ring, ask), ring.id);
  }
  const keeper = await Keeper.open(path, piece, bench, readings);
  if (keeper.said !== "") said.push(`${keeper.said}.`);
  const cells: Record<string, string> = {};
  for (const name of ["operator", "grade", "unit"]) {
    const value = text(flags, name);
    if (value !== undefined) cells[name] = value;
  }
  return {
    piece,
    bench,
    keeper,
    route,
    session,
    ring: ring.id,
    cells,
    scatter: gaugeScatter(
      readings.filter((one) => one.session !== session),
      ring.id,
      piece,
      bench,
    ),
    looks: looksOf(flags, sets),
    said,
  };
}

/** A planned reading as part of another session. */
function ofSession(place: Reading, session: string): Reading {
  return { ...place, session, zeroing: `${session} / ${labelOf(place)}` };
}
