/**
 * A page in Chromium, for tests: what it says on the console, what it asks of
 * the network, how it looks, and what an accessibility checker finds.
 *
 * @module
 */
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";

const PLACES = [
  Deno.env.get("CHROMIUM_PATH"),
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
];

/** Path of the browser, if one is installed. */
export const chromiumPath: string | undefined = PLACES.find((path) => {
  try {
    return path !== undefined && Deno.statSync(path).isFile;
  } catch {
    return false;
  }
});

/** How a page is opened. */
export interface PageSettings {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly media?: "screen" | "print";
}

/** One finding of the accessibility checker. */
export interface Finding {
  readonly id: string;
  readonly impact: string;
  readonly help: string;
  readonly where: readonly string[];
}

/** An open page and what was noticed on it. */
export interface OpenPage {
  readonly page: Page;
  /** Everything on the console, errors of the page, dialogs. */
  readonly complaints: string[];
  /** Addresses asked for, but the page's own and `data:`. */
  readonly requests: string[];
  /** Saves a picture of the whole page. */
  picture(path: string): Promise<void>;
  /** What axe-core finds that is serious or critical. */
  seriousFindings(): Promise<Finding[]>;
}

/** Opens pages in one browser, with a profile of its own. */
export class TestBrowser implements AsyncDisposable {
  readonly #browser: Browser;
  readonly #folder: string;

  private constructor(browser: Browser, folder: string) {
    this.#browser = browser;
    this.#folder = folder;
  }

  /** Starts the browser. */
  static async start(): Promise<TestBrowser> {
    const { chromium } = await import("playwright-core");
    const folder = await Deno.makeTempDir({ prefix: "page-" });
    const browser = await chromium.launch({
      executablePath: chromiumPath,
      headless: true,
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
      ],
    });
    return new TestBrowser(browser, folder);
  }

  /** Opens HTML from a file, as a reader would. */
  async open(html: string, settings: PageSettings = {}): Promise<OpenPage> {
    const file = join(this.#folder, `${crypto.randomUUID()}.html`);
    await Deno.writeTextFile(file, html);
    return await this.openFile(file, settings);
  }

  /** Opens a file. */
  async openFile(file: string, settings: PageSettings = {}): Promise<OpenPage> {
    const { width = 1100, height = 800, dark = false, media } = settings;
    const page = await this.#browser.newPage({
      viewport: { width, height },
      colorScheme: dark ? "dark" : "light",
      bypassCSP: false,
    });
    const address = pathToFileURL(file).href;
    const complaints: string[] = [];
    const requests: string[] = [];
    page.on("console", (message) => complaints.push(message.text()));
    page.on("pageerror", (error) => complaints.push(String(error)));
    page.on("dialog", (dialog) => {
      complaints.push(`dialog: ${dialog.message()}`);
      dialog.dismiss().catch(() => {});
    });
    page.on("request", (request) => {
      const url = request.url();
      if (url !== address && !url.startsWith("data:")) requests.push(url);
    });
    if (media !== undefined) await page.emulateMedia({ media });
    await page.goto(address, { waitUntil: "load" });
    return {
      page,
      complaints,
      requests,
      picture: async (path) => {
        await page.screenshot({ path, fullPage: true });
      },
      seriousFindings: () => seriousFindings(page),
    };
  }

  /** Ends the browser and removes its files. */
  async [Symbol.asyncDispose](): Promise<void> {
    await this.#browser.close();
    await Deno.remove(this.#folder, { recursive: true });
  }
}

interface AxeResults {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string;
    readonly help: string;
    readonly nodes: readonly { readonly target: readonly string[] }[];
  }[];
}

async function seriousFindings(page: Page): Promise<Finding[]> {
  const { source } = createRequire(import.meta.url)("axe-core") as {
    source: string;
  };
  // The page forbids scripts; the checker comes in by the debugger instead.
  const debug = await page.context().newCDPSession(page);
  const run = async (expression: string): Promise<unknown> => {
    const { result, exceptionDetails } = await debug.send("Runtime.evaluate", {
      expression,
      awaitPromise: true,
      returnByValue: true,
    });
    if (exceptionDetails !== undefined) {
      throw new Error(exceptionDetails.exception?.description);
    }
    return result.value;
  };
  await run(`${source};0`);
  const { violations } = await run(
    "axe.run(document, { resultTypes: ['violations'] })",
  ) as AxeResults;
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, impact, help, nodes }) => ({
      id,
      impact,
      help,
      where: nodes.map((node) => node.target.join(" ")),
    }));
}
