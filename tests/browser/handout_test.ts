import { deepEqual, equal, ok } from "node:assert/strict";
import { join } from "node:path";
import { copyPiece, runTask } from "../tasks/_run_task.ts";
import { testWith } from "./_needs.ts";
import { TestBrowser } from "./_page.ts";

/** Pages of a PDF file. */
function pagesOf(pdf: Uint8Array): number {
  const text = new TextDecoder("latin1").decode(pdf);
  return text.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** A folder whose names are long and whose rings are many. */
async function crowded(count: number): Promise<string> {
  const folder = await copyPiece("inch-200");
  const rings = Array.from({ length: count }, (_, k) => ({
    id: `invented ring number ${k + 1} with a name of its own`,
    ...(k === 1
      ? { feet: "edge", inner_radius: "24 mm", outer_radius: "25 mm" }
      : k === 2
      ? { feet: "bar", span: "1.5 in", ball_radius: "1 mm" }
      : { radius: `${20 + k} mm`, ball_radius: "3 mm" }),
  }));
  const write = (name: string, value: unknown) =>
    Deno.writeTextFile(join(folder, name), JSON.stringify(value));
  await write("bench.json", {
    gauge: {
      unit: "in",
      display_step: "0.00005 in",
      counts_up_on: "concave",
    },
    rings: [...rings, { ...rings[0], id: "far too wide", radius: "200 mm" }],
  });
  await write("piece.json", {
    name: "an invented disc with a name that is longer than any line of a page",
    invented: true,
    form: "convex",
    diameter: "14 in",
    target: { radius: "60 in" },
    unit: "in",
  });
  return folder;
}

testWith(
  "chromium",
  "task handout prints on one side of A4 and of Letter, a card for each ring on a side of its own",
  async () => {
    await using browser = await TestBrowser.start();
    for (
      const [folder, rings] of [
        [await copyPiece("gauge-study"), 3],
        [await copyPiece("inch-200"), 1],
        [await crowded(20), 20],
      ] as const
    ) {
      const made = await runTask("handout", [folder]);
      equal(made.code, 0, made.err);
      for (
        const [name, sides] of [["handout", 1], ["bench-cards", rings]] as const
      ) {
        const file = join(folder, "report", `${name}.html`);
        const open = await browser.openFile(file);
        for (const format of ["A4", "Letter"]) {
          const pdf = await open.page.pdf({ format });
          equal(pagesOf(pdf), sides, `${name} of ${folder} on ${format}`);
        }
        // Nothing is wider than the paper between its margins.
        await open.page.emulateMedia({ media: "print" });
        await open.page.setViewportSize({ width: 720, height: 960 });
        const beyond = await open.page.evaluate(
          "document.documentElement.scrollWidth - document.documentElement.clientWidth",
        );
        equal(beyond, 0, `${name} of ${folder}`);
        await open.page.close();
      }
      await Deno.remove(folder, { recursive: true });
    }
  },
);

testWith(
  "chromium",
  "task handout makes pages that are accessible, whole at 360 px, and load nothing",
  async () => {
    await using browser = await TestBrowser.start();
    const folder = await crowded(4);
    equal((await runTask("handout", [folder])).code, 0);
    for (const name of ["handout", "bench-cards"]) {
      const file = join(folder, "report", `${name}.html`);
      for (const [width, dark] of [[360, false], [1100, true]] as const) {
        const open = await browser.openFile(file, { width, dark });
        deepEqual(await open.seriousFindings(), [], `${name}, ${width} px`);
        deepEqual([open.complaints, open.requests], [[], []]);
        const beyond = await open.page.evaluate(
          "document.documentElement.scrollWidth - document.documentElement.clientWidth",
        );
        equal(beyond, 0, `${name}, ${width} px`);
        const pictures = await open.page.evaluate(
          `[...document.querySelectorAll("svg")].map((svg) => {
            const frame = svg.getBoundingClientRect();
            const scale = frame.width / svg.viewBox.baseVal.width;
            const texts = [...svg.querySelectorAll("text")];
            return {
              named: !!svg.querySelector("title").textContent && svg.querySelector("desc").textContent.length > 40,
              smallest: Math.min(...texts.map((text) => parseFloat(getComputedStyle(text).fontSize) * scale)),
              cut: texts.some((text) => {
                const box = text.getBoundingClientRect();
                return box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom;
              }),
            };
          })`,
        ) as { named: boolean; smallest: number; cut: boolean }[];
        equal(pictures.length, name === "handout" ? 2 : 0);
        for (const { named, smallest, cut } of pictures) {
          ok(named && !cut && smallest >= 12, `${smallest} px`);
        }
        await open.page.close();
      }
    }
    await Deno.remove(folder, { recursive: true });
  },
);
