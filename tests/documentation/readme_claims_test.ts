import { deepEqual, ok } from "node:assert/strict";
import { ROOT } from "../tasks/_run_task.ts";
import { openPiece } from "sagbook/narrative/open_piece.ts";
import { sentencesOf } from "./_markdown.ts";
import { PICTURE, WORDS } from "./_readme_picture.ts";
import { CLAIMS, NO_CLAIM } from "./readme_claims.ts";

const readme = Deno.readTextFileSync(`${ROOT}README.md`);

Deno.test("README.md has no sentence without evidence in readme_claims.ts, and no evidence is left over", () => {
  const listed = [...Object.keys(CLAIMS), ...NO_CLAIM];
  const said = sentencesOf(readme);
  deepEqual(
    said.filter((sentence) => !listed.includes(sentence)),
    [],
    "these need a line in tests/documentation/readme_claims.ts",
  );
  deepEqual(
    listed.filter((sentence) => !said.includes(sentence)),
    [],
    "README.md no longer says these",
  );
});

Deno.test("README.md: every test and result that stands behind a sentence is there", () => {
  for (const [sentence, evidence] of Object.entries(CLAIMS)) {
    ok(evidence.length > 0, sentence);
    for (const [file, words] of evidence) {
      const text = Deno.readTextFileSync(ROOT + file).replace(/\s+/g, " ");
      const quoted = file.endsWith("_test.ts") ? `"${words}"` : words;
      ok(
        text.includes(quoted),
        `“${sentence}” rests on ${file}, which lacks ${quoted}`,
      );
    }
  }
});

Deno.test("README.md stays a page: at most 100 lines, its links and picture there", () => {
  ok(readme.trimEnd().split("\n").length <= 100);
  for (const [, path] of readme.matchAll(/\]\((?!https?:)([^)#]+)\)/g)) {
    ok(Deno.statSync(ROOT + path).isFile, path);
  }
});

Deno.test("README.md's picture shows the words that a report says now", async () => {
  ok(readme.includes(`](${PICTURE})`));
  const shown = Deno.readTextFileSync(ROOT + WORDS).trim().split("\n");
  const plain = (text: string) => text.replace(/\s+/g, " ");
  const { answer } = await openPiece(`${ROOT}data/metric-250`);
  deepEqual(
    shown.slice(0, answer.length).map(plain),
    answer.map(plain),
    "run deno task goldens picture, and look at it",
  );
});
