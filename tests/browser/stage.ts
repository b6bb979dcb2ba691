/** A Chromium for each file of tests, and in it for each test a server whose samples nobody has touched. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { PARTS } from '../../engine/parts/index.ts';
import { readRefit } from '../../engine/refit/index.ts';
import { SAMPLES } from '../../samples/index.ts';
import { ARGUMENTS, browser as findBrowser } from '../../scripts/browser.js';
import { type RunningServer, startServer } from '../../server/index.ts';
import { ROOT } from '../rooms.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WIDE = { width: 1280, height: 900 };
/** What a window can take on after it was opened; any other option needs a window of its own. */
const CHANGEABLE = new Set(['viewport', 'colorScheme']);

export interface Stage {
  /** The server of the test that runs. */
  readonly server: RunningServer;
  /** A window of this test; it is laid aside after the test. Errors of the page and refused requests end up in `faults`. */
  readonly open: (path: string, options?: BrowserContextOptions) => Promise<Page>;
  /** What went wrong unseen; a test takes out what it expected, and fails for what is left. */
  readonly faults: string[];
}

/** To be called once in a file of tests. `prepare` runs before each test, on the server of that test. */
export function setStage(prepare?: (on: Stage) => Promise<void>): Stage {
  const samples = SAMPLES.map(({ file }) => {
    const read = readRefit(readFileSync(join(ROOT, 'samples', file), 'utf8'), Object.keys(PARTS));
    if (!read.ok) throw new Error(read.problem.message);
    return read.value;
  });
  const faults: string[] = [];
  let browser: Browser;
  let folder: string;
  let server: RunningServer;
  const windows = new Windows(() => browser, faults);
  const on: Stage = {
    get server() {
      return server;
    },
    faults,
    open: (path, options) => windows.open(new URL(path, server.address).href, options),
  };

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: findBrowser(), args: [...ARGUMENTS] });
  }, 180_000);
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fettle-browser-'));
    const started = await startServer({
      folder,
      port: 0,
      pageFolder: join(ROOT, 'dist', 'web'),
      version: 'test',
      samples,
      report: (fault) => faults.push(String(fault)),
    });
    if (!started.ok) throw new Error(started.problem.message);
    server = started.value;
    await prepare?.(on);
  });
  afterEach(async ({ task }) => {
    await windows.layAside(task.result?.state !== 'fail');
    await server.close();
    rmSync(folder, { recursive: true, force: true });
    expect(faults.splice(0)).toEqual([]);
  });
  afterAll(() => browser.close());
  return on;
}

/** Opening a window takes the browser longer than most of what a test does in it: windows are used again. */
class Windows {
  readonly #browser: () => Browser;
  readonly #faults: string[];
  readonly #free: Page[] = [];
  readonly #used: { page: Page; again: boolean }[] = [];

  constructor(browser: () => Browser, faults: string[]) {
    this.#browser = browser;
    this.#faults = faults;
  }

  /** What a page keeps in the browser is kept by address, and each test has an address of its own. */
  async open(address: string, options: BrowserContextOptions = {}): Promise<Page> {
    const again = Object.keys(options).every((option) => CHANGEABLE.has(option));
    const page = (again ? this.#free.pop() : undefined) ?? (await this.#new(again ? {} : options));
    this.#used.push({ page, again });
    if (again) {
      await page.setViewportSize(options.viewport ?? WIDE);
      await page.emulateMedia({ colorScheme: options.colorScheme ?? 'light', media: null });
    }
    await page.goto(address);
    return page;
  }

  async #new(options: BrowserContextOptions): Promise<Page> {
    const context = await this.#browser().newContext(options);
    context.setDefaultTimeout(60_000);
    const page = await context.newPage();
    page.on('pageerror', (error) => this.#faults.push(`page: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() === 'error') this.#faults.push(`console: ${message.text()}`);
    });
    page.on('request', (request) => {
      const { hostname } = new URL(request.url());
      if (hostname !== '127.0.0.1' && !request.url().startsWith('blob:') && request.url() !== 'about:blank')
        this.#faults.push(`asked ${hostname}`);
    });
    return page;
  }

  /** After a test: pages are left, so that nothing of them runs on. A window in which a test failed is not used again. */
  async layAside(sound: boolean): Promise<void> {
    for (const { page, again } of this.#used.splice(0)) {
      // One that does not even leave its page in time is not used again either.
      const left =
        sound && again
          ? await page.goto('about:blank', { timeout: 20_000 }).then(
              () => true,
              () => false,
            )
          : false;
      if (left) this.#free.push(page);
      else await page.context().close();
    }
  }
}

/** What axe finds wrong, in a line each. */
export async function violations(page: Page): Promise<string[]> {
  // Injected by the browser's own debugger, not as a script of the page: the page's policy allows no such thing.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const axe = (
      globalThis as unknown as {
        axe: {
          run: () => Promise<{
            violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[];
          }>;
        };
      }
    ).axe;
    const { violations: found } = await axe.run();
    return found.flatMap((each) =>
      each.nodes.map((node) => `${each.id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
    );
  });
}

/** Elements wider than the window, and text cut by its own box. */
export const cut = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wrong: string[] = [];
    if (document.documentElement.scrollWidth > innerWidth + 1)
      wrong.push(`page is ${document.documentElement.scrollWidth} wide in ${innerWidth}`);
    for (const element of document.querySelectorAll<HTMLElement>(
      'button, a, label, h1, h2, h3, p, td, th, span, summary',
    )) {
      const style = getComputedStyle(element);
      if (
        style.overflow === 'hidden' &&
        element.scrollWidth > element.clientWidth + 1 &&
        !element.classList.contains('hidden')
      ) {
        wrong.push(`cut: ${element.outerHTML.slice(0, 120)}`);
      }
    }
    return wrong;
  });
