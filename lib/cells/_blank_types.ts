import { blankSourceFile } from "ts-blank-space";
import ts from "typescript";
import { parseModule } from "./_parse_module.ts";
import { sourceMapAnchors } from "./_source_map_anchors.ts";
import { type PositionMap, TextEdits } from "./_text_edits.ts";

/**
 * Takes the types out of a text so that everything else stays in its place.
 *
 * Statements that are more than types (enum, namespace, a class with parameter
 * properties) are compiled on their own, and mapped by the compiler's own
 * source map.
 */
export function blankTypes(
  source: string,
): { readonly text: string; readonly map: PositionMap } {
  const tree = parseModule(source);
  const refused = new Set<ts.Statement>();
  const blanked = blankSourceFile(tree, (node) => {
    refused.add(topStatement(node as unknown as ts.Node));
  });
  const edits = new TextEdits(blanked);
  for (const statement of refused) {
    const start = statement.getStart(tree);
    const { end } = statement;
    const { text, anchors } = compile(source.slice(start, end));
    edits.replace(start, end, text, anchors);
  }
  return edits.apply();
}

function topStatement(node: ts.Node): ts.Statement {
  let one = node;
  while (one.parent && !ts.isSourceFile(one.parent)) one = one.parent;
  return one as ts.Statement;
}

function compile(source: string) {
  const { outputText, sourceMapText } = ts.transpileModule(source, {
    fileName: "cell.ts",
    compilerOptions: {
      target: ts.ScriptTarget.ESNext,
      module: ts.ModuleKind.ESNext,
      preserveConstEnums: true,
      sourceMap: true,
      newLine: ts.NewLineKind.LineFeed,
    },
  });
  const text = outputText
    .replace(/^\/\/# sourceMappingURL=.*$/m, "")
    .replace(/^export \{\};\s*$/m, "")
    .trimEnd();
  const { mappings } = JSON.parse(sourceMapText!) as { mappings: string };
  const anchors = sourceMapAnchors(mappings, text, source);
  return {
    text,
    anchors: anchors.length > 0
      ? anchors
      : [{ generated: 0, original: 0, copied: false }],
  };
}
