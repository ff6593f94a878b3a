/**
 * Text that tries to run, to load, to lead or to hide, and folders that hold
 * it in every field a user may fill.
 */
import { csvText } from "sagbook/records/csv_text.ts";
import Papa from "papaparse";

/** Twelve strings, by what they try. */
export const HOSTILE: Readonly<Record<string, string>> = {
  script: "<script>alert(1)</script>",
  handler: `"'><img src=x onerror=alert(1)><input autofocus onfocus=alert(1)>`,
  link: '[l](javascript:alert(1)) <a href="java\tscript:alert(1)">x</a>',
  closing:
    "--></script></style></title></textarea></pre></main><script>alert(1)</script>",
  style:
    "<style>@import 'http://host.invalid/a.css';*{background:url(http://host.invalid/b.png)}</style>",
  mathematics:
    "$\\href{javascript:alert(1)}{x}$ $$\\includegraphics{http://host.invalid/k.png}$$ \\htmlData{a=b}{c}",
  markdown:
    "![p](http://host.invalid/j.png) **b** `c` <http://host.invalid/> |t|\n# h\n- [ ] l",
  drawing:
    "<svg onload=alert(1)><animate onbegin=alert(1) attributeName=x dur=1s /><image href=http://host.invalid/d.png /></svg>",
  template:
    "${alert(1)} {{constructor.constructor('alert(1)')()}} <%= 1 %> \u202etxet\u202c \u2066x",
  codes:
    "a\u0007\u001b[31mb\u001b]8;;http://host.invalid\u0007c\u009b2Jd\u007f\u0085e",
  formula: '=HYPERLINK("http://host.invalid","x")+cmd|\' /C calc\'!A0',
  long: `<b>${"x".repeat(20_000)}`,
};

/** Text fields of the JSON files, whatever they hang on. */
const JSON_FIELDS = new Set(["name", "glass", "note", "id", "material"]);
/** Text columns of the CSV files. */
const CSV_FIELDS = new Set([
  ...["session", "grade", "ring", "zeroing", "operator", "note"],
  ...["abrasive", "stroke", "piece", "method", "figuring"],
]);

/** Puts hostile text before a text; distinct texts stay distinct. */
type Taint = (text: string) => string;

function taintJson(value: unknown, taint: Taint, key = ""): unknown {
  if (Array.isArray(value)) {
    return value.map((one) => taintJson(one, taint, key));
  }
  if (typeof value === "object" && value !== null) {
    return Object.fromEntries(
      Object.entries(value).map(([name, one]) => [
        name,
        taintJson(one, taint, name),
      ]),
    );
  }
  return typeof value === "string" && JSON_FIELDS.has(key)
    ? taint(value)
    : value;
}

function taintCsv(text: string, taint: Taint): string {
  const { data } = Papa.parse<string[]>(text.trimEnd(), { delimiter: "," });
  const [headings, ...rows] = data;
  const offset = headings.indexOf("offset");
  const tainted = rows.map((row, i) => [
    ...row.map((cell, at) =>
      CSV_FIELDS.has(headings[at]) ||
        headings[at] === "zone" && (row[offset] ?? "") !== "" &&
          cell !== "flat"
        ? taint(cell)
        : cell
    ),
    taint(`extra ${i}`),
  ]);
  return csvText([[...headings, taint("extra")], ...tainted]);
}

/** The hostile text as a file system lets a folder be called. */
export function folderName(hostile: string): string {
  // deno-lint-ignore no-control-regex
  return hostile.replace(/[/\u0000]/g, "∕").slice(0, 60);
}

/**
 * Copies a folder of data with hostile text in every text field, into a new
 * folder that bears it in its own name.
 */
export async function hostileCopy(
  from: string,
  into: string,
  hostile: string,
): Promise<string> {
  const taint: Taint = (text) => text === "" ? "" : `${hostile} ${text}`;
  const to = `${into}/${folderName(hostile)}`;
  await Deno.mkdir(to, { recursive: true });
  for await (const { name, isFile } of Deno.readDir(from)) {
    if (!isFile || name === "truth.json") continue;
    const text = await Deno.readTextFile(`${from}/${name}`);
    await Deno.writeTextFile(
      `${to}/${name}`,
      name.endsWith(".json")
        ? JSON.stringify(taintJson(JSON.parse(text), taint))
        : taintCsv(text, taint),
    );
  }
  return to;
}
