/**
 * A program of its own that turns SVG into PNG: orders in JSON on the standard
 * input, pictures on the standard output, each after its length (4 bytes).
 *
 * It runs apart so that its two packages stay out of the project's lock file,
 * whose packages every newcomer fetches with the first report; what it loads is
 * held against the sums below instead. It may read files and do nothing else.
 *
 * @module
 */
import { createHash } from "node:crypto";

/** What is to be drawn. */
export interface PixelOrder {
  /** Text of an SVG file. */
  readonly svg: string;
  /** Width in pixels; with none, three for each px. */
  readonly width?: number;
}

const RASTERISER = "npm:@resvg/resvg-wasm@2.6.2";
const FACES = "npm:dejavu-fonts-ttf@2.37.3";

/** SHA-256 of what is loaded. */
const SUMS: readonly (readonly [string, string])[] = [
  [
    RASTERISER,
    "10170d02d816f02ec76f9bc095b01d9becf536e7b1e12e5aa616652c84b237a1",
  ],
  [
    `${RASTERISER}/index_bg.wasm`,
    "22bf6e9f9a100d972da0411a69c5ba504367fc1fa87b3b64e3f35e53926d2d70",
  ],
  [
    `${FACES}/ttf/DejaVuSans.ttf`,
    "7da195a74c55bef988d0d48f9508bd5d849425c1770dba5d7bfc6ce9ed848954",
  ],
  [
    `${FACES}/ttf/DejaVuSans-Bold.ttf`,
    "e6476c1b80502924294eed40894c5b18e06c181444ca953e5334262df9c27724",
  ],
];

/** Pixels for each px of a figure, where nobody asks for a width. */
const SCALE = 3;

/** As much of the rasteriser as is used here. */
interface Rasteriser {
  initWasm(code: Uint8Array): Promise<void>;
  Resvg: new (svg: string, options: object) => {
    render(): { asPng(): Uint8Array; free(): void };
    free(): void;
  };
}

async function load(): Promise<[Rasteriser, Uint8Array[]]> {
  // Names that are not written in an import are fetched by this program alone.
  const rasteriser = await import(RASTERISER) as Rasteriser;
  // Asking for one file of a package fetches all of it.
  await import(`${FACES}/package.json`, { with: { type: "json" } });
  const files = await Promise.all(SUMS.map(async ([name, sum]) => {
    const bytes = await Deno.readFile(new URL(import.meta.resolve(name)));
    const found = createHash("sha256").update(bytes).digest("hex");
    if (found !== sum) {
      throw new Error(`${name} is not the file it should be: ${found}`);
    }
    return bytes;
  }));
  await rasteriser.initWasm(files[1]);
  return [rasteriser, files.slice(2)];
}

async function writeAll(bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length;) {
    done += await Deno.stdout.write(bytes.subarray(done));
  }
}

async function main(): Promise<void> {
  const orders: readonly PixelOrder[] = await new Response(
    Deno.stdin.readable,
  ).json();
  const [{ Resvg }, fontBuffers] = await load();
  const face = "DejaVu Sans";
  for (const { svg, width } of orders) {
    const drawing = new Resvg(svg, {
      fitTo: width === undefined
        ? { mode: "zoom", value: SCALE }
        : { mode: "width", value: width },
      font: {
        loadSystemFonts: false,
        fontBuffers,
        defaultFontFamily: face,
        sansSerifFamily: face,
        serifFamily: face,
        monospaceFamily: face,
      },
    });
    const image = drawing.render();
    const png = image.asPng();
    const length = new Uint8Array(4);
    new DataView(length.buffer).setUint32(0, png.length);
    await writeAll(length);
    await writeAll(png);
    image.free();
    drawing.free();
  }
}

if (import.meta.main) await main();
