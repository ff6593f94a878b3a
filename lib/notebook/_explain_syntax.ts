/**
 * What is wrong with a cell that is no program, where the kernel does not say.
 *
 * @module
 */

/** A fault in words, and its line in the cell from 1. */
export interface SyntaxFault {
  readonly message: string;
  readonly line: number;
}

/** The cell magic that a cell begins with, as in `%%time`. */
export function cellMagic(source: string): SyntaxFault | undefined {
  const found = /^\s*(%%[A-Za-z]\w*)/.exec(source);
  if (found === null) return undefined;
  const line = source.slice(0, found[0].length).split("\n").length;
  return {
    line,
    message: `\`${
      found[1]
    }\` on line ${line} is a cell magic of another kernel; cell magics are not TypeScript`,
  };
}

/** The first fault that the TypeScript parser finds, if it finds one. */
export async function explainSyntax(
  source: string,
): Promise<SyntaxFault | undefined> {
  const { default: ts } = await import("typescript");
  const { diagnostics = [] } = ts.transpileModule(source, {
    reportDiagnostics: true,
    compilerOptions: {
      target: ts.ScriptTarget.ESNext,
      module: ts.ModuleKind.ESNext,
    },
  });
  const [first] = diagnostics;
  if (first?.start === undefined) return undefined;
  const line = source.slice(0, first.start).split("\n").length;
  const text = source.split("\n")[line - 1].trim();
  const words = ts.flattenDiagnosticMessageText(first.messageText, " ")
    .replace(/\.$/, "");
  return { line, message: `${words}, on line ${line}: ${text}` };
}
