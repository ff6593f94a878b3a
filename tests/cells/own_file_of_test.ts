import { equal } from "node:assert/strict";
import { ownFileOf } from "sagbook/cells/own_file_of.ts";

Deno.test("ownFileOf() finds files and text of the cell's own in every place where a checker looks", () => {
  const cells = [
    ['import "./a.ts";', "./a.ts"],
    ['import { x } from "/home/a.ts";', "/home/a.ts"],
    ['import type { X } from "../a.ts";', "../a.ts"],
    ['import j from "/a.json" with { type: "json" };', "/a.json"],
    ['export * from "file:///a.ts";', "file:///a.ts"],
    ['import a = require("./a.ts");', "./a.ts"],
    ['const a = require("./a.cjs");', "./a.cjs"],
    ['await import("./a.ts");', "./a.ts"],
    ["await import(`./a.ts`);", "./a.ts"],
    ['type T = typeof import("/a.ts");', "/a.ts"],
    ['type T = import("/a.ts").T;', "/a.ts"],
    ['declare module "/a.ts" { const x: 1; }', "/a.ts"],
    ['/// <reference path="/a.ts" />', "/a.ts"],
    ['/// <reference types="/a.d.ts" />', "/a.d.ts"],
    ['// @deno-types="/a.d.ts"\nimport "npm:zod";', "/a.d.ts"],
    ["/** @jsxImportSource file:///a */", "file:///a"],
    ['/** @type {import("/a.ts").T} */', "/a.ts"],
    ['import "data:text/javascript,1";', "data:text/javascript,1"],
    ['import "blob:x";', "blob:x"],
    ['import "sagbook/../../a.ts";', "sagbook/../../a.ts"],
    ['import " /a.ts";', " /a.ts"],
    // What hides it from a reader that does not parse.
    ['const r = /`/; await import("/a.ts"); const s = /`/;', "/a.ts"],
    ['`${await import("/a.ts")}`;', "/a.ts"],
    ['import\n"/a.ts"', "/a.ts"],
  ];
  for (const [source, name] of cells) equal(ownFileOf(source), name, source);
});

Deno.test("ownFileOf() passes packages, entries of the import map, and paths that no module is taken from", () => {
  const cells = [
    'import { radiusFromSag } from "sagbook";',
    'import { millimetres } from "sagbook/units/length.ts";',
    'import * as Plot from "npm:@observablehq/plot@0.6.17";',
    'import { plot } from "@observablehq/plot"; import fs from "node:fs";',
    'import "https://example.org/a.ts";',
    'const folder = "../data/disc"; Deno.readTextFileSync("./a.csv");',
    "// a comment about ./a.ts and ../b",
    "const name = './a.ts'; await import(name);",
    "",
    "const broken = (",
  ];
  for (const source of cells) equal(ownFileOf(source), undefined, source);
});
