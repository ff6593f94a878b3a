const DIGITS =
  "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** Reads the `mappings` of a source map of one file as pairs of offsets. */
export function sourceMapAnchors(
  mappings: string,
  generated: string,
  original: string,
): { generated: number; original: number; copied: false }[] {
  const toStarts = lineStarts(generated);
  const fromStarts = lineStarts(original);
  const anchors: { generated: number; original: number; copied: false }[] = [];
  let line = 0;
  let column = 0;
  for (const [toLine, group] of mappings.split(";").entries()) {
    let toColumn = 0;
    for (const segment of group.split(",")) {
      const values = decode(segment);
      if (values.length < 4) continue;
      toColumn += values[0];
      line += values[2];
      column += values[3];
      anchors.push({
        generated: toStarts[toLine] + toColumn,
        original: fromStarts[line] + column,
        copied: false,
      });
    }
  }
  return anchors;
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (const match of text.matchAll(/\r\n|\n|\r/g)) {
    starts.push(match.index + match[0].length);
  }
  return starts;
}

function decode(segment: string): number[] {
  const values: number[] = [];
  let value = 0;
  let shift = 0;
  for (const letter of segment) {
    const digit = DIGITS.indexOf(letter);
    value |= (digit & 31) << shift;
    shift += 5;
    if (digit & 32) continue;
    values.push(value & 1 ? -(value >> 1) : value >> 1);
    value = shift = 0;
  }
  return values;
}
