/** A place in generated text and the place in the source it stands for. */
interface Anchor {
  readonly generated: number;
  readonly original: number;
  /** True if the text from here on is a copy of the source. */
  readonly copied: boolean;
}

/** Leads from offsets in generated text back to offsets in the source. */
export class PositionMap {
  #anchors: readonly Anchor[];

  constructor(anchors: readonly Anchor[]) {
    this.#anchors = anchors;
  }

  /** The source offset of a generated offset; inserted text has its neighbour's. */
  original(generated: number): number {
    let low = 0;
    let high = this.#anchors.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#anchors[middle].generated <= generated) low = middle;
      else high = middle - 1;
    }
    const anchor = this.#anchors[low];
    if (!anchor) return 0;
    return anchor.original +
      (anchor.copied ? generated - anchor.generated : 0);
  }

  /** This map after another one: generated → middle → source. */
  after(first: PositionMap): PositionMap {
    const anchors: Anchor[] = [];
    for (const [index, anchor] of this.#anchors.entries()) {
      const { generated, original, copied } = anchor;
      anchors.push({
        generated,
        original: first.original(original),
        copied: copied && first.#copiedAt(original),
      });
      if (!copied) continue;
      const end = this.#anchors[index + 1]?.generated ?? Infinity;
      for (const inner of first.#anchors) {
        const at = inner.generated - original + generated;
        if (at > generated && at < end) {
          anchors.push({ ...inner, generated: at });
        }
      }
    }
    return new PositionMap(anchors);
  }

  #copiedAt(generated: number): boolean {
    return this.#anchors.findLast((a) => a.generated <= generated)?.copied ??
      false;
  }
}

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly order: number;
  readonly anchors?: readonly Anchor[];
}

/** Collects edits of a text, then makes the new text and its map. */
export class TextEdits {
  #edits: Edit[] = [];

  constructor(readonly source: string) {}

  /** Puts text before an offset; earlier insertions at it come first. */
  insert(at: number, text: string): void {
    this.replace(at, at, text);
  }

  /** Replaces a range; `anchors` may map inside the new text. */
  replace(
    start: number,
    end: number,
    text: string,
    anchors?: readonly Anchor[],
  ): void {
    const order = this.#edits.length;
    this.#edits.push({ start, end, text, order, anchors });
  }

  /** Blanks a range and keeps its line breaks. */
  blank(start: number, end: number): void {
    const kept = this.source.slice(start, end).replace(/[^\r\n]/g, " ");
    this.replace(start, end, kept);
  }

  /** The edited text and the way back. */
  apply(): { readonly text: string; readonly map: PositionMap } {
    const anchors: Anchor[] = [];
    let text = "";
    let at = 0;
    const copy = (end: number) => {
      if (end <= at) return;
      anchors.push({ generated: text.length, original: at, copied: true });
      text += this.source.slice(at, end);
      at = end;
    };
    const sorted = this.#edits.toSorted((a, b) =>
      a.start - b.start || a.end - b.end || a.order - b.order
    );
    for (const edit of sorted) {
      copy(edit.start);
      if (edit.anchors) {
        for (const inner of edit.anchors) {
          anchors.push({
            generated: text.length + inner.generated,
            original: edit.start + inner.original,
            copied: inner.copied,
          });
        }
      } else if (edit.text) {
        anchors.push({
          generated: text.length,
          original: edit.start,
          copied: false,
        });
      }
      text += edit.text;
      at = Math.max(at, edit.end);
    }
    copy(this.source.length);
    anchors.push({ generated: text.length, original: at, copied: true });
    return { text, map: new PositionMap(anchors) };
  }
}
