/** `npm run pictures`: makes the screenshots of docs/pictures/ anew, from the sample refits. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ARGUMENTS, browser as findBrowser } from './browser.js';
import { build, install, needNode, ROOT } from './tools.js';

needNode();
install();
build();

const SHOTS = [
  ['home', '/', '.card'],
  ['know', '/refit/carriage-works-lathe/know', '.cards li'],
  ['fit', '/refit/carriage-works-lathe/fit/X', '.formula math'],
  ['supply', '/refit/carriage-works-lathe/fit/machine', '.finding'],
  ['spindle', '/refit/carriage-works-lathe/fit/S', '.formula math'],
  ['work', '/refit/carriage-works-lathe/work/thread-1', '#work-detail svg'],
  ['control', '/refit/carriage-works-lathe/control', '.control-census'],
  ['auxiliaries', '/refit/carriage-works-lathe/auxiliaries', '.control-chart svg'],
  ['wiring', '/refit/carriage-works-lathe/wiring', '.wiring-findings [data-finding]'],
  ['diagram', '/refit/carriage-works-lathe/wiring/diagrams', '.wiring-viewer svg'],
  ['move', '/refit/carriage-works-lathe/move/X', '.move-chart'],
  ['bench-test', '/refit/boatyard-mill/evidence', '.bench-cards'],
  ['stop', '/refit/carriage-works-lathe/stop', '.stop-findings li'],
  ['thread', '/threads', '.thread-profile svg'],
  ['history', '/refit/carriage-works-lathe/history', 'table'],
];
const WINDOWS = [
  ['wide', { width: 1280, height: 1100 }],
  ['phone', { width: 390, height: 844 }],
];

const { startServer, findHome, readSamples } = await import(join(ROOT, 'dist/server/index.js'));
const { chromium } = await import('playwright-core');
const folder = mkdtempSync(join(tmpdir(), 'fettle-pictures-'));
const home = findHome();
const started = await startServer({
  folder,
  port: 0,
  pageFolder: join(ROOT, 'dist', 'web'),
  version: JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).version,
  samples: readSamples(home),
  report: console.error,
});
if (!started.ok) throw new Error(started.problem.message);
const out = join(ROOT, 'docs', 'pictures');
mkdirSync(out, { recursive: true });
const browser = await chromium.launch({ executablePath: findBrowser(), args: ARGUMENTS });
for (const [window, viewport] of WINDOWS) {
  for (const colorScheme of ['light', 'dark']) {
    const page = await browser.newPage({ viewport, colorScheme });
    for (const [name, path, ready] of SHOTS) {
      await page.goto(new URL(path, started.value.address).href);
      await page.locator(ready).first().waitFor();
      await page.waitForTimeout(1500);
      await page.screenshot({ path: join(out, `${name}-${window}-${colorScheme}.png`) });
    }
    await page.close();
  }
}
await browser.close();
await started.value.close();
rmSync(folder, { recursive: true, force: true });
console.log(`Screenshots lie in ${out}`);
