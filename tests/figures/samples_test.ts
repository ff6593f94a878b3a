import { equal, match, ok } from "node:assert/strict";
import { jupyterDisplay } from "sagbook/display/bundle.ts";
import { samples } from "./_samples.ts";

Deno.test("figures: every picture is an image with a title, a description and ids of its own", async () => {
  const owners = new Map<string, string>();
  for (const { name, draw } of samples) {
    const figure = await draw();
    const { svg, title, description } = figure;
    equal((await draw()).svg, svg, `${name}: not the same when drawn again`);
    ok(
      !/NaN|Infinity|undefined|\[object/.test(svg),
      `${name}: a hole in the drawing`,
    );
    const ids = [...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    for (const id of ids) {
      ok(!owners.has(id), `${name}: id ${id} is also in ${owners.get(id)}`);
      owners.set(id, name);
    }
    const [, labels] = /^<svg [^>]*role="img" aria-labelledby="([^"]+)"/.exec(
      svg,
    )!;
    for (const id of labels.split(" ")) ok(ids.includes(id), `${name}: ${id}`);
    ok(title.length > 5 && description.length > 20, name);
    match(description, /\.$/);
    const bundle = figure[jupyterDisplay]();
    equal(bundle["image/svg+xml"], svg);
    equal(bundle["text/plain"], `${title}. ${description}`);
  }
});

Deno.test("figures: every colour is a role, with its light value as an attribute and both in the style", async () => {
  for (const { name, draw } of samples) {
    const { svg } = await draw();
    for (
      const [tag, property, value] of svg.matchAll(
        /<[^>]* (fill|stroke)="([^"]+)"[^>]*>/g,
      )
    ) {
      if (value === "none") continue;
      ok(value.startsWith("#"), `${name}: ${tag}`);
      match(tag, new RegExp(`class="[^"]*\\b${property[0]}-\\w+`), name);
    }
    ok(svg.includes("@media screen and (prefers-color-scheme:dark)"), name);
    ok(!/[\uE000\uE001]/.test(svg), `${name}: a stand-in was left`);
  }
});

Deno.test("figures: text is at least 13 px, which is 9.7 px on a phone 360 px wide", async () => {
  for (const { name, draw } of samples) {
    const { svg, width } = await draw();
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) =>
      Number(size)
    );
    ok(
      Math.min(...sizes) * 360 / width >= 9.7,
      `${name}: ${Math.min(...sizes)}`,
    );
  }
});
