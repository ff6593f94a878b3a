/**
 * The text of a file to JSON, with words for whatever is in its place.
 *
 * @module
 */

/** Values nested deeper than this are no notebook. */
const DEEPEST = 1000;
/** Words of other languages that stand where JSON has another, or none. */
const FOREIGN = /-?Infinity|NaN|None|True|False|undefined/y;

/** Place of the first word outside a text that JSON does not know. */
function foreignWord(text: string): { at: number; word: string } | undefined {
  let isText = false;
  for (let at = 0; at < text.length; at++) {
    const mark = text[at];
    if (isText && mark === "\\") at++;
    else if (mark === '"') isText = !isText;
    else if (!isText && /[-INTFu]/.test(mark)) {
      FOREIGN.lastIndex = at;
      const [word] = FOREIGN.exec(text) ?? [];
      if (word !== undefined) return { at, word };
    }
  }
  return undefined;
}

function place(text: string, at: number): string {
  const before = text.slice(0, at).split("\n");
  return `line ${before.length}, column ${
    before[before.length - 1].length + 1
  }`;
}

/** What is wrong with a text that is no JSON. */
function faultOf(text: string, error: unknown): string {
  const start = text.trimStart();
  if (start === "") return "the file is empty";
  if (/^<{7} /m.test(text) && /^>{7} /m.test(text)) {
    return "it holds the conflict marks of an unfinished merge; finish the merge first";
  }
  if (start.startsWith("<")) {
    return "it is a web page or other markup, not a notebook; fetch the file itself";
  }
  if (/^version \S+\noid \S+\nsize \d+\s*$/.test(start)) {
    return "it is a pointer to a file that is kept elsewhere; fetch the file itself";
  }
  if (!/^[{[]/.test(start)) {
    const begin = start.slice(0, 20).split("\n")[0].replaceAll("\0", "");
    return begin === ""
      ? "it holds NUL bytes, as a file does that was never written to its end"
      : `it begins with “${begin}”, which is no JSON`;
  }
  const found = /position (\d+)/.exec(String(error));
  const at = found === null ? undefined : Number(found[1]);
  const foreign = foreignWord(text);
  const isForeign = foreign !== undefined &&
    (at === undefined ||
      (at >= foreign.at && at <= foreign.at + foreign.word.length));
  if (isForeign) {
    return `${foreign.word} at ${place(text, foreign.at)} is no JSON`;
  }
  return at === undefined
    ? `it breaks off at the end, line ${text.split("\n").length}`
    : `it breaks off at ${place(text, at)}`;
}

/** How many levels of lists and objects lie in each other, up to a limit. */
function isTooDeep(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return true;
    level = level.flatMap((one) =>
      typeof one === "object" && one !== null
        ? Object.values(one).filter((inner) => typeof inner === "object")
        : []
    );
  }
  return false;
}

/**
 * Reads the text of a file as JSON.
 *
 * @throws {SyntaxError} With the file's name and what is wrong with it.
 */
export function parseJson(text: string, name: string): unknown {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new SyntaxError(
      `Cannot read ${name} as a notebook must hold JSON: ${
        faultOf(text, error)
      }`,
    );
  }
  if (isTooDeep(value)) {
    throw new SyntaxError(
      `Cannot read ${name} as a notebook nests its values at most ${DEEPEST} deep: it holds more levels`,
    );
  }
  return value;
}
