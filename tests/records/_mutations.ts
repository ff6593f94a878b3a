/** Damage of the kinds that befall a file between a bench and a reader. */
import type { Random } from "sagbook/numerics/random.ts";
import { singleByte, utf16 } from "./_encoded.ts";

type Damage = (bytes: Uint8Array, random: Random) => Uint8Array;

const below = (random: Random, n: number): number =>
  Math.min(n - 1, Math.floor(random.uniform() * n));
const pick = <T>(random: Random, list: readonly T[]): T =>
  list[below(random, list.length)];
const bytesOf = (text: string) => new TextEncoder().encode(text);
/** A damage of the text; the bytes stay valid UTF-8. */
const ofText =
  (damage: (text: string, random: Random) => string): Damage =>
  (bytes, random) => bytesOf(damage(new TextDecoder().decode(bytes), random));
const ofLines = (damage: (lines: string[], random: Random) => void): Damage =>
  ofText((text, random) => {
    const lines = text.split("\n");
    damage(lines, random);
    return lines.join("\n");
  });
/** A damage of one cell of a comma file. */
const ofCell = (damage: (cell: string, random: Random) => string): Damage =>
  ofLines((lines, random) => {
    const at = below(random, lines.length);
    const cells = lines[at].split(",");
    const cell = below(random, cells.length);
    cells[cell] = damage(cells[cell], random);
    lines[at] = cells.join(",");
  });

const MARKS = [
  ..."\0\t\r\n\"'#;,|=+-@%°µ″½ ",
  ..."\u00a0\u202f\u2212\u200b\u2028\ufeff\ufffd\u001a",
];
const CELLS = [
  ..."n/a #DIV/0! =A1 1,430 1.430 0x10 1e400 -0 mean SD 28.15″ ½ TRUE".split(
    " ",
  ),
  ...["", " ", "0,715", "−0.715", "(0.715)", "0.715 mm", '0.0281"', "01-Feb"],
];

/** Every kind of damage, by its name. */
export const DAMAGE: Readonly<Record<string, Damage>> = {
  "byte flipped": (bytes, random) => {
    const damaged = bytes.slice();
    damaged[below(random, bytes.length)] ^= 1 << below(random, 8);
    return damaged;
  },
  "byte written over": (bytes, random) => {
    const damaged = bytes.slice();
    damaged[below(random, bytes.length)] = below(random, 256);
    return damaged;
  },
  "cut off": (bytes, random) => bytes.slice(0, below(random, bytes.length + 1)),
  "piece lost": (bytes, random) => {
    const at = below(random, bytes.length);
    const rest = bytes.subarray(at + below(random, 60));
    return new Uint8Array([...bytes.subarray(0, at), ...rest]);
  },
  "NULs written": (bytes, random) => {
    const damaged = bytes.slice();
    const at = below(random, bytes.length);
    return damaged.fill(0, at, at + below(random, 80));
  },
  "lines swapped": ofLines((lines, random) => {
    const [a, b] = [below(random, lines.length), below(random, lines.length)];
    [lines[a], lines[b]] = [lines[b], lines[a]];
  }),
  "line twice": ofLines((lines, random) => {
    lines.splice(below(random, lines.length), 0, pick(random, lines));
  }),
  "header again": ofLines((lines, random) => {
    lines.splice(below(random, lines.length), 0, lines[0]);
  }),
  "line taken out": ofLines((lines, random) => {
    lines.splice(below(random, lines.length), 1);
  }),
  "title above": ofLines((lines) => {
    lines.unshift("Sags of an evening, invented,,", "");
  }),
  "summary below": ofLines((lines, random) => {
    const cells = lines[lines.length - 1].split(",");
    cells[0] = pick(random, ["mean", "SD", "", "Average"]);
    lines.push(cells.join(","));
  }),
  "mark typed": ofText((text, random) => {
    const at = below(random, text.length + 1);
    return text.slice(0, at) + pick(random, MARKS) + text.slice(at);
  }),
  "cell changed": ofCell((_, random) => pick(random, CELLS)),
  "cell split": ofCell((cell) => `${cell.slice(0, 2)},${cell.slice(2)}`),
  "cell quoted": ofCell((cell) => `"${cell}"`),
  "quote left open": ofCell((cell) => `"${cell}`),
  "column moved": ofText((text, random) => {
    const turn = below(random, 5);
    return text.split("\n").map((line) => {
      const cells = line.split(",");
      return [...cells.slice(turn), ...cells.slice(0, turn)].join(",");
    }).join("\n");
  }),
  "blank columns": ofText((text) => text.replaceAll("\n", ",,,\n")),
  "decimal comma": ofText((text) =>
    text.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2")
  ),
  "other delimiter": ofText((text, random) =>
    text.replaceAll(",", pick(random, [";", "\t", "|"]))
  ),
  "other line ends": ofText((text, random) =>
    text.replaceAll("\n", pick(random, ["\r\n", "\r", "\r\r\n", "\u2028"]))
  ),
  "mixed line ends": ofText((text, random) =>
    text.replaceAll("\n", () => pick(random, ["\n", "\r\n", "\r"]))
  ),
  "other encoding": (bytes, random) => {
    const text = new TextDecoder().decode(bytes);
    const kind = below(random, 6);
    if (kind > 3) {
      const letters = [...text].map((one) => one < "\u0080" ? one : "°");
      return singleByte(
        letters.join(""),
        kind === 4 ? "windows-1252" : "macintosh",
      );
    }
    return utf16(text, kind & 1 ? "little" : "big", (kind & 2) > 0);
  },
};

/** Damages bytes one to three times. */
export function damaged(
  bytes: Uint8Array,
  random: Random,
): { readonly bytes: Uint8Array; readonly kinds: readonly string[] } {
  const names = Object.keys(DAMAGE);
  const kinds: string[] = [];
  let found = bytes;
  for (let left = 1 + below(random, 3); left > 0 && found.length > 0; left--) {
    const kind = pick(random, names);
    kinds.push(kind);
    found = DAMAGE[kind](found, random);
  }
  return { bytes: found, kinds };
}
