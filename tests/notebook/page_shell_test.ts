import { equal, match, ok, throws } from "node:assert/strict";
import { exportHtml } from "sagbook/notebook/export_html.ts";
import { pageShell } from "sagbook/notebook/page_shell.ts";

Deno.test("pageShell() escapes title, lines and language, and leaves the content as it is", () => {
  const page = pageShell("<p>a <b>b</b></p>", {
    title: "<script>&",
    subtitle: '"x"',
    footer: "<i>",
    language: 'de"',
  });
  match(page, /<title>&lt;script&gt;&amp;<\/title>/);
  match(page, /<main id="content" tabindex="-1">\n<p>a <b>b<\/b><\/p>/);
  match(page, /<p>&quot;x&quot;<\/p>/);
  match(page, /<footer class="sb-foot">&lt;i&gt;<\/footer>/);
  match(page, /<html lang="de&quot;">/);
  ok(!page.includes("<script"));
});

Deno.test("pageShell() is the frame that exportHtml() puts its cells in", async () => {
  const frame = { title: "T", subtitle: "s", footer: "f" };
  equal(
    await exportHtml({ metadata: {}, cells: [] }, frame),
    pageShell("", frame),
  );
});

Deno.test("pageShell() sets a page's own rules after those of every page", () => {
  const page = pageShell("", { title: "T", style: ".own{color:red}" });
  ok(page.indexOf(".own{color:red}") > page.indexOf("@media print"));
});

Deno.test("pageShell() refuses a script that would end early in the page", () => {
  const withScript = (script: string) => pageShell("", { title: "T", script });
  ok(withScript("go();").includes("go();"));
  for (const script of ["a</script>b", "'</SCRIPT '", "x<!--y"]) {
    throws(() => withScript(script), {
      name: "SyntaxError",
      message:
        "Cannot put a script into a page as its text must not hold </script or <!--",
    });
  }
});
