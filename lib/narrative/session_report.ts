/**
 * A folder of readings, answered.
 *
 * @module
 */
import type { NextStep } from "../fabrication/next_step.ts";
import type { Bench } from "../records/bench.ts";
import type { PieceFolder } from "../records/folder.ts";
import type { Piece } from "../records/piece.ts";
import {
  analyseSession,
  type SessionAnalysis,
} from "../zones/analyse_session.ts";
import { splitSessions } from "../zones/split_sessions.ts";
import {
  driftSentences,
  limitSentences,
  safetySentences,
  suspicionSentences,
  unseenSentences,
  zeroSentences,
} from "./caution_sentences.ts";
import { chooseNext } from "./choose_next.ts";
import { heatCautions } from "./heat_cautions.ts";
import { holdPercent } from "./hold_percent.ts";
import { mainOfTwo } from "./main_session.ts";
import { mapItems } from "../numerics/lazy_list.ts";
import { firstAndLast } from "./part_of_readings.ts";
import { nextStepSentence } from "./next_step_sentence.ts";
import { type RadiusStatement, stateRadius } from "./radius_statement.ts";
import {
  budgetReasons,
  radiusReasons,
  radiusSentence,
} from "./radius_sentences.ts";
import { ringDisagreement } from "./ring_disagreement.ts";
import { sphericitySentence } from "./sphericity_sentence.ts";
import { setApartFirst } from "./_set_apart.ts";
import { surerRing } from "./_surer_ring.ts";
import { zeroDoubts } from "./zero_doubt.ts";
import { strokesOf } from "./_work_habits.ts";

/** What a folder's readings say, as data and in words. */
export interface SessionReport {
  /** The folder it was read from. */
  readonly folder: PieceFolder;
  /** The session the answer is about: the last one. */
  readonly session?: SessionAnalysis;
  /**
   * Every session and ring, in the order they were read; of more than 200 the
   * first and the last 199.
   */
  readonly sessions: readonly SessionAnalysis[];
  /** How many sessions lie between and were not worked out; absent if none. */
  readonly sessionsLeftOut?: number;
  /** The radius stated. */
  readonly radius?: RadiusStatement;
  /** What to do next. */
  readonly next?: NextStep;
  /** The answer: doubts about the readings, then radius, shape, next step. */
  readonly answer: readonly string[];
  /** Why: how the numbers came about. */
  readonly reasons: readonly string[];
  /** What to bear in mind about these readings. */
  readonly cautions: readonly string[];
  /** What the gauge could not have seen. */
  readonly unseen: readonly string[];
  /** The usual cautions of the work. */
  readonly safety: readonly string[];
}

/**
 * Works out what a folder's readings say.
 *
 * The answer is about the last session; with several rings in it, the one
 * that read most places, then most sets, then the one clearly surer of the radius.
 * Every number in a sentence comes from the computation and is rounded to its
 * uncertainty, in the user's unit.
 *
 * @param folder A folder as read by `readPieceFolder`.
 * @returns Data and sentences; without readings the answer says so.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function sessionReport(folder: PieceFolder): SessionReport {
  const { piece, bench, readings } = folder;
  const groups = splitSessions(readings);
  const looked = firstAndLast(groups);
  const leftOut = groups.length - looked.length;
  const sessions = looked.flatMap((group) => {
    const found = analyseSession(group, piece, bench);
    return found === undefined ? [] : [found];
  });
  const outside = leftOut === 0 ? {} : { sessionsLeftOut: leftOut };
  const session = mainSession(sessions, piece, bench);
  const safety = safetySentences(piece);
  const suspicions = suspicionSentences(folder.problems);
  const doubts = session === undefined
    ? suspicions
    : [...suspicions, ...zeroDoubts(session, piece.unit)];
  if (!session) {
    return {
      folder,
      sessions,
      ...outside,
      answer: [...doubts, ...nothingToAnswer(folder)],
      reasons: [],
      cautions: [],
      unseen: [],
      safety,
    };
  }
  const radius = stateRadius(session, piece, bench);
  const otherwise = ringDisagreement(session, sessions, piece, bench);
  const surer = otherwise.length > 0
    ? undefined
    : surerRing(session, sessions, radius, piece, bench);
  const judged = surer?.found ?? radius;
  const next = chooseNext(session, piece, judged, strokesOf(bench));
  const { unit } = piece;
  return heldTogether({
    folder,
    session,
    sessions,
    ...outside,
    ...(radius === undefined ? {} : { radius }),
    next,
    answer: [
      ...doubts,
      radiusSentence(
        session,
        piece,
        radius,
        piece.startingRadius ?? sessions[0].zones[0].radius?.radius,
      ),
      ...(doubts.length > 0
        ? []
        : surer === undefined
        ? otherwise
        : [surer.sentence]),
      // Readings in doubt, or without a radius, say nothing of the shape.
      ...(doubts.length > 0 || radius === undefined
        ? []
        : [sphericitySentence(session, unit)]),
      doubts.length > 0
        ? "Next: settle that first; nothing here is safe to act on until then."
        : otherwise.length > 0
        ? "Next: find out which ring is wrong (its radius, its balls, which one was on the gauge) before any more work."
        : setApartFirst(session, unit) ?? nextStepSentence(
          next,
          session,
          judged,
          unit,
          piece.target?.tolerance,
        ),
      ...refusedSentences(folder),
    ],
    reasons: [
      ...radiusReasons(session, piece, radius?.over),
      ...(radius ? budgetReasons(radius, unit) : []),
    ],
    cautions: [
      ...heatCautions(
        mapItems(session.readings, ({ reading }) => reading),
        piece,
        radius?.radius,
      ),
      ...limitSentences(session, unit),
      ...zeroSentences(session.zeros, unit),
      ...driftSentences(session.drifts, unit),
    ],
    unseen: unseenSentences(session.unseen, unit),
    safety,
  });
}

/** What to say when no reading of the work could be used. */
function nothingToAnswer({ lines, problems }: PieceFolder): readonly string[] {
  if (lines.reported === 0) {
    const passed = problems.find(({ code }) => code === "file-not-read");
    if (passed?.mend !== undefined) {
      return [
        `There is nothing to answer yet: no reading of the work was found, and ${passed.file} is not read where it lies.`,
        `Next: ${passed.mend}, and run this again.`,
      ];
    }
    return [
      "There is nothing to answer yet: no reading of the work was found.",
      "Next: zero the gauge on the flat, read centre, 50% and edge, and do so on three diameters or more.",
    ];
  }
  const first = problems.find(({ severity }) => severity === "refused") ??
    problems.find(({ code }) => code === "withdrawn");
  const where = first === undefined
    ? ""
    : ` The first: ${first.message} (${first.file}${
      first.line === undefined ? "" : `, line ${first.line}`
    }).`;
  const mend = first?.mend ?? "mend the files as “What was read” says";
  return [
    `No reading could be used: ${
      lines.reported === 1
        ? "the one line was"
        : `all ${lines.reported} lines were`
    } left out.${where}`,
    mend.endsWith("?")
      ? `Next: ${mend} Mend that, and run this again.`
      : `Next: ${mend}, and run this again.`,
  ];
}

/** How many readings an answer had to do without. */
function refusedSentences({ lines }: PieceFolder): readonly string[] {
  return lines.reported === 0 ? [] : [
    `${lines.reported} of ${lines.read} readings ${
      lines.reported === 1 ? "was" : "were"
    } left out of this; “What was read” says which and why.`,
  ];
}

/** Keeps a number and its per cent sign on one line. */
function heldTogether(report: SessionReport): SessionReport {
  return {
    ...report,
    answer: holdPercent(report.answer),
    reasons: holdPercent(report.reasons),
    cautions: holdPercent(report.cautions),
  };
}

/** The last session; of its rings the one that its answer rests on. */
function mainSession(
  sessions: readonly SessionAnalysis[],
  piece: Piece,
  bench: Bench,
): SessionAnalysis | undefined {
  const last = sessions.at(-1)?.session;
  const own = sessions.filter(({ session }) => session === last);
  return own.length === 0
    ? undefined
    : own.reduce((best, one) => mainOfTwo(best, one, piece, bench));
}
