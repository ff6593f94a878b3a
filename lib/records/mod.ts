/**
 * A user's files, read whole: every line becomes a reading or is reported.
 *
 * @example A folder that cannot be used says why, all at once
 * ```ts
 * import { readPieceFolder, RecordError } from "sagbook/records/mod.ts";
 * import { rejects } from "node:assert/strict";
 *
 * const path = await Deno.makeTempDir();
 * await rejects(readPieceFolder(path), RecordError);
 * await Deno.remove(path);
 * ```
 *
 * @module
 */
export * from "./bench.ts";
export * from "./bench_file.ts";
export * from "./closest_name.ts";
export * from "./csv_text.ts";
export * from "./describe_problem.ts";
export * from "./finished_pieces.ts";
export type { FocusReading } from "./focus_reading.ts";
export * from "./folder.ts";
export * from "./group_problems.ts";
export * from "./lens_record.ts";
export * from "./piece.ts";
export * from "./piece_file.ts";
export * from "./printable.ts";
export * from "./problem.ts";
export * from "./read_folder_finished.ts";
export * from "./read_folder_work_log.ts";
export * from "./read_piece_folder.ts";
export * from "./read_piece_settings.ts";
export * from "./read_plan.ts";
export * from "./reading.ts";
export * from "./record_error.ts";
export * from "./record_schema.ts";
export * from "./ring_name.ts";
export * from "./ring_record.ts";
export * from "./ring_spacings.ts";
export * from "./scan_readings.ts";
export * from "./settings_of_text.ts";
export * from "./shown_by_gauge.ts";
export * from "./tidy_columns.ts";
export * from "./unreadable_files.ts";
export * from "./without_plus_minus.ts";
export * from "./work_habits.ts";
export * from "./work_log.ts";
export * from "./write_tidy.ts";
export * from "./zeroing_label.ts";
