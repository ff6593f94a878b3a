/**
 * What a check of a cell would read beside the packages it names.
 *
 * @module
 */
import ts from "typescript";

/** Comments by which a cell names a module, to a checker if to nobody else. */
const COMMENT =
  /(?:@deno-types|@ts-types|@ts-self-types|@jsx\w*)\s*=?\s*["']?([^\s"'*]+)|\bimport\s*\(\s*["'`]([^"'`]*)/g;

/** Names that mean a package, or an entry of the project's import map. */
const PACKAGE = /^(?:npm:|jsr:|node:|https?:|@?[\w-][\w./@~-]*$)/i;

/**
 * Finds a module that a cell takes from a file or from text of its own.
 *
 * A type checker reads the files that a cell names with all the rights of who
 * runs it, and its complaints may quote them: a cell that is not trusted is not
 * to be checked with such names in it, whether in imports, in types
 * (`typeof import("…")`), in references or in comments for the checker.
 *
 * @param source Text of the cell.
 * @returns The first name of a relative or absolute path or of an address such
 * as `file:` or `data:`; undefined if there is none. What cannot be read at a
 * glance, such as a name that is put together, is not looked for by a checker
 * either.
 *
 * @example
 * ```ts
 * import { ownFileOf } from "sagbook/cells/own_file_of.ts";
 * import { equal } from "node:assert/strict";
 *
 * equal(ownFileOf('import { ring } from "./rings.ts";'), "./rings.ts");
 * equal(ownFileOf('import { radiusFromSag } from "sagbook";'), undefined);
 * ```
 */
export function ownFileOf(source: string): string | undefined {
  const tree = ts.createSourceFile(
    "cell.tsx",
    source,
    ts.ScriptTarget.Latest,
    false,
    ts.ScriptKind.TS,
  );
  const [reference] = tree.referencedFiles;
  if (reference !== undefined) return reference.fileName;
  const names = tree.typeReferenceDirectives.map(({ fileName }) => fileName);
  for (const [, name, type] of source.matchAll(COMMENT)) {
    names.push(name ?? type);
  }
  const visit = (node: ts.Node): void => {
    const name = moduleNameOf(node);
    if (name !== undefined) names.push(name);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return names.find((name) =>
    !PACKAGE.test(name.trim()) || name.split(/[\\/]/).includes("..")
  );
}

/** The module that a part of the code names, where it names one. */
function moduleNameOf(node: ts.Node): string | undefined {
  const place = ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
    ? node.moduleSpecifier
    : ts.isExternalModuleReference(node)
    ? node.expression
    : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
    ? node.argument.literal
    : ts.isCallExpression(node) && isLoading(node.expression)
    ? node.arguments[0]
    : ts.isModuleDeclaration(node)
    ? node.name
    : undefined;
  return place && ts.isStringLiteralLike(place) ? place.text : undefined;
}

function isLoading(callee: ts.Node): boolean {
  return callee.kind === ts.SyntaxKind.ImportKeyword ||
    ts.isIdentifier(callee) && callee.text === "require";
}
