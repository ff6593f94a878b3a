/**
 * How a session begins: which one, with which ring, along which route.
 *
 * @module
 */
import { zeroingLabel } from "../records/zeroing_label.ts";
import { join } from "node:path";
import type { GaugeScatter } from "../narrative/bench_scatter.ts";
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
import {
  type Ask,
  type Flags,
  footOf,
  ringOf,
  StartError,
  textOf,
  zonesOf,
} from "./_record_questions.ts";
import type { Route } from "./_record_route.ts";

/** What a session starts from. */
export type Start =
  & Omit<DeskSettings, "asks" | "say" | "warn" | "stand" | "now">
  & {
    readonly looks: Looks;
    /** What there is to say before the first question. */
    readonly said: readonly string[];
  };

/** A session goes on by itself when its last reading is no older. */
const HOURS_TO_GO_ON = 12;
const LONGEST_PLAN = 1_000_000;

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

function looksOf(flags: Flags, planned: number): Looks {
  const given = textOf(flags, "sets");
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
  const session = textOf(flags, "session") ??
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
  let known: GaugeScatter | undefined;
  const cells: Record<string, string> = {};
  for (const name of ["operator", "grade", "unit"]) {
    const value = textOf(flags, name);
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
    scatter: async () => {
      const { gaugeScatter } = await import("../narrative/bench_scatter.ts");
      const earlier = readings.filter((one) => one.session !== session);
      return known ??= gaugeScatter(earlier, ring.id, piece, bench);
    },
    looks: looksOf(flags, sets),
    said,
  };
}

/** A planned reading as part of another session. */
function ofSession(place: Reading, session: string): Reading {
  return { ...place, session, zeroing: `${session} / ${zeroingLabel(place)}` };
}
