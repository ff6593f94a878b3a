import ts from "typescript";

/** Parses text as a module, in which `await` is a keyword everywhere. */
export function parseModule(source: string): ts.SourceFile {
  return ts.createSourceFile(
    "cell.ts",
    source,
    {
      languageVersion: ts.ScriptTarget.ESNext,
      impliedNodeFormat: ts.ModuleKind.ESNext,
      setExternalModuleIndicator: (file) => {
        (file as { externalModuleIndicator?: unknown })
          .externalModuleIndicator = true;
      },
    },
    /* setParentNodes */ true,
    ts.ScriptKind.TS,
  );
}
