import { deepEqual, ok } from "node:assert/strict";
import { FINISHED_HEADER } from "sagbook/records/finished_pieces.ts";
import { recordSchema } from "sagbook/records/record_schema.ts";
import { TIDY_COLUMNS } from "sagbook/records/tidy_columns.ts";
import { WORK_LOG_HEADER } from "sagbook/records/work_log.ts";
import { sources } from "../architecture/_layers.ts";
import { ROOT } from "../tasks/_run_task.ts";
import { DOCUMENTS, GUIDE, textOf } from "./_documents.ts";
import { codeSpansOf } from "./_markdown.ts";

/** Every key that a schema knows, at any depth. */
function keysOf(schema: unknown): string[] {
  if (typeof schema !== "object" || schema === null) return [];
  const { properties = {} } = schema as { properties?: object };
  const inner = Object.values(schema).flatMap(keysOf);
  const own = Array.isArray(schema) ? [] : Object.keys(properties);
  return [...new Set([...own, ...inner])];
}

Deno.test("your-files.md names every column and every key that the readers know", async () => {
  const page = textOf("notebooks/guide/your-files.md");
  const words = new Set(page.match(/[\w$]+/g));
  deepEqual(
    [...TIDY_COLUMNS, ...WORK_LOG_HEADER, ...FINISHED_HEADER]
      .filter((name) => !words.has(name)),
    [],
  );
  for (const kind of ["piece", "bench"] as const) {
    const keys = keysOf(JSON.parse(await recordSchema(kind)));
    ok(keys.length > 20, kind);
    const missing = keys.filter((name) => !words.has(name));
    deepEqual(missing.map((name) => `${kind}: ${name}`), []);
  }
});

/** The texts of the library in which a message may be written. */
function messages(): string {
  return sources(new URL(`file://${ROOT}lib/`))
    .map(({ text }) => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "")).join(
      "\n",
    ).replace(/\s+/g, " ");
}

Deno.test("when-something-goes-wrong.md quotes nothing that the program does not print", () => {
  const page = textOf("notebooks/guide/when-something-goes-wrong.md");
  const inProse = [...page.matchAll(/\*\*"([^"]+)"\*\*/g)];
  const inTables = [...page.matchAll(/^\| ([^|]+?) +\|/gm)]
    .flatMap(([, cell]) => [...cell.matchAll(/`([^`]+)`/g)]);
  const quoted = [...inProse, ...inTables]
    .map(([, text]) => text.replace(/\s+/g, " "));
  ok(inProse.length >= 6 && inTables.length >= 20, quoted.join(", "));
  const known = messages();
  deepEqual(quoted.filter((text) => !known.includes(text)), []);
});

Deno.test("the documents link to what is there, and README.md leads to every page of the guide", () => {
  for (const path of DOCUMENTS) {
    const folder = new URL(path, `file://${ROOT}`);
    for (const [, link] of textOf(path).matchAll(/\]\((?!https?:)([^)]+)\)/g)) {
      ok(Deno.statSync(new URL(link.replace(/#.*/, ""), folder)).isFile, link);
    }
  }
  const readme = textOf("README.md");
  deepEqual(GUIDE.filter((path) => !readme.includes(`](${path})`)), []);
});

Deno.test("the documents name only files that are there", () => {
  const missing: string[] = [];
  for (const path of ["README.md", "DEVELOPERS.md"]) {
    for (const code of codeSpansOf(textOf(path))) {
      const isPath =
        /^(?:lib|tests|data|notebooks|[a-z]+)\/[\w./-]+\.\w+$/.test(code) &&
        !code.startsWith("my-mirror/");
      if (!isPath) continue;
      const there = [code, `lib/${code}`].some((one) => {
        try {
          return Deno.statSync(ROOT + one).isFile;
        } catch {
          return false;
        }
      });
      if (!there) missing.push(`${path}: ${code}`);
    }
  }
  deepEqual(missing, []);
});

Deno.test("the documents name only functions that the library has", () => {
  const code = sources(new URL(`file://${ROOT}lib/`)).map(({ text }) => text)
    .join("\n");
  const missing = DOCUMENTS.flatMap((path) =>
    codeSpansOf(textOf(path))
      .flatMap((span) => /^([a-z]+[A-Z]\w*)(?:\(…?\))?$/.exec(span)?.[1] ?? [])
      .filter((name) => !new RegExp(`\\b${name}\\b`).test(code))
      .map((name) => `${path}: ${name}`)
  );
  deepEqual(missing, []);
});
