import ts from "typescript";
import type { TextEdits } from "./_text_edits.ts";
import { boundNames, declarationKind } from "./_declared_names.ts";

/**
 * Edits every statement of a cell; gives the text that must run first.
 * The edited text is still TypeScript.
 */
export function editStatements(tree: ts.SourceFile, edits: TextEdits): string {
  const first: string[] = [];
  const last = tree.statements.at(-1);
  for (const statement of tree.statements) {
    editNested(statement, tree, edits);
    dropExport(statement, tree, edits);
    if (ts.isVariableStatement(statement)) {
      editVariables(statement, tree, edits, first);
    } else if (ts.isImportDeclaration(statement)) {
      editImport(statement, tree, edits);
    } else if (ts.isFunctionDeclaration(statement)) {
      if (statement.name && statement.body && !isAmbient(statement)) {
        first.push(`__cell.keep({${statement.name.text}});`);
      }
    } else if (
      ts.isClassDeclaration(statement) || ts.isEnumDeclaration(statement) ||
      (ts.isModuleDeclaration(statement) && ts.isIdentifier(statement.name))
    ) {
      const { name } = statement;
      if (name && !isAmbient(statement)) {
        const safe = ts.isModuleDeclaration(statement)
          ? `{${name.text}:typeof ${name.text}==="undefined"?void 0:${name.text}}`
          : `{${name.text}}`;
        edits.insert(statement.end, `;__cell.keep(${safe});`);
      }
    } else if (ts.isExpressionStatement(statement) && statement === last) {
      const { expression } = statement;
      edits.insert(expression.getStart(tree), "return (");
      edits.insert(expression.end, ")");
    }
  }
  return first.join("");
}

function isAmbient(statement: ts.Statement): boolean {
  return ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement) ?? []).some((modifier) =>
      modifier.kind === ts.SyntaxKind.DeclareKeyword
    );
}

function editVariables(
  statement: ts.VariableStatement,
  tree: ts.SourceFile,
  edits: TextEdits,
  first: string[],
): void {
  if (isAmbient(statement)) return;
  const list = statement.declarationList;
  const kind = declarationKind(list);
  if (kind === "using") return;
  const names = list.declarations.flatMap(({ name }) => boundNames(name));
  if (kind === "const") {
    edits.insert(statement.end, `;__cell.keep({${names.join()}});`);
    return;
  }
  first.push(`__cell.declare(${JSON.stringify(names)});`);
  const keyword = list.getStart(tree);
  edits.replace(keyword, keyword + 3, ";  ");
  for (const one of list.declarations) {
    const { name, initializer, type, exclamationToken } = one;
    if (!ts.isIdentifier(name)) {
      edits.insert(name.getStart(tree), "(");
      edits.insert(one.end, ")");
    }
    const typed = exclamationToken ? exclamationToken.getStart(tree) : name.end;
    if (type) edits.blank(typed, type.end);
    if (!initializer && kind === "let") edits.insert(one.end, "=void 0");
  }
  edits.insert(
    statement.end,
    `;__cell.mark(${names.map((name) => JSON.stringify(name)).join()});`,
  );
}

function editImport(
  statement: ts.ImportDeclaration,
  tree: ts.SourceFile,
  edits: TextEdits,
): void {
  const { importClause: clause, moduleSpecifier, attributes } = statement;
  const start = statement.getStart(tree);
  const bindings = clause?.namedBindings;
  const values = bindings && ts.isNamedImports(bindings)
    ? bindings.elements.filter(({ isTypeOnly }) => !isTypeOnly)
    : [];
  const nothing = clause && !clause.name &&
    !(bindings && ts.isNamespaceImport(bindings)) && values.length === 0 &&
    bindings !== undefined && (bindings as ts.NamedImports).elements.length > 0;
  if (clause?.isTypeOnly || nothing) {
    edits.blank(start, statement.end);
    return;
  }
  const options = attributes
    ? `,{with:{${attributes.elements.map((e) => e.getText(tree)).join()}}}`
    : "";
  const load = `await __cell.load(${moduleSpecifier.getText(tree)}${options})`;
  const names: string[] = [];
  const picked: string[] = [];
  const pick = (from: string, to: string) => {
    picked.push(`${JSON.stringify(from)}:${to}`);
    names.push(to);
  };
  let code = `${load};`;
  if (bindings && ts.isNamespaceImport(bindings)) {
    code = `const ${bindings.name.text}=${load};`;
    names.push(bindings.name.text);
    if (clause.name) {
      code += `const ${clause.name.text}=${bindings.name.text}.default;`;
      names.push(clause.name.text);
    }
  } else if (clause) {
    if (clause.name) pick("default", clause.name.text);
    for (const { propertyName, name } of values) {
      pick((propertyName ?? name).text, name.text);
    }
    code = `const {${picked.join()}}=${load};`;
  }
  const breaks = statement.getText(tree).replace(/[^\r\n]/g, "");
  const keep = names.length > 0 ? `__cell.keep({${names.join()}});` : "";
  edits.replace(start, statement.end, `${code}${keep}${breaks}`);
}

function dropExport(
  statement: ts.Statement,
  tree: ts.SourceFile,
  edits: TextEdits,
): void {
  if (ts.isExportDeclaration(statement)) {
    const { moduleSpecifier, isTypeOnly } = statement;
    if (!moduleSpecifier || isTypeOnly) {
      edits.blank(statement.getStart(tree), statement.end);
    } else {
      const breaks = statement.getText(tree).replace(/[^\r\n]/g, "");
      edits.replace(
        statement.getStart(tree),
        statement.end,
        `await __cell.load(${moduleSpecifier.getText(tree)});${breaks}`,
      );
    }
  } else if (ts.isExportAssignment(statement)) {
    const start = statement.getStart(tree);
    edits.replace(start, statement.expression.getStart(tree), "void (");
    edits.insert(statement.expression.end, ")");
  } else if (ts.canHaveModifiers(statement)) {
    for (const modifier of ts.getModifiers(statement) ?? []) {
      const anonymous = !(statement as { name?: unknown }).name &&
        !ts.isVariableStatement(statement);
      if (modifier.kind === ts.SyntaxKind.ExportKeyword) {
        edits.replace(
          modifier.getStart(tree),
          modifier.end,
          anonymous ? "void (" : "      ",
        );
        if (anonymous) edits.insert(statement.end, ")");
      } else if (modifier.kind === ts.SyntaxKind.DefaultKeyword) {
        edits.blank(modifier.getStart(tree), modifier.end);
      }
    }
  }
}

/** Edits what may stand at any depth: `await`, `import()`, `import.meta`. */
function editNested(
  node: ts.Node,
  tree: ts.SourceFile,
  edits: TextEdits,
): void {
  if (ts.isAwaitExpression(node)) {
    edits.insert(node.expression.getStart(tree), "__cell.wait(");
    editNested(node.expression, tree, edits);
    edits.insert(node.expression.end, ")");
    return;
  }
  if (ts.isForOfStatement(node) && node.awaitModifier) {
    edits.insert(node.expression.getStart(tree), "__cell.each(");
    ts.forEachChild(node, (child) => {
      editNested(child, tree, edits);
      if (child === node.expression) edits.insert(child.end, ")");
    });
    return;
  }
  if (
    ts.isCallExpression(node) &&
    node.expression.kind === ts.SyntaxKind.ImportKeyword
  ) {
    edits.replace(
      node.expression.getStart(tree),
      node.expression.end,
      "__cell.load",
    );
    for (const argument of node.arguments) editNested(argument, tree, edits);
    return;
  }
  if (
    ts.isMetaProperty(node) &&
    node.keywordToken === ts.SyntaxKind.ImportKeyword
  ) {
    edits.replace(node.getStart(tree), node.end, "__cell.meta");
    return;
  }
  ts.forEachChild(node, (child) => editNested(child, tree, edits));
}
