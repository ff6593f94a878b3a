import { Random } from "sagbook/numerics/random.ts";
import { damaged } from "../records/_mutations.ts";
import { demoFiles, readDamaged } from "../records/_read_damaged.ts";
import type { Study, StudyRow } from "./_study.ts";

/** Mutations for each seed: 100,000 in all. */
const MUTATIONS = 20_000;

const KINDS = {
  readings: "files of readings and plans",
  "work log": "work logs",
  finished: "lists of finished pieces",
  settings: "piece.json and bench.json",
} as const;

/** Whether a damaged file is ever lost from, or breaks its reader. */
export const study: Study = {
  title: "No line of a damaged file is lost, and no reader breaks",
  about: `
${MUTATIONS} mutations for each seed of the first forty lines of demo files: bytes
flipped and written over, pieces cut out, NULs, lines swapped, doubled and taken
out, headers repeated, titles and summaries added, cells changed, split and
quoted, quotes left open, columns moved, other delimiters, decimal marks, line
ends and encodings; one to three of them at a time. "Lost" counts files whose
lines read are not lines used plus lines reported, whose used lines are not all
handed over, or whose reported lines are not all spoken of. "Untyped" counts
errors that are not a RecordError with its problems.
`,
  async run(seed) {
    const random = new Random(seed);
    const files = await demoFiles();
    const scratch = await Deno.makeTempDir({ prefix: "damaged-" });
    const found = new Map<
      string,
      { runs: number; lost: number; untyped: number }
    >();
    try {
      for (let i = 0; i < MUTATIONS; i++) {
        const file = files[i % files.length];
        const { bytes } = damaged(file.bytes, random);
        const fault = await readDamaged(file, bytes, scratch);
        const count = found.get(file.kind) ??
          { runs: 0, lost: 0, untyped: 0 };
        count.runs++;
        if (fault?.startsWith("untyped")) count.untyped++;
        else if (fault !== undefined) count.lost++;
        found.set(file.kind, count);
      }
    } finally {
      await Deno.remove(scratch, { recursive: true });
    }
    return Object.entries(KINDS).flatMap(([kind, words]): StudyRow[] => {
      const { runs, lost, untyped } = found.get(kind)!;
      const row = (measure: string, value: number): StudyRow => ({
        case: words,
        measure,
        value,
        as: "number",
      });
      return [
        row("mutations", runs),
        { ...row("lost", lost), atMost: 0 },
        { ...row("untyped errors", untyped), atMost: 0 },
      ];
    });
  },
};
