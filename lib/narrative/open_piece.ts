/**
 * One call from a folder to its report.
 *
 * @module
 */
import { readPieceFolder } from "../records/read_piece_folder.ts";
import { tellReading } from "./_tell_reading.ts";
import { type SessionReport, sessionReport } from "./session_report.ts";

/**
 * Reads a piece's folder and works out what its readings say.
 *
 * @param path The folder, as the user names it.
 * @returns Data and sentences, ready to show.
 * @throws {RecordError} If the piece or the bench cannot be read, with every
 * problem at once.
 *
 * @example See the example of `lib/narrative/mod.ts`.
 */
export async function openPiece(path: string): Promise<SessionReport> {
  return sessionReport(await readPieceFolder(path, tellReading()));
}
