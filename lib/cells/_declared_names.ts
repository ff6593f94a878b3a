import ts from "typescript";

/** How a list of variables is declared. */
export function declarationKind(
  list: ts.VariableDeclarationList,
): "const" | "let" | "var" | "using" {
  const flags = list.flags & ts.NodeFlags.BlockScoped;
  if (flags === ts.NodeFlags.Const) return "const";
  if (flags === ts.NodeFlags.Let) return "let";
  return flags === ts.NodeFlags.None ? "var" : "using";
}

/** The names that a binding pattern binds. */
export function boundNames(name: ts.BindingName): string[] {
  if (ts.isIdentifier(name)) return [name.text];
  return name.elements.flatMap((element) =>
    ts.isOmittedExpression(element) ? [] : boundNames(element.name)
  );
}

/** The local names of an import. */
export function importedNames(
  statement: ts.ImportDeclaration,
): { readonly name: string; readonly typeOnly: boolean }[] {
  const clause = statement.importClause;
  if (!clause) return [];
  const whole = clause.isTypeOnly;
  const found = [];
  if (clause.name) found.push({ name: clause.name.text, typeOnly: whole });
  const bindings = clause.namedBindings;
  if (bindings && ts.isNamespaceImport(bindings)) {
    found.push({ name: bindings.name.text, typeOnly: whole });
  } else if (bindings) {
    for (const { name, isTypeOnly } of bindings.elements) {
      found.push({ name: name.text, typeOnly: whole || isTypeOnly });
    }
  }
  return found;
}
