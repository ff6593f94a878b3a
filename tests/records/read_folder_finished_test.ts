import { deepEqual, equal, match } from "node:assert/strict";
import { readFolderFinished } from "sagbook/records/read_folder_finished.ts";

async function withFinished<T>(
  text: string,
  use: (path: string) => Promise<T>,
): Promise<T> {
  const path = await Deno.makeTempDir({ prefix: "shop-" });
  try {
    await Deno.writeTextFile(`${path}/finished.csv`, text);
    return await use(path);
  } finally {
    await Deno.remove(path, { recursive: true });
  }
}

Deno.test("readFolderFinished() reads lengths in the unit each names", async () => {
  const text = "piece,ground_radius,focal_length,unit\n" +
    "a,118.11 in,1500 mm,\nb,3000,1500,mm\n";
  const { pieces, lines } = await withFinished(text, readFolderFinished);
  equal(pieces[0].groundRadius.toFixed(3), "2999.994");
  equal(pieces[0].focalLength, 1500);
  equal(pieces[1].groundRadius, 3000);
  deepEqual(lines, { read: 2, used: 2, reported: 0 });
});

Deno.test("readFolderFinished() refuses an f-number and a length without a unit, in words", async () => {
  const text = "piece,ground_radius,focal_length\n" +
    "a,3000 mm,f/5\nb,3000,1500 mm\n";
  const { pieces, problems, lines } = await withFinished(
    text,
    readFolderFinished,
  );
  equal(pieces.length, 0);
  deepEqual(lines, { read: 2, used: 0, reported: 2 });
  equal(problems[0].line, 2);
  equal(problems[0].value, "f/5");
  equal(problems[1].line, 3);
  match(problems.map(({ message }) => message).join("\n"), /unit/);
});

Deno.test("readFolderFinished() gives none without a file, and says why one cannot be read", async () => {
  const path = await Deno.makeTempDir({ prefix: "shop-" });
  try {
    deepEqual(await readFolderFinished(path), {
      pieces: [],
      lines: { read: 0, used: 0, reported: 0 },
      problems: [],
    });
    await Deno.mkdir(`${path}/finished.csv`);
    const { problems } = await readFolderFinished(path);
    equal(problems[0].message, "this is a folder, not a file");
  } finally {
    await Deno.remove(path, { recursive: true });
  }
});
