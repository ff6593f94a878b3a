/**
 * Reading the text of a cell.
 *
 * @module
 */
import ts from "typescript";
import type { CellDiagnostic } from "./cell_diagnostic.ts";
import { findForeignLine } from "./find_foreign_line.ts";
import {
  boundNames,
  declarationKind,
  importedNames,
} from "./_declared_names.ts";
import { parseModule } from "./_parse_module.ts";

/** How a name was declared. */
export type NameKind =
  | "const"
  | "let"
  | "var"
  | "function"
  | "class"
  | "enum"
  | "namespace"
  | "import"
  | "type";

/** A name that a cell declares for the cells after it. */
export interface CellName {
  /** The name itself. */
  readonly name: string;
  /** How it was declared. */
  readonly kind: NameKind;
  /** True if it exists for the checker only and never at run time. */
  readonly typeOnly: boolean;
}

/** A cell that has been read. */
export interface ParsedCell {
  /** The text as it was given. */
  readonly source: string;
  /** Names declared at the top level, each once, in order. */
  readonly names: readonly CellName[];
  /** Names that the cell itself exports already. */
  readonly exported: ReadonlySet<string>;
  /** Modules that it imports at run time, as they are written. */
  readonly imports: readonly string[];
  /** Every identifier that occurs in the text. */
  readonly mentioned: ReadonlySet<string>;
  /** Why it is no TypeScript; empty if it is. */
  readonly problems: readonly CellDiagnostic[];
  /** True if the cell asks to be run unchecked, by `// @ts-nocheck` on top. */
  readonly unchecked: boolean;
}

/**
 * Reads a cell as the body of a module in which `await` may stand anywhere.
 *
 * A line that belongs to another kernel's language (`%%time`, `!ls`) is named
 * as such, since the compiler's words about it help nobody.
 *
 * @param source Text of the cell.
 * @returns Names and problems.
 *
 * @example
 * ```ts
 * import { parseCell } from "sagbook/cells/parse_cell.ts";
 * import { deepEqual, equal } from "node:assert/strict";
 *
 * const { names, problems } = parseCell("const sag = 0.715;\ntype Reading = number;");
 * deepEqual(names.map(({ name, kind }) => [name, kind]), [
 *   ["sag", "const"],
 *   ["Reading", "type"],
 * ]);
 * equal(problems.length, 0);
 * equal(parseCell("const = 5").problems[0].code, 1134);
 * ```
 */
export function parseCell(source: string): ParsedCell {
  const tree = parseModule(source);
  const foreign = findForeignLine(source);
  const { parseDiagnostics } = tree as unknown as {
    parseDiagnostics: readonly ts.DiagnosticWithLocation[];
  };
  const names = new Map<string, CellName>();
  const exported = new Set<string>();
  for (const statement of tree.statements) {
    declare(statement, names, exported);
  }
  return {
    source,
    names: [...names.values()],
    exported,
    imports: importedModules(tree),
    mentioned: mentionedNames(tree),
    problems: foreign ? [foreign] : parseDiagnostics.map((one) => ({
      code: one.code,
      message: ts.flattenDiagnosticMessageText(one.messageText, "\n"),
      start: one.start,
      end: one.start + one.length,
      kind: "syntax",
    })),
    unchecked: isUnchecked(source),
  };
}

/** Adds the names that a statement declares. */
function declare(
  statement: ts.Statement,
  names: Map<string, CellName>,
  exported: Set<string>,
): void {
  const modifiers = ts.canHaveModifiers(statement)
    ? ts.getModifiers(statement) ?? []
    : [];
  const has = (kind: ts.SyntaxKind) => modifiers.some((m) => m.kind === kind);
  const ambient = has(ts.SyntaxKind.DeclareKeyword);
  const add = (name: string, kind: NameKind, typeOnly = false) => {
    const before = names.get(name);
    // A type and a value may share a name; the value is what exists later.
    if (!before || before.typeOnly) {
      names.set(name, { name, kind, typeOnly: typeOnly || ambient });
    }
    if (
      has(ts.SyntaxKind.ExportKeyword) && !has(ts.SyntaxKind.DefaultKeyword)
    ) exported.add(name);
  };
  if (ts.isVariableStatement(statement)) {
    const kind = declarationKind(statement.declarationList);
    if (kind === "using") return; // ends with its own cell
    for (const { name } of statement.declarationList.declarations) {
      for (const bound of boundNames(name)) add(bound, kind);
    }
  } else if (ts.isFunctionDeclaration(statement) && statement.name) {
    add(statement.name.text, "function", !statement.body);
  } else if (ts.isClassDeclaration(statement) && statement.name) {
    add(statement.name.text, "class");
  } else if (ts.isEnumDeclaration(statement)) {
    add(statement.name.text, "enum");
  } else if (
    ts.isModuleDeclaration(statement) && ts.isIdentifier(statement.name)
  ) {
    add(statement.name.text, "namespace", !hasValues(statement));
  } else if (
    ts.isInterfaceDeclaration(statement) ||
    ts.isTypeAliasDeclaration(statement)
  ) {
    add(statement.name.text, "type", true);
  } else if (ts.isImportDeclaration(statement)) {
    for (const { name, typeOnly } of importedNames(statement)) {
      add(name, "import", typeOnly);
    }
  } else if (
    ts.isExportDeclaration(statement) && statement.exportClause &&
    ts.isNamedExports(statement.exportClause)
  ) {
    for (const { name } of statement.exportClause.elements) {
      exported.add(name.text);
    }
  }
}

/** Whether a namespace exists at run time. */
function hasValues(statement: ts.ModuleDeclaration): boolean {
  const { body } = statement;
  if (!body || !ts.isModuleBlock(body)) return body !== undefined;
  return body.statements.some((one) =>
    !ts.isInterfaceDeclaration(one) && !ts.isTypeAliasDeclaration(one)
  );
}

function importedModules(tree: ts.SourceFile): string[] {
  return tree.statements.flatMap((statement) =>
    ts.isImportDeclaration(statement) &&
      !statement.importClause?.isTypeOnly &&
      ts.isStringLiteral(statement.moduleSpecifier)
      ? [statement.moduleSpecifier.text]
      : []
  );
}

function mentionedNames(tree: ts.SourceFile): Set<string> {
  const { identifiers } = tree as unknown as {
    identifiers: ReadonlyMap<string, string>;
  };
  return new Set(identifiers.keys());
}

function isUnchecked(source: string): boolean {
  for (const { pos, end } of ts.getLeadingCommentRanges(source, 0) ?? []) {
    if (/^\/\/\/?\s*@ts-nocheck\b/.test(source.slice(pos, end))) return true;
  }
  return false;
}
