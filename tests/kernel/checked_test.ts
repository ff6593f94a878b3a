import { deepEqual, equal, match } from "node:assert/strict";
import type { KernelOutput } from "sagbook/protocol/kernel_output.ts";
import { Session, textOf } from "./_session.ts";

/** What a cell tells on stderr, but for the wait that a slow machine makes. */
const told = (outputs: readonly KernelOutput[]) =>
  textOf(outputs, "stderr").replaceAll("Waiting for the type checker …\n", "");

Deno.test("Kernel() refuses inches where millimetres belong before the cell does anything, in words", async () => {
  await using session = await Session.start({ check: true });
  await session.run(
    `import { inches, millimetres, type Millimetres } from "sagbook/units/length.ts";
     const double = (sag: Millimetres) => millimetres(2 * sag);`,
  );
  const { error, printed } = await session.run(
    "console.log('side effect');\nconst sag = inches(0.0237);\n  double(sag)",
  );
  equal(printed, "");
  equal(error?.ename, "TypeCheckError");
  equal(
    error?.evalue,
    "cell 2, line 3, column 10: This place asks for millimetres but was given inches: inchesToMillimetres(…) converts it.",
  );
  deepEqual(error?.traceback.slice(0, 4), [
    "cell 2, line 3, column 10 (TS2345)",
    "  3 |   double(sag)",
    "    |          ~~~",
    "This place asks for millimetres but was given inches: inchesToMillimetres(…) converts it.",
  ]);
  equal(error?.traceback.at(-1), "Nothing in this cell was run.");
  equal((await session.run("typeof globalThis.sag")).status, "error");
});

Deno.test("Kernel() runs names declared anew, of every kind, with the new type", async () => {
  await using session = await Session.start({ check: true });
  const first =
    "const x = 1; function f(): number { return 1 } class C { a = 1 } type T = number; enum E { A = 4 } import { basename as j } from 'node:path'; let l = 1;";
  const second =
    "const x = 't'; function f(): string { return 's' } class C { b = 'b' } type T = string; enum E { B = 5 } import { sep as j } from 'node:path'; let l = 'l';";
  for (const code of [first, second, first, second]) {
    const { status, error } = await session.run(code);
    equal(status, "ok", `${error?.evalue}`);
  }
  const { value, error } = await session.run(
    "const t: T = 'x'; [x.trim(), f().trim(), new C().b.trim(), E.B, j.length, l.trim()]",
  );
  equal(value, '[ "t", "s", "b", 5, 1, "l" ]', `${error?.evalue}`);
  const old = await session.run("x.toFixed(1)");
  match(old.error!.evalue, /toFixed/);
});

Deno.test("Kernel() knows only the names that got a value in a failed cell", async () => {
  await using session = await Session.start({ check: true });
  await session.run("const a = 1; throw new Error(); const b = 2;");
  equal((await session.run("a")).value, "1");
  match((await session.run("b")).error!.evalue, /Cannot find name 'b'/);
});

Deno.test("Kernel() runs a cell unchecked where it asks so, and says so", async () => {
  await using session = await Session.start({ check: true });
  const { outputs, value } = await session.run(
    "// @ts-nocheck\nconst x: string = 5;\nx",
  );
  equal(value, "5");
  equal(
    told(outputs),
    "This cell is not type-checked (// @ts-nocheck).\n",
  );
  equal((await session.run("const y: string = 5;")).status, "error");
});

Deno.test("Kernel() started with --no-check says so once", async () => {
  await using session = await Session.start({ quiet: false });
  const first = await session.run("const x: string = 5;");
  equal(first.status, "ok");
  equal(
    textOf(first.outputs, "stderr"),
    "Cells are not type-checked (--no-check).\n",
  );
  equal(textOf((await session.run("x")).outputs, "stderr"), "");
});

Deno.test("Kernel() lets a notebook anywhere import the package by its bare name, with its own names beside", async () => {
  await using session = await Session.start({ check: true });
  await Deno.writeTextFile(
    `${session.folder}/own.ts`,
    "export const ring: number = 60;",
  );
  const { value, error } = await session.run(
    "import { millimetres } from 'sagbook/units/length.ts'; import { ring } from './own.ts'; [millimetres(ring), import.meta.dirname]",
  );
  equal(value, `[ 60, ${JSON.stringify(session.folder)} ]`, `${error?.evalue}`);
  const { value: cwd } = await session.run("Deno.cwd()");
  equal(cwd, JSON.stringify(await Deno.realPath(session.folder)));
});

Deno.test("Kernel() adds the names of the user's own deno.json", async () => {
  const folder = await Deno.makeTempDir();
  await Deno.mkdir(`${folder}/deep`);
  await Deno.writeTextFile(
    `${folder}/deno.jsonc`,
    '{ // a comment\n "imports": { "bench": "./bench.ts" } }',
  );
  await Deno.writeTextFile(`${folder}/bench.ts`, "export const ring = 60;");
  {
    await using session = await Session.start({
      check: true,
      folder: `${folder}/deep`,
    });
    const { value, error } = await session.run(
      "import { ring } from 'bench'; import { inches } from 'sagbook/units/length.ts'; ring + inches(1)",
    );
    equal(value, "61", `${error?.evalue}`);
  }
  await Deno.remove(folder, { recursive: true });
});

Deno.test("Kernel() keeps two kernels apart", async () => {
  const [a, b] = await Promise.all([Session.start(), Session.start()]);
  await Promise.all([a.run("const x = 'a'"), b.run("const x = 'b'")]);
  deepEqual(
    (await Promise.all([a.run("x"), b.run("x")])).map(({ value }) => value),
    ['"a"', '"b"'],
  );
  await a[Symbol.asyncDispose]();
  equal((await b.run("x")).value, '"b"');
  await b[Symbol.asyncDispose]();
});

Deno.test("Kernel() says that an imported file has changed, once for each change", async () => {
  await using session = await Session.start({ check: true });
  const file = `${session.folder}/own.ts`;
  const cell = "import { ring } from './own.ts'; ring";
  const said = async () => told((await session.run(cell)).outputs);
  await Deno.writeTextFile(file, "export const ring = 60;");
  equal(await said(), "");
  equal(await said(), "");
  await Deno.writeTextFile(file, "export const ring = 61;");
  await Deno.utime(file, new Date(), new Date(Date.now() + 5_000));
  equal(
    await said(),
    `${file} has changed since it was first imported: the kernel keeps the old text until it is restarted.\n`,
  );
  equal(await said(), "");
  equal((await session.run(cell)).value, "60");
});

Deno.test("Kernel() says that a name of an earlier cell is a constant, not an import", async () => {
  await using session = await Session.start({ check: true });
  await session.run("const radius = 60;");
  const { error } = await session.run("\n  radius = 61;");
  match(
    error!.evalue,
    /line 2, column 3: Cannot assign to 'radius', which an earlier cell declares as a constant/,
  );
});
