/**
 * One page for a folder of pieces: the answer of each, and where its page is.
 *
 * @module
 */
import { basename, join, relative, resolve, sep } from "node:path";
import { markup, type MarkupPart } from "../display/markup.ts";
import { pageShell } from "../notebook/page_shell.ts";
import { writeAtomically } from "../files/write_atomically.ts";
import { VERSION } from "../version.ts";

/** What became of one piece. */
export interface PieceOutcome {
  /** The piece's folder. */
  readonly folder: string;
  /** The piece's own name, where it is known. */
  readonly name?: string;
  /** Which session, when and how much of it, where it is known. */
  readonly about?: string;
  /** The answer, sentence by sentence. */
  readonly answer: readonly string[];
  /** Path of its page, where one was written. */
  readonly page?: string;
  /** Why there is no report, or why it is not whole; empty when all is well. */
  readonly faults: readonly string[];
  /** When the report was made, where that was in an earlier run. */
  readonly earlier?: string;
  /** True where the run was stopped before it and no earlier report stands. */
  readonly isPending?: boolean;
}

const STYLE = `
.sb-pieces{list-style:none;margin:0;padding:0}
.sb-pieces>li{content-visibility:auto;contain-intrinsic-size:auto 8rem;border-top:1px solid var(--line);padding:1.1rem 0 1rem;break-inside:avoid}
.sb-pieces h2{margin:0;font-size:1.15rem}
.sb-pieces p{margin:.35rem 0}
.sb-when{color:var(--soft);font-size:.85rem}
.sb-more{font-size:.85rem}
.sb-more a{white-space:nowrap}
.sb-more a+a{margin-left:1rem}
.sb-pieces summary{color:inherit;font:inherit}
.sb-faults{color:var(--alarm);white-space:pre-wrap;overflow-wrap:anywhere;font-size:.9rem}
`.trim();

/** Of more pieces than this the first sentence is shown, the rest unfolds. */
const MOST_IN_FULL = 30;
/** So many pieces are named above a long list. */
const MOST_SHORTCUTS = 50;

/** Pages that other tasks leave beside the report, and what they are called. */
const OTHERS = [
  ["history.html", "history"],
  ["gauge.html", "gauge"],
  ["plan.html", "plan"],
  ["focal.html", "focal length"],
] as const;

/** The address of a file as seen from a folder. */
function address(from: string, to: string): string {
  return relative(from, to).split(sep).map(encodeURIComponent).join("/");
}

async function exists(path: string): Promise<boolean> {
  try {
    return (await Deno.stat(path)).isFile;
  } catch {
    return false;
  }
}

/** What there is to say before the answer. */
function stateOf({ page, faults, earlier, isPending }: PieceOutcome) {
  if (isPending) {
    return markup`<p class="sb-faults"><strong>Not done:</strong> the run was stopped before it.</p>`;
  }
  if (earlier !== undefined) {
    return markup`<p class="sb-when">Of an earlier run, ${earlier} UTC.</p>`;
  }
  return faults.length === 0
    ? ""
    : markup`<p class="sb-faults"><strong>${
      page === undefined ? "No report" : "The report is incomplete"
    }:</strong> ${faults.join("\n")}</p>`;
}

/** The answer: all of it, or where pieces are many the rest behind a fold. */
function answerOf(answer: readonly string[], isLong: boolean): MarkupPart {
  const [first, ...rest] = answer;
  if (first === undefined) return "";
  const more = rest.map((sentence) => markup`<p>${sentence}</p>`);
  const lead = markup`<strong>${first}</strong>`;
  return isLong && rest.length > 0
    ? markup`<details><summary>${lead}</summary>${more}</details>`
    : markup`<p>${lead}</p>${more}`;
}

async function entryOf(
  piece: PieceOutcome,
  from: string,
  number: number,
  isLong: boolean,
): Promise<MarkupPart> {
  const { folder, page, about, answer } = piece;
  const name = nameOf(piece);
  const others: MarkupPart[] = [];
  for (const [file, words] of OTHERS) {
    const path = join(folder, "report", file);
    if (!await exists(path)) continue;
    others.push(markup`<a href="${address(from, path)}">${words}</a>`);
  }
  const when = [about, name === basename(folder) ? "" : basename(folder)]
    .filter((part) => part).join(" · ");
  return markup`<li id="piece-${number}"><h2>${
    page === undefined
      ? name
      : markup`<a href="${address(from, page)}">${name}</a>`
  }</h2>${when === "" ? "" : markup`<p class="sb-when">${when}</p>`}${
    stateOf(piece)
  }${answerOf(answer, isLong)}${
    others.length === 0 ? "" : markup`<p class="sb-more">Also: ${others}</p>`
  }</li>`;
}

function nameOf({ name, folder }: PieceOutcome): string {
  return name ?? basename(folder);
}

/** Links to the pieces that a test picks, for a list too long to look through. */
function shortcuts(
  pieces: readonly PieceOutcome[],
  heading: string,
  picks: (piece: PieceOutcome) => boolean,
): MarkupPart {
  const found = pieces.flatMap((piece, index) =>
    picks(piece)
      ? [markup`<a href="#piece-${index + 1}">${nameOf(piece)}</a>`]
      : []
  );
  if (found.length === 0) return "";
  const left = found.length - MOST_SHORTCUTS;
  return markup`<p class="sb-more">${heading}: ${
    found.slice(0, MOST_SHORTCUTS)
  }${left > 0 ? ` and ${left} more` : ""}</p>`;
}

/** How many there are, and of how many something is to be known. */
function countsOf(pieces: readonly PieceOutcome[]): string {
  const count = (picks: (piece: PieceOutcome) => boolean | undefined) =>
    pieces.filter(picks).length;
  const parts = [
    [count(({ faults }) => faults.length > 0), "without a whole report"],
    [count(({ isPending }) => isPending), "not done"],
    [count(({ earlier }) => earlier !== undefined), "of an earlier run"],
  ] as const;
  return [
    pieces.length === 1 ? "1 piece" : `${pieces.length} pieces`,
    ...parts.flatMap(([many, words]) => many === 0 ? [] : `${many} ${words}`),
  ].join(", ");
}

/**
 * Writes `report/index.html` into a folder of pieces.
 *
 * @param folder The folder of pieces.
 * @param pieces What became of each, in the order shown.
 * @returns Path of the page.
 */
export async function writeReportIndex(
  folder: string,
  pieces: readonly PieceOutcome[],
): Promise<string> {
  const out = join(folder, "report");
  await Deno.mkdir(out, { recursive: true });
  const isLong = pieces.length > MOST_IN_FULL;
  const entries: MarkupPart[] = [];
  for (const [index, piece] of pieces.entries()) {
    entries.push(await entryOf(piece, out, index + 1, isLong));
  }
  const name = basename(resolve(folder));
  const page = join(out, "index.html");
  const body = markup`${
    isLong
      ? shortcuts(
        pieces,
        "Without a whole report",
        ({ faults, isPending }) => faults.length > 0 || isPending === true,
      )
      : ""
  }<ul class="sb-pieces">${entries}</ul>`;
  await writeAtomically(
    page,
    pageShell(body.html, {
      title: `Pieces in ${name}`,
      subtitle: countsOf(pieces),
      footer: `Made by sagbook ${VERSION} from ${name}.`,
      style: STYLE,
    }),
  );
  return page;
}
