/** A server on a folder of its own, and a Chromium to look at it with. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { PARTS } from '../../engine/parts/index.ts';
import { readRefit } from '../../engine/refit/index.ts';
import { SAMPLES } from '../../samples/index.ts';
import { type RunningServer, startServer } from '../../server/index.ts';
import { ROOT } from '../rooms.ts';

/** As a headless browser of a closed network is started; a container's root has no sandbox to give. */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Stage {
  readonly server: RunningServer;
  readonly browser: Browser;
  /** A new window; errors of the page and refused requests end up in `faults`. */
  readonly open: (path: string, options?: BrowserContextOptions) => Promise<Page>;
  readonly faults: string[];
  readonly close: () => Promise<void>;
}

export async function stage(): Promise<Stage> {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-browser-'));
  const faults: string[] = [];
  const samples = SAMPLES.map(({ file }) => {
    const read = readRefit(readFileSync(join(ROOT, 'samples', file), 'utf8'), Object.keys(PARTS));
    if (!read.ok) throw new Error(read.problem.message);
    return read.value;
  });
  const started = await startServer({
    folder,
    port: 0,
    pageFolder: join(ROOT, 'dist', 'web'),
    version: 'test',
    samples,
    report: (fault) => faults.push(String(fault)),
  });
  if (!started.ok) throw new Error(started.problem.message);
  const server = started.value;
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ARGUMENTS,
  });
  return {
    server,
    browser,
    faults,
    open: async (path, options = {}) => {
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
      context.setDefaultTimeout(60_000);
      const page = await context.newPage();
      page.on('pageerror', (error) => faults.push(`page: ${error.message}`));
      page.on('console', (message) => {
        if (message.type() === 'error') faults.push(`console: ${message.text()}`);
      });
      page.on('request', (request) => {
        const { hostname } = new URL(request.url());
        if (hostname !== '127.0.0.1' && !request.url().startsWith('blob:')) faults.push(`asked ${hostname}`);
      });
      await page.goto(new URL(path, server.address).href);
      return page;
    },
    close: async () => {
      await browser.close();
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
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
