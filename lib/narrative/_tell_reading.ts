/**
 * How far a folder has been read, told while a notebook reads it.
 *
 * @module
 */
import { tellProgress } from "../display/tell_progress.ts";
import type {
  ReadingProgress,
  ReadOptions,
} from "../records/read_piece_folder.ts";
import { readingWords } from "./reading_words.ts";

/** Least time between two words, in ms. */
const PAUSE = 250;

/** Options for reading a folder that tell how far it is, four times a second. */
export function tellReading(): ReadOptions {
  let last = performance.now();
  return {
    onProgress: (progress: ReadingProgress) => {
      const now = performance.now();
      if (now - last < PAUSE && progress.part < 1) return;
      last = now;
      tellProgress(readingWords(progress));
    },
  };
}
