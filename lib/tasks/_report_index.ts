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
}

const STYLE = `
.sb-pieces{list-style:none;margin:0;padding:0}
.sb-pieces>li{border-top:1px solid var(--line);padding:1.1rem 0 1rem;break-inside:avoid}
.sb-pieces h2{margin:0;font-size:1.15rem}
.sb-pieces p{margin:.35rem 0}
.sb-when{color:var(--soft);font-size:.85rem}
.sb-more{font-size:.85rem}
.sb-more a+a{margin-left:1rem}
.sb-faults{color:var(--alarm);white-space:pre-wrap;overflow-wrap:anywhere;font-size:.9rem}
`.trim();

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

async function entryOf(
  piece: PieceOutcome,
  from: string,
): Promise<MarkupPart> {
  const { folder, page, about, answer, faults } = piece;
  const name = piece.name ?? basename(folder);
  const others: MarkupPart[] = [];
  for (const [file, words] of OTHERS) {
    const path = join(folder, "report", file);
    if (!await exists(path)) continue;
    others.push(markup`<a href="${address(from, path)}">${words}</a>`);
  }
  const when = [about, name === basename(folder) ? "" : basename(folder)]
    .filter((part) => part).join(" · ");
  return markup`<li><h2>${
    page === undefined
      ? name
      : markup`<a href="${address(from, page)}">${name}</a>`
  }</h2>${when === "" ? "" : markup`<p class="sb-when">${when}</p>`}${
    faults.length === 0
      ? ""
      : markup`<p class="sb-faults"><strong>${
        page === undefined ? "No report" : "The report is incomplete"
      }:</strong> ${faults.join("\n")}</p>`
  }${
    answer.map((sentence, index) =>
      index === 0
        ? markup`<p><strong>${sentence}</strong></p>`
        : markup`<p>${sentence}</p>`
    )
  }${
    others.length === 0 ? "" : markup`<p class="sb-more">Also: ${others}</p>`
  }</li>`;
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
  const entries: MarkupPart[] = [];
  for (const piece of pieces) entries.push(await entryOf(piece, out));
  const failed = pieces.filter(({ faults }) => faults.length > 0).length;
  const count = pieces.length === 1 ? "1 piece" : `${pieces.length} pieces`;
  const name = basename(resolve(folder));
  const page = join(out, "index.html");
  await writeAtomically(
    page,
    pageShell(markup`<ul class="sb-pieces">${entries}</ul>`.html, {
      title: `Pieces in ${name}`,
      subtitle: failed === 0
        ? count
        : `${count}, ${failed} without a whole report`,
      footer: `Made by sagbook ${VERSION} from ${name}.`,
      style: STYLE,
    }),
  );
  return page;
}
