/**
 * From a keystroke to new verdicts on the screen, in Chromium on a sample: median and 95th percentile, as shares of one
 * frame of 1/60 s; and opening a refit with 10⁴ edits against one with ten, as a ratio. Build first.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ARGUMENTS, browser as findBrowser } from '../scripts/browser.js';
import { ROOT } from '../scripts/tools.js';

const { startServer, findHome, readSamples } = await import(join(ROOT, 'dist/server/index.js'));
const { openStore } = await import(join(ROOT, 'dist/store/index.js'));
const { PARTS } = await import(join(ROOT, 'dist/engine/parts/index.js'));
const { chromium } = await import('playwright-core');

const FRAME = 1000 / 60;
const WHEN = '2026-01-01T00:00:00.000Z';
const samples = readSamples(findHome());

/** Milliseconds to open a refit that has had so many edits, the least of several. */
function opening(edits) {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-bench-'));
  let store = openStore(folder, { kinds: PARTS }).value;
  const { id } = samples[0];
  store.createRefit(samples[0], 'bench', WHEN);
  const { refit, head } = store.openRefit(id).value;
  let old = { name: refit.name, about: refit.about };
  for (let k = 0; k < edits; k++) {
    const now = { name: `${refit.name} ${k}`, about: refit.about };
    const kept = store.appendEdit(id, {
      who: 'bench',
      when: WHEN,
      basedOn: head + k,
      changes: [{ do: 'title', old, new: now }],
    });
    if (!kept.ok) throw new Error(kept.problem.message);
    old = now;
  }
  store.close();
  store = openStore(folder, { kinds: PARTS }).value;
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 20; k++) {
    const start = performance.now();
    store.openRefit(id);
    best = Math.min(best, performance.now() - start);
  }
  store.close();
  rmSync(folder, { recursive: true, force: true });
  return best;
}

const folder = mkdtempSync(join(tmpdir(), 'fettle-bench-'));
const started = await startServer({
  folder,
  port: 0,
  pageFolder: join(ROOT, 'dist/web'),
  version: 'bench',
  samples,
  report: console.error,
});
const browser = await chromium.launch({
  executablePath: findBrowser(),
  args: ARGUMENTS,
});
for (const { id, chains } of samples) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(new URL(`/refit/${id}/fit/${chains[0].id}`, started.value.address).href);
  await page.getByRole('button', { name: /^Duty of the axis/ }).click();
  const field = page.locator(`[data-path="${chains[0].id}.duty.rapid"] input`);
  await field.focus();
  const times = await page.evaluate(async (path) => {
    const input = document.querySelector(`[data-path="${path}"] input`);
    const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
    const list = document.querySelector('.findings');
    const all = [];
    for (let k = 0; k < 60; k++) {
      const text = `${(1 + (k % 30) * 0.13).toFixed(2)} m/min`;
      const changed = new Promise((done) => {
        const watch = new MutationObserver(() => {
          watch.disconnect();
          done(performance.now());
        });
        watch.observe(list, { subtree: true, childList: true, characterData: true, attributes: true });
      });
      const start = performance.now();
      setter.call(input, text);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      const end = await Promise.race([
        changed,
        new Promise((done) => setTimeout(() => done(Number.NaN), 3000)),
      ]);
      if (k >= 10) all.push(end - start);
      await new Promise((done) => setTimeout(done, 60));
    }
    return all.filter((time) => !Number.isNaN(time)).sort((a, b) => a - b);
  }, `${chains[0].id}.duty.rapid`);
  const at = (share) => times[Math.min(times.length - 1, Math.floor(share * times.length))];
  console.log(
    `${id}: keystroke to new verdicts, of ${times.length}: median ${at(0.5).toFixed(1)} ms (${(at(0.5) / FRAME).toFixed(2)} frames), 95th percentile ${at(0.95).toFixed(1)} ms (${(at(0.95) / FRAME).toFixed(2)} frames)`,
  );
  await page.close();
}
await browser.close();
await started.value.close();
rmSync(folder, { recursive: true, force: true });
const [few, many] = [opening(10), opening(10_000)];
console.log(`opening a refit: ${(many / few).toFixed(1)} times as long with 10 000 edits as with ten`);
