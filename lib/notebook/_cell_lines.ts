/**
 * Lines of a cell out of what Deno's own kernel says about lines.
 *
 * That kernel prints a cell anew before it runs it and counts the lines of the
 * print. `deno transpile` prints the same text and maps it back.
 *
 * @module
 */
import { join } from "node:path";
import { SourceMap } from "node:module";
import { makePrivateFolder } from "../files/private_folder.ts";

/** Frames of the cell itself; the last one is the cell's own line. */
const FRAME = /^(\s*at (?:async )?)<anonymous>:(\d+):(\d+)$/;

/** How far Deno's kernel pushes the first line: `"use strict"; void 0;`. */
const FIRST_LINE_OFFSET = 21;

const MAP = /\/\/# sourceMappingURL=data:application\/json;base64,([\w+/=]+)/;

async function sourceMapOf(source: string): Promise<SourceMap | undefined> {
  const folder = await makePrivateFolder("cell");
  try {
    await Deno.writeTextFile(join(folder, "cell.ts"), source);
    // Else imports of types alone would be left out, and lines move up.
    await Deno.writeTextFile(
      join(folder, "deno.json"),
      '{"compilerOptions":{"verbatimModuleSyntax":true}}',
    );
    const { stdout } = await new Deno.Command(Deno.execPath(), {
      args: ["transpile", "--quiet", "--source-map", "inline", "cell.ts"],
      cwd: folder,
      stdout: "piped",
      stderr: "null",
    }).output();
    const found = MAP.exec(new TextDecoder().decode(stdout));
    return found === null
      ? undefined
      : new SourceMap(JSON.parse(atob(found[1])));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** A trace in terms of the cell's own lines. */
export interface PlacedTrace {
  readonly traceback: readonly string[];
  /** The line of the cell that led to the failure, from 1, if it is known. */
  readonly line?: number;
}

/**
 * Finds the cell's line in a trace, and states it there.
 *
 * Functions of earlier cells carry no name of their cell in that kernel's
 * traces; their frames are left as they are.
 */
export async function placeTrace(
  traceback: readonly string[],
  source: string,
  cell: number,
): Promise<PlacedTrace> {
  const at = traceback.findLastIndex((line) => FRAME.test(line));
  if (at < 0) return { traceback };
  const [, start, line, column] = FRAME.exec(traceback[at])!;
  const shift = line === "1" ? FIRST_LINE_OFFSET : 0;
  const map = await sourceMapOf(source).catch(() => undefined);
  const entry = map?.findEntry(
    Number(line) - 1,
    Math.max(0, Number(column) - 1 - shift),
  );
  if (entry === undefined || !("originalLine" in entry)) return { traceback };
  const own = Number(entry.originalLine) + 1;
  return {
    traceback: traceback.with(at, `${start}cell ${cell}, line ${own}`),
    line: own,
  };
}
