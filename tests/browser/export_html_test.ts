import { deepEqual, equal, ok } from "node:assert/strict";
import {
  type CodeCell,
  exportHtml,
  type JsonObject,
  type Notebook,
  type Output,
  readNotebook,
} from "sagbook/notebook/mod.ts";
import { jupyterDisplay, table } from "sagbook/display/mod.ts";
import { casePath } from "../notebook/_case.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

const code = (source: string, ...outputs: Output[]): CodeCell => ({
  cell_type: "code",
  id: `c${source.length}`,
  metadata: {},
  source,
  execution_count: 1,
  outputs,
});
const shown = (data: JsonObject): Output => ({
  output_type: "display_data",
  data,
  metadata: {},
});
const markdown = (source: string) =>
  ({ cell_type: "markdown", id: "m", metadata: {}, source }) as const;

/** One of everything that a report shows. */
async function fullNotebook(): Promise<Notebook> {
  const row = Object.fromEntries(
    Array.from({ length: 24 }, (_, i) => [`column ${i}`, i * 1000.125]),
  );
  const wide = await table([row], { caption: "Wide" })[jupyterDisplay]();
  return {
    metadata: { language_info: { name: "typescript" } },
    cells: [
      markdown(
        "# Blank 7\n\nR is **2520 mm**; see [the zones](#h-zones).\n\n## Zones\n\n$R = \\frac{r^2 + s^2}{2s} + b$\n\n$$\\sum_{i=1}^n \\sqrt{x_i} = \\left(\\frac{1}{2}\\right) \\cdot aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa$$\n\n| zone | R / mm |\n|---|---:|\n| centre | 2520.4 |\n\n```ts\nconst a = 1;\n```\n\n> note\n",
      ),
      code(
        `const veryLong = "${"x".repeat(200)}";`,
        { output_type: "stream", name: "stdout", text: "y".repeat(300) + "\n" },
        {
          output_type: "stream",
          name: "stderr",
          text: "\x1b[33mcare\x1b[0m\n",
        },
      ),
      code(
        "wide",
        shown(wide as JsonObject),
        shown({
          "image/svg+xml":
            '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 900 100" width="900" height="100"><text y="50">label</text></svg>',
          "text/plain": "Radius by zone",
        }),
        shown({
          "image/png":
            "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
        }),
      ),
      code("fails()", {
        output_type: "error",
        ename: "RangeError",
        evalue: "z".repeat(200),
        traceback: ["at " + "w".repeat(200)],
      }),
    ],
  };
}

testWith(
  "chromium",
  "exportHtml() makes a page without console message, request or serious accessibility finding, light and dark, wide and at 360 px",
  async () => {
    await using browser = await TestBrowser.start();
    for (const layout of ["full", "reader"] as const) {
      const html = await exportHtml(await fullNotebook(), {
        layout,
        subtitle: "An invented club workshop",
        footer: "made by a test",
      });
      for (const width of [1100, 360]) {
        for (const dark of [false, true]) {
          const opened = await browser.open(html, { width, dark });
          const { page, complaints, requests } = opened;
          const label = `${layout}, ${width} px, ${dark ? "dark" : "light"}`;
          await page.evaluate(
            "document.querySelectorAll('details').forEach((d) => d.open = true)",
          );
          const scroll = await page.evaluate(
            "document.documentElement.scrollWidth",
          );
          equal(scroll, width, label);
          deepEqual([label, await opened.seriousFindings()], [label, []]);
          deepEqual([complaints, requests], [[], []], label);
          await page.close();
        }
      }
    }
  },
);

testWith(
  "chromium",
  "exportHtml() prints on A4 and Letter without clipping, code only if asked for",
  async () => {
    await using browser = await TestBrowser.start();
    for (const printCode of [false, true]) {
      const html = await exportHtml(await fullNotebook(), { printCode });
      // Printable width: paper less two margins of 16 mm, at 96 px per inch.
      for (const millimetres of [210 - 32, 215.9 - 32]) {
        const width = Math.floor(millimetres / 25.4 * 96);
        const { page } = await browser.open(html, { width, media: "print" });
        equal(
          await page.evaluate("document.documentElement.scrollWidth"),
          width,
        );
        const clipped = await page.evaluate(`
        Array.from(document.querySelectorAll("main *"))
          .filter((e) => e.closest("details:not([open])") === null || ${printCode})
          .filter((e) => getComputedStyle(e).overflowX !== "visible" && !e.closest("svg, img"))
          .map((e) => e.className || e.tagName)`);
        deepEqual(clipped, []);
        const visible = await page.evaluate(
          `document.querySelector(".sb-fold pre").checkVisibility({ contentVisibilityAuto: true })`,
        );
        equal(visible, printCode);
        await page.close();
      }
    }
  },
);

testWith(
  "chromium",
  "exportHtml() breaks no word of a printed table, parts no number from its unit, and stays on the paper",
  async () => {
    await using browser = await TestBrowser.start();
    const long =
      "every reading of the session is negative, but sag is positive for the declared surface: does the gauge count down?";
    const shownTables = [
      table([{
        "": "suspicious",
        where: "readings.csv, line 20",
        what: long,
        "what to do": long,
      }]),
      table([{
        source: "zeroing, differently from zone to zone",
        "how many": "144",
        "scatter in sag": "0.76\u00a0µm (0.65 to 0.91)",
        "in radius": "3.8\u00a0mm (3.3 to 4.5)",
        "share of the variance": "12\u00a0%",
        "six times, of the tolerance": "76\u00a0%",
        "six times, of one stretch": "38\u00a0%",
        date: "2024-03-02",
      }]),
    ];
    const notebook: Notebook = {
      metadata: { language_info: { name: "typescript" } },
      cells: await Promise.all(
        shownTables.map(async (one, i) =>
          code(
            "x".repeat(i + 1),
            shown(await one[jupyterDisplay]() as JsonObject),
          )
        ),
      ),
    };
    const html = await exportHtml(notebook);
    const { page } = await browser.open(html, { width: 672, media: "print" });
    const broken = await page.evaluate(`
      [...document.querySelectorAll("th, td")].flatMap((cell) => {
        const text = cell.firstChild;
        if (text === null) return [];
        return [...text.data.matchAll(/[^ ]+/g)].filter((word) => {
          const range = document.createRange();
          range.setStart(text, word.index);
          range.setEnd(text, word.index + word[0].length);
          return new Set([...range.getClientRects()].map((r) => Math.round(r.top))).size > 1;
        }).map((word) => word[0]);
      })`);
    deepEqual(broken, []);
    const over = await page.evaluate(`
      Math.max(...[...document.querySelectorAll("table")].map((one) =>
        one.getBoundingClientRect().right - document.querySelector("main").getBoundingClientRect().right))`);
    ok(Number(over) <= 1, `${over}`);
    await page.close();
  },
);

testWith(
  "chromium",
  "exportHtml() clips the second of two figures with equal ids by its own path",
  async () => {
    await using browser = await TestBrowser.start();
    const { notebook } = await readNotebook(casePath("D09-same-ids.ipynb"));
    const { page, complaints } = await browser.open(await exportHtml(notebook));
    const found = await page.evaluate(`(() => {
    const [, second] = document.querySelectorAll("main svg");
    const own = (id) => second.contains(document.getElementById(id));
    const clip = getComputedStyle(second.querySelector("g")).clipPath;
    const [, clipId] = /#([^"]+)/.exec(clip);
    const use = second.querySelector("use");
    return {
      own: own(clipId) && own(use.getAttribute("href").slice(1)) &&
        own(second.getAttribute("aria-labelledby")),
      clipped: document.getElementById(clipId).firstElementChild.getAttribute("width"),
      fill: own(/#([\\w-]+)/.exec(getComputedStyle(second.querySelector("g rect")).fill)[1]),
      stroke: getComputedStyle(second.querySelector("defs path")).stroke,
      ids: Array.from(document.querySelectorAll("[id]"), (e) => e.id),
    };
  })()`) as { ids: string[] };
    const { ids, ...rest } = found;
    deepEqual(rest, {
      own: true,
      clipped: "290",
      fill: true,
      stroke: "rgb(255, 0, 0)",
    });
    equal(new Set(ids).size, ids.length);
    deepEqual(complaints, []);
  },
);

testWith(
  "chromium",
  "exportHtml() keeps SVG elements side by side and their capitals, parsed as HTML",
  async () => {
    await using browser = await TestBrowser.start();
    const fragment = await Deno.readTextFile(
      casePath("E02-svg-fragments.html"),
    );
    const html = await exportHtml({
      metadata: {},
      cells: [code("figure", shown({ "text/html": fragment }))],
    });
    const { page } = await browser.open(html);
    const found = await page.evaluate(`(() => {
    const svg = document.querySelector("main svg");
    const [first, second] = svg.querySelectorAll("circle");
    const after = document.querySelector("p[id$=after]");
    return [
      first.nextElementSibling === second,
      svg.querySelector("div").nextElementSibling?.tagName,
      after.parentElement === svg.parentElement && !svg.contains(after),
      svg.getAttribute("viewBox"),
      !!svg.querySelector("foreignObject"),
      !!svg.querySelector("linearGradient"),
      svg.querySelector("p").namespaceURI,
    ];
  })()`);
    deepEqual(found, [
      true,
      "P",
      true,
      "0 0 20 10",
      true,
      true,
      "http://www.w3.org/1999/xhtml",
    ]);
  },
);

/** Text that tries to run, to load, or to get out of its place. */
const HOSTILE = [
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "</style></title></textarea></pre></details></main><script>alert(1)</script>",
  "<svg onload=alert(1)><script>alert(1)</script><animate onbegin=alert(1) attributeName=x dur=1s>",
  "<svg><style><img src=x onerror=alert(1)></style></svg>",
  '<math><mtext><table><mglyph><style><!--</style><img title="--&gt;&lt;img src=1 onerror=alert(1)&gt;">',
  '<a href="java\tscript:alert(1)">x</a><a href=&#106;avascript:alert(1)>y</a>',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe><object data=http://host.invalid/x></object><embed src=http://host.invalid/y>',
  "<style>@import 'http://host.invalid/a.css';body{display:none;background:url(http://host.invalid/b.png)}</style><link rel=stylesheet href=http://host.invalid/c.css>",
  "<svg><image href=http://host.invalid/d.png /><use href=http://host.invalid/e.svg#f /><foreignObject><img src=http://host.invalid/g.png></foreignObject></svg>",
  '<div style="position:fixed;inset:0;background:u\\rl(http://host.invalid/h.png)">over</div><meta http-equiv=refresh content="0;url=http://host.invalid/i"><base href=http://host.invalid/>',
  "![p](http://host.invalid/j.png) [l](javascript:alert(1)) <http://host.invalid/> $\\href{javascript:alert(1)}{x}$ $\\includegraphics{http://host.invalid/k.png}$ `</code><script>alert(1)</script>`",
  "<form action=http://host.invalid/l><button formaction=javascript:alert(1)>b</button><input autofocus onfocus=alert(1)></form>",
  '<noscript><p title="</noscript><img src=x onerror=alert(1)>">',
  "--><!--><script>alert(1)</script><![CDATA[><script>alert(1)</script>]]>",
];

testWith(
  "chromium",
  "exportHtml() runs and loads nothing from hostile text, wherever it stands",
  async () => {
    await using browser = await TestBrowser.start();
    for (const text of HOSTILE) {
      const types = [
        "text/html",
        "image/svg+xml",
        "text/markdown",
        "text/latex",
        "text/plain",
        "application/json",
      ];
      const cell = code(
        text,
        ...types.map((type) => shown({ [type]: text })),
        shown({ "image/svg+xml": `<svg><g title="${text}">${text}</g></svg>` }),
        shown({ "image/png": text, "text/plain": text }),
        shown({ [text]: text }),
        { output_type: "stream", name: "stderr", text },
        { output_type: "error", ename: text, evalue: text, traceback: [text] },
      );
      const html = await exportHtml({
        metadata: { language_info: { name: text } },
        cells: [
          markdown(
            `# ${text}\n\n${text}\n\n## ${text}\n\n| ${text} |\n|---|\n| ${text} |`,
          ),
          cell,
          { ...markdown(text), cell_type: "raw" },
          { ...markdown("after"), id: "z" },
        ],
      }, { subtitle: text, footer: text, language: text, incomplete: text });
      const { page, complaints, requests } = await browser.open(html);
      await page.waitForTimeout(50);
      deepEqual([complaints, requests], [[], []], text);
      const found = await page.evaluate(`(() => ({
      scripts: document.scripts.length,
      handlers: Array.from(document.querySelectorAll("*")).flatMap((e) =>
        e.getAttributeNames().filter((name) => name.startsWith("on"))),
      links: Array.from(document.querySelectorAll("a")).map((a) => a.getAttribute("href") ?? "#")
        .filter((href) => !/^(https?:|mailto:|#)/.test(href)),
      last: document.querySelector("main").lastElementChild.textContent.trim(),
      isSeen: document.body.checkVisibility() && document.elementFromPoint(60, 30)?.tagName !== "DIV",
      mains: document.querySelectorAll("main").length,
    }))()`);
      deepEqual([text, found], [text, {
        scripts: 0,
        handlers: [],
        links: [],
        last: "after",
        isSeen: true,
        mains: 1,
      }]);
      await page.close();
    }
  },
);

testWith(
  "chromium",
  "exportHtml() shows what was printed and nothing of its control codes",
  async () => {
    await using browser = await TestBrowser.start();
    const { notebook } = await readNotebook(casePath("D11-ansi.ipynb"));
    const { page } = await browser.open(await exportHtml(notebook));
    const text = String(
      await page.evaluate("document.querySelector('main').innerText"),
    );
    ok(text.includes("sag <b>0.000</b> & R → ∞"));
    ok(/\| +<b>edge<\/b> +\|/.test(text));
    ok(/\n100%/.test(text) && !text.includes("50%"));
    equal(await page.evaluate("document.querySelectorAll('main b').length"), 0);
  },
);
