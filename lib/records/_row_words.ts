/**
 * What is said of rows that are no readings, and of some that are.
 *
 * @module
 */
import type { Fault } from "./_line_faults.ts";

/** Of a comment that may have been a reading. */
export const COMMENT_LINE: Fault = {
  code: "comment-line",
  message: "a line that begins with # is a comment and was passed over",
};

/** Of a reading with more figures than the display has. */
export const FINER_THAN_STEP: Fault = {
  code: "finer-than-step",
  message: "the reading is finer than the display step; it is kept",
  mend: "nothing, if it was read between two marks",
};

/** Of a cell that must be filled. */
export function blankCell(column: string, what: string): Fault {
  return {
    code: "blank-cell",
    message: `the line does not say ${what}`,
    mend: `fill the column ${column}`,
  };
}

/** Of a row of a sheet that is still to be filled in. */
export const NO_READING_YET: Fault = {
  code: "no-reading-yet",
  message: "no zone of this row holds a reading yet",
};

/** Of a line whose quotes were mended. */
export const QUOTES_MENDED: Fault = {
  code: "quotes-mended",
  message:
    "the quote marks of this line were out of order and were taken as typed",
  mend: "check that the cells are as you meant them",
};

/** Of a file without a line below its header. */
export const NO_READINGS: Fault = {
  code: "no-readings",
  message: "the file has a header and no readings",
  mend: "write the readings below it, or take the file away",
};

/** Of a last row that is the mean of the others. */
export const LIKE_A_MEAN: Fault = {
  code: "like-a-mean",
  message:
    "this row is the mean of the rows above it in every zone, and stands apart from them; it is used as a set of readings",
  mend: "take it out, or write “mean” before it, if it sums up the others",
};

/** Of a note that calls its line a mean. */
export const MEAN_IN_NOTE: Fault = {
  code: "summary-in-note",
  message:
    "the note calls this a mean or the like; it is used as a reading all the same",
  mend: "take the line out if it sums up others",
};

/** Of a line above a sheet that says what holds for all of it. */
export function takenForAll(name: string, value: string): Fault {
  return {
    code: "taken-for-all",
    message: `${name} “${
      value.slice(0, 40)
    }” was taken from here for all readings below`,
  };
}

/** Of numbers above the header. */
export function aboveHeader(header: number): Fault {
  return {
    code: "above-header",
    message:
      `this line of numbers stands above the header (line ${header}), so nothing says what they are`,
    mend: "write a header above it, or move it below",
  };
}

/** Of a line that a word makes a summary. */
export function summaryLine(word: string): Fault {
  return {
    code: "summary-line",
    message: `“${
      word.slice(0, 30)
    }” sums up other lines and is no reading; it was left out`,
    mend: "nothing, or take the line out; a set of that name needs another",
  };
}

/** Of a header in the middle of a file. */
export function headerBelow(isSame: boolean): Fault {
  return {
    code: isSame ? "header-again" : "another-header",
    message: isSame
      ? "the header stands here again and was passed over"
      : "another header stands here; the lines below were read by it",
  };
}
