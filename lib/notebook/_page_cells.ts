/**
 * The cells of a notebook as the parts of a page.
 *
 * @module
 */
import { escapeHtml } from "../display/escape_html.ts";
import type { CodeRenderer } from "./_code_markup.ts";
import { liveMarkup } from "./_live_markup.ts";
import { outputMarkup, type OutputTools } from "./_output_markup.ts";
import { type Cell, cellTags, type CodeCell } from "./document.ts";

/** Turns cells into HTML, one after the other. */
export class PageCells {
  readonly #tools: OutputTools;
  readonly #code: CodeRenderer;
  readonly #language: string;
  readonly #isReader: boolean;
  readonly #canBeLive: boolean;
  #held: string[] = [];
  /** Whether a live figure stands among the cells so far. */
  hasLive = false;

  constructor(
    tools: OutputTools,
    code: CodeRenderer,
    language: string,
    isReader: boolean,
    canBeLive: boolean,
  ) {
    this.#tools = tools;
    this.#code = code;
    this.#language = language;
    this.#isReader = isReader;
    this.#canBeLive = canBeLive;
  }

  #fold(blocks: readonly string[]): string {
    if (blocks.length === 0) return "";
    const words = this.#isReader ? "How this was computed" : "Show the code";
    const code = blocks.map((block) =>
      `<pre class="sb-code" tabindex="0"><code>${block}</code></pre>`
    ).join("");
    return `<details class="sb-fold"><summary>${words}</summary>${code}</details>`;
  }

  #codeCell(cell: CodeCell, ordinal: number, number: number): string {
    const tags = cellTags(cell);
    const source = cell.source.replace(/\r\n?/g, "\n").replace(/\s+$/, "");
    const hasCode = !tags.includes("remove-input") && source !== "";
    const block = hasCode ? [this.#code(source, this.#language)] : [];
    const outputs = tags.includes("remove-output") ? [] : cell.outputs;
    const shown = outputs.map((output, index) => {
      const place = {
        scope: `c${ordinal}-${index + 1}`,
        label: `cell ${number}` +
          (outputs.length > 1 ? `, output ${index + 1}` : ""),
      };
      const live = liveMarkup(output, place, this.#tools, this.#canBeLive);
      this.hasLive ||= live !== undefined && this.#canBeLive;
      return live ?? outputMarkup(output, place, this.#tools);
    }).join("\n");
    if (!this.#isReader) return this.#section(this.#fold(block) + shown);
    this.#held.push(...block);
    return this.#section(shown);
  }

  /** The code behind the results since the last text, folded. */
  #release(): string {
    const fold = this.#fold(this.#held);
    this.#held = [];
    return this.#section(fold);
  }

  #section(inner: string): string {
    return inner.trim() === "" ? "" : `<div class="sb-cell">\n${inner}\n</div>`;
  }

  /** One cell, its place in the file and its number; empty if it shows nothing. */
  cell(cell: Cell, ordinal: number, number: number): string {
    if (cellTags(cell).includes("remove-cell")) return "";
    switch (cell.cell_type) {
      case "code":
        return this.#codeCell(cell, ordinal, number);
      case "markdown":
        return this.#release() + this.#section(
          this.#tools.markdown(cell.source, cell.attachments),
        );
      case "raw":
        return this.#section(
          cell.source.trim() === ""
            ? ""
            : `<pre class="sb-text" tabindex="0">${
              escapeHtml(cell.source)
            }</pre>`,
        );
    }
  }

  /** The code behind the last results, at the end of the page. */
  rest(): string {
    return this.#release();
  }
}
