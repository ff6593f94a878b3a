/**
 * From a ground radius to its later focal length, answered.
 *
 * @module
 */
import {
  type FinishedSuspicion,
  finishedSuspicions,
} from "../fabrication/finished_suspicions.ts";
import { type FocalHabit, focalHabit } from "../fabrication/focal_habit.ts";
import {
  type GeometricFocalLength,
  geometricFocalLength,
} from "../fabrication/geometric_focal_length.ts";
import {
  type GroundRadiusAim,
  groundRadiusFor,
} from "../fabrication/ground_radius_for.ts";
import {
  type FocalLengthPrediction,
  landingProbability,
  predictFocalLength,
} from "../fabrication/predict_focal_length.ts";
import type {
  FinishedPiece,
  FinishedPieces,
} from "../records/finished_pieces.ts";
import type { PieceFolder } from "../records/folder.ts";
import { readFolderFinished } from "../records/read_folder_finished.ts";
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { type Millimetres, millimetres } from "../units/length.ts";
import { focalNotes } from "./focal_notes.ts";
import { focalAnswer } from "./focal_sentences.ts";
import type { RadiusStatement } from "./radius_statement.ts";
import { sessionReport } from "./session_report.ts";
import { isPiece, type ShopPiece, shopPiece } from "./shop_piece.ts";
import { tellReading } from "./_tell_reading.ts";

/** What a shop's finished pieces say about one piece, as data and in words. */
export interface FocalReport {
  /** The piece. */
  readonly folder: PieceFolder;
  /** Its radius as read. */
  readonly radius?: RadiusStatement;
  /** The shop's file. */
  readonly finished: FinishedPieces;
  /** Pieces used, in the order of the file. */
  readonly used: readonly ShopPiece[];
  /** This very piece, where the shop's file holds it; it foretells nothing. */
  readonly itself?: ShopPiece;
  /** Pieces whose distances belong to no focal length. */
  readonly without: readonly FinishedPiece[];
  /** Pieces not used, and what they look like. */
  readonly suspicions: readonly FinishedSuspicion[];
  /** The shop's habit, from two pieces on. */
  readonly habit?: FocalHabit;
  /** This piece by the habit. */
  readonly prediction?: FocalLengthPrediction;
  /** This piece by geometry alone. */
  readonly geometry?: GeometricFocalLength;
  /** Wanted focal length, in mm. */
  readonly wanted?: Millimetres;
  /** How far off is still good, in mm. */
  readonly tolerance?: Millimetres;
  /** Chance of landing within tolerance from here. */
  readonly landing?: number;
  /** The radius to leave grinding at. */
  readonly aim?: GroundRadiusAim;
  /** The answer. */
  readonly answer: readonly string[];
  /** What was left out, and what the numbers rest on. */
  readonly notes: readonly string[];
}

/** What the caller knows besides the files. */
export interface FocalOptions {
  /** What the piece is figured to; a paraboloid unless stated. */
  readonly figure?: "sphere" | "paraboloid";
  /** Wanted chance of landing within tolerance; 0.9 unless stated. */
  readonly probability?: number;
}

/**
 * Works out what a ground radius will become in a shop.
 *
 * @param folder The piece's folder.
 * @param finished The shop's finished pieces.
 * @param options Figure and wanted chance.
 * @returns Data and sentences.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export function focalReport(
  folder: PieceFolder,
  finished: FinishedPieces,
  options: FocalOptions = {},
): FocalReport {
  const { figure = "paraboloid", probability = 0.9 } = options;
  const { piece } = folder;
  const { radius } = sessionReport(folder);
  const known = finished.pieces.map((one) => [one, shopPiece(one)] as const);
  const pieces = known.flatMap(([, one]) => one === undefined ? [] : [one]);
  const suspicions = finishedSuspicions(pieces);
  const odd = new Set(suspicions.map(({ line }) => line));
  const itself = pieces.find((one) => isPiece(one, piece.name));
  const used = pieces.filter((one) => !odd.has(one.line) && one !== itself);
  const habit = used.length < 2 ? undefined : focalHabit(
    used.map((one) => ({
      radius: one.groundRadius,
      focalLength: one.focalLength,
      ...(one.groundRadiusUncertainty === undefined
        ? {}
        : { radiusUncertainty: one.groundRadiusUncertainty }),
      ...(one.focalLengthUncertainty === undefined
        ? {}
        : { focalLengthUncertainty: one.focalLengthUncertainty }),
    })),
  );
  const u = radius?.budget.standardUncertainty;
  const prediction = habit === undefined || radius === undefined
    ? undefined
    : predictFocalLength(habit, radius.radius, u, 0.95, radius.budget.dof);
  const geometry = radius === undefined ? undefined : geometricFocalLength(
    radius.radius,
    millimetres(u ?? 0),
    millimetres(piece.diameter / 2),
    figure,
    radius.budget.dof,
  );
  const wanted = piece.target && millimetres(piece.target.radius / 2);
  const tolerance = piece.target?.tolerance === undefined
    ? undefined
    : millimetres(piece.target.tolerance / 2);
  const landing =
    prediction === undefined || wanted === undefined || tolerance === undefined
      ? undefined
      : landingProbability(prediction, wanted, tolerance);
  const aim = habit === undefined || wanted === undefined
    ? undefined
    : groundRadiusFor(habit, {
      focalLength: wanted,
      probability,
      ...(tolerance === undefined ? {} : { tolerance }),
      ...(u === undefined ? {} : { radiusUncertainty: u }),
    });
  const found = {
    folder,
    ...(radius === undefined ? {} : { radius }),
    finished,
    used,
    ...(itself === undefined ? {} : { itself }),
    without: known.flatMap(([one, found]) => found === undefined ? [one] : []),
    suspicions,
    ...(habit === undefined ? {} : { habit }),
    ...(prediction === undefined ? {} : { prediction }),
    ...(geometry === undefined ? {} : { geometry }),
    ...(wanted === undefined ? {} : { wanted }),
    ...(tolerance === undefined ? {} : { tolerance }),
    ...(landing === undefined ? {} : { landing }),
    ...(aim === undefined ? {} : { aim }),
  };
  return {
    ...found,
    answer: focalAnswer(found, probability),
    notes: focalNotes(found),
  };
}

/**
 * Reads a piece and a shop and works out what the radius will become.
 *
 * @param path The piece's folder.
 * @param shop The shop's folder, with `finished.csv`.
 * @param options Figure and wanted chance.
 * @returns Data and sentences.
 * @throws {RecordError} If the piece or the bench cannot be read.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function openFocal(
  path: string,
  shop: string,
  options: FocalOptions = {},
): Promise<FocalReport> {
  const folder = await readPieceFolder(path, tellReading());
  return focalReport(folder, await readFolderFinished(shop), options);
}
