import { equal, match, ok, throws } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { exercise, prose } from "sagbook/display/prose.ts";
import { liveFigure } from "sagbook/live/live_figure.ts";
import { liveScript } from "sagbook/live/live_script.ts";
import type { JsonObject, Notebook } from "sagbook/notebook/document.ts";
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { pageShell } from "sagbook/notebook/page_shell.ts";

async function notebookOf(
  ...shown: readonly {
    [jupyterDisplay](): unknown;
  }[]
): Promise<Notebook> {
  const outputs = await Promise.all(shown.map(async (value) => ({
    output_type: "display_data" as const,
    data: await value[jupyterDisplay]() as JsonObject,
    metadata: {},
  })));
  return {
    metadata: {},
    cells: [{
      cell_type: "code",
      id: "a",
      metadata: {},
      source: "",
      execution_count: 1,
      outputs,
    }],
  };
}

const scriptsOf = (page: string) => page.match(/<script/g)?.length ?? 0;

Deno.test("exportHtml() runs the given script once, by its hash alone, and only with a live figure", async () => {
  const script = await liveScript();
  const two = await notebookOf(
    liveFigure("averaging"),
    liveFigure("ring-size"),
  );
  const page = await exportHtml(two, { liveScript: script });
  equal(scriptsOf(page), 1);
  match(page, /script-src 'sha256-[\w+/]{43}='; require-trusted-types-for/);
  equal(page.match(/ data-live="/g)?.length, 2);
  const without = await exportHtml(await notebookOf(prose("No figure.")), {
    liveScript: script,
  });
  equal(scriptsOf(without), 0);
  ok(!without.includes("script-src"));
});

Deno.test("exportHtml() shows live figures still without a script: picture, title, description and numbers", async () => {
  const figure = liveFigure("averaging");
  const page = await exportHtml(await notebookOf(figure));
  equal(scriptsOf(page), 0);
  ok(!page.includes("data-live"));
  match(page, /<svg[^>]*role="img"[^>]*>.*<title/s);
  for (const [label] of figure.numbers) ok(page.includes(`<dt>${label}</dt>`));
});

Deno.test("exportHtml() takes names and plain settings from a notebook, and nothing else", async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg"><circle r="9"></circle></svg>';
  const strange = (live: unknown) => ({
    [jupyterDisplay]: () => ({
      "image/svg+xml": svg,
      "application/vnd.sagbook.live+json": live,
      "text/html":
        '<div data-live="averaging" data-settings="{}"><script>alert(1)</script></div>',
    }),
  });
  const script = await liveScript();
  const name = 'a" onload="alert(1)';
  for (
    const live of [
      { figure: name },
      { figure: 7 },
      null,
      {
        figure: "averaging",
        settings: { circle: '"><script>alert(1)</script>' },
      },
      {
        figure: "averaging",
        numbers: [["<b>", "<script>alert(1)</script>"], 7],
      },
    ]
  ) {
    const page = await exportHtml(await notebookOf(strange(live)), {
      liveScript: script,
    });
    const own = page.replace(script, "");
    ok(!own.includes("alert(1)</script>"), JSON.stringify(live));
    ok(!own.includes('onload="'), JSON.stringify(live));
    ok(scriptsOf(page) <= 1);
  }
});

Deno.test("exportHtml() folds a worked answer, typesets it, and shows an unfinished fold as typed", async () => {
  const shown = await exportHtml(
    await notebookOf(exercise("Find $R$.", "It is $R = q + b$.\n\n- one")),
  );
  match(
    shown,
    /<details class="sb-fold-text">\s*<summary>Worked answer<\/summary>\s*<p>It is <math/,
  );
  match(shown, /<li>one<\/li>\s*<\/ul>\s*<\/details>/);
  for (
    const text of [
      "<details>\n<summary>a</summary>\n\nnever closed",
      "<details open onclick=alert(1)>\n<summary>a</summary>\n\nb\n\n</details>",
      "<details>\nno summary\n\n</details>",
    ]
  ) {
    const page = await exportHtml(await notebookOf(prose(text)));
    ok(!/<details class="sb-fold-text"/.test(page), text);
    match(page, /&lt;details/);
  }
  const hostile = await exportHtml(
    await notebookOf(
      prose(
        "<details>\n<summary><img src=x onerror=alert(1)></summary>\n\n<script>alert(1)</script>\n\n</details>",
      ),
    ),
  );
  ok(!/<img|<script/.test(hostile.slice(hostile.indexOf("<body>"))));
});

Deno.test("pageShell() refuses a script that would end its own element", () => {
  for (const script of ["'</script>'", "'<!--'", "'</SCRIPT '"]) {
    throws(() => pageShell("", { title: "t", script }), {
      name: "SyntaxError",
      message:
        "Cannot put a script into a page as its text must not hold </script or <!--",
    });
  }
});
