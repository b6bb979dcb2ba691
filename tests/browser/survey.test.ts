/** The survey through the screen: conditions, photos, tags, what to keep; counts that fall; undo; a phone; paper. */
import { randomFillSync } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterAll, expect, test } from 'vitest';
import { flat, png, pngChunk } from '../../engine/refit/photo.fixture.ts';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();
const folder = mkdtempSync(join(tmpdir(), 'fettle-photos-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const HOME = '/refit/carriage-works-lathe/survey';
const saved = (page: Page, what: string) => page.locator('.status', { hasText: what }).waitFor();
const card = (page: Page, title: string | RegExp) =>
  page.locator('li.sheet', { has: page.getByRole('heading', { name: title }) });
const tab = (page: Page, words: string) =>
  page.getByRole('navigation', { name: 'Parts of the survey' }).getByRole('link', { name: words });

/** A photo of noise, which no packing makes small. */
function noise(side: number): Buffer {
  const rows = randomFillSync(Buffer.alloc(side * (side * 3 + 1)));
  for (let row = 0; row < side; row++) rows[row * (side * 3 + 1)] = 0;
  const size = [side >> 24, side >> 16, side >> 8, side].map((byte) => byte & 255);
  return Buffer.from(
    flat(
      png().subarray(0, 8),
      pngChunk('IHDR', [...size, ...size, 8, 2, 0, 0, 0]),
      pngChunk('IDAT', deflateSync(rows, { level: 0 })),
      pngChunk('IEND', []),
    ),
  );
}

/** A file for the browser to read by itself: sending megabytes through its debugger takes long. */
function onDisk(name: string, bytes: Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

test('a condition is set, counted and undone; a photo is kept without what it told', async () => {
  const page = await on.open('/refit/carriage-works-lathe/know');
  await page.getByRole('link', { name: /^Survey the machine/ }).click();
  await page.getByRole('heading', { name: 'Survey of the machine' }).waitFor();
  const parts = tab(page, 'Parts');
  const before = Number(/(\d+) of/.exec(await parts.innerText())![1]);

  const drive = card(page, 'X drive');
  await drive.getByRole('button', { name: 'works' }).click();
  await saved(page, 'Saved: X drive: condition works');
  expect(await parts.innerText()).toContain(`${before + 1} of`);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await saved(page, 'Undone:');
  expect(await parts.innerText()).toContain(`${before} of`);

  await drive.locator('summary').click();
  const pick = drive.getByLabel('Photo from a file');
  const told = png([pngChunk('tEXt', Buffer.from('Author\0somebody'))]);
  await pick.setInputFiles({ name: 'plate.png', mimeType: 'image/png', buffer: Buffer.from(told) });
  await drive.getByText('Photo kept. Taken out of it: comments.').waitFor();
  const source = await drive.locator('img').getAttribute('src');
  expect(source).toBe('/api/refits/carriage-works-lathe/photos/x-drive-1.png');
  const kept = await page.request.get(new URL(source!, on.server.address).href);
  expect((await kept.body()).includes('somebody')).toBe(false);
  await saved(page, 'Saved: X drive: photo added');
  // A second one quickly after: both edits are made from the newest state.
  await drive.getByLabel('Notes on the X drive').fill('Fan is loud.');
  await drive.getByRole('button', { name: 'worn' }).click();
  await expect.poll(() => drive.locator('summary').innerText()).toMatch(/1 photo, notes/);
  await expect
    .poll(() => drive.getByRole('button', { name: 'worn' }).getAttribute('aria-pressed'))
    .toBe('true');
  await drive.getByRole('button', { name: /Take out photo 1/ }).click();
  await saved(page, 'photo taken out');
}, 120_000);

test('a large photo is made smaller first; what is no picture is refused in words', async () => {
  const page = await on.open(HOME);
  const motor = card(page, 'X motor');
  await motor.locator('summary').click();
  const pick = motor.getByLabel('Photo from a file');
  await pick.setInputFiles(onDisk('hall.png', noise(1400)));
  await motor.getByText(/Photo kept\. It had 5\.9 MB and was made smaller to [0-3]\.?\d? MB\./).waitFor();
  expect(await motor.locator('img').getAttribute('src')).toMatch(/x-motor-1\.jpg$/);
  await pick.setInputFiles({ name: 'note.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('just a note') });
  await motor.getByText('is not a JPEG, PNG or WebP picture').waitFor();
  await pick.setInputFiles(onDisk('zeros.jpg', Buffer.alloc(60_000_000)));
  await motor.getByText('This file has 60 MB and this browser cannot open it as a picture').waitFor();
  expect(await motor.locator('img').count()).toBe(1);
  // The server's own refusal stands in the browser's console as well.
  expect(on.faults.splice(0).filter((fault) => !fault.includes('422'))).toEqual([]);
}, 120_000);

test('two ends are tagged until none is left; a new one goes in, survives a reload, and comes out as CSV', async () => {
  const page = await on.open(`${HOME}/tags`);
  await page.getByText('2 of 20 ends have no tag yet.').waitFor();
  await card(page, /^9 /).getByRole('button', { name: 'both ends' }).click();
  await page.getByText('1 of 20 ends has no tag yet.').waitFor();
  await card(page, /^10 /).getByRole('button', { name: 'both ends' }).click();
  await page.getByText('Every end on the list carries its tag.').waitFor();
  expect(await tab(page, 'Tags').innerText()).toContain('all tagged');

  const field = (name: string) => page.locator('form').getByLabel(name, { exact: true });
  await field('Tag on the sleeve').fill('41');
  await field('Cable').fill('W9');
  await field('Here: part and terminal').fill('Door switch, 13');
  await field('Colour').fill('=red');
  await page.reload();
  expect(await field('Here: part and terminal').inputValue()).toBe('Door switch, 13');
  await page.getByRole('button', { name: 'Add to the list' }).click();
  await saved(page, 'Saved: tag 41: Door switch, 13 to not traced yet, tagged at one end');
  expect(await field('Tag on the sleeve').inputValue()).toBe('42');
  expect(await field('Cable').inputValue()).toBe('W9');
  expect(await field('Here: part and terminal').inputValue()).toBe('');
  await page.getByText('1 of 22 ends has no tag yet.').waitFor();

  await page.getByLabel('Show').selectOption('untraced');
  await page.getByText('3 of 11 shown.').waitFor();
  await page.getByLabel('Find').fill('door');
  await page.getByText('1 of 11 shown.').waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^List as CSV/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('carriage-works-lathe-tags.csv');
  expect(readFileSync(await download.path(), 'utf8')).toContain('41,W9,"Door switch, 13",,,\'=red,');

  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.getByText('10 shown.', { exact: false }).waitFor();
}, 120_000);

test('what the old control knows is ticked, and what is answered of the coolant is read', async () => {
  const page = await on.open(`${HOME}/control`);
  await page.getByText('11 things are still to do.').waitFor();
  await card(page, 'Tool and work offsets').getByRole('button', { name: 'kept' }).click();
  await page.getByText('10 things are still to do.').waitFor();
  const more = page.getByLabel('Something else to keep');
  await more.fill('Hour meter reading');
  await more.press('Enter');
  await card(page, 'Hour meter reading').waitFor();
  await page.getByText('11 things are still to do.').waitFor();
  expect(await more.inputValue()).toBe('');

  await tab(page, 'Everything else').click();
  const coolant = card(page, 'Coolant');
  await coolant.locator('summary').click();
  const volts = coolant.getByLabel('Supply voltage in V or another unit');
  await volts.fill('lots');
  await volts.press('Enter');
  await coolant.getByText('No number was found').waitFor();
  await page.reload();
  await coolant.locator('summary').click();
  expect(await volts.inputValue()).toBe('lots');
  await volts.fill('230 V');
  await volts.press('Enter');
  await saved(page, 'Saved: coolant: works, 3 answered');
  await page.reload();
  await coolant.locator('summary').click();
  expect(await volts.inputValue()).toBe('230 V');
}, 120_000);

test.each([
  ['on a desk, light', { width: 1280, height: 900 }, 'light'],
  ['on a phone, dark', { width: 390, height: 844 }, 'dark'],
] as const)(
  'every page of the survey %s: nothing cut, nothing for axe to find',
  async (_where, viewport, colorScheme) => {
    const page = await on.open(HOME, { viewport, colorScheme });
    for (const at of ['', '/others', '/control', '/tags', '/print']) {
      await page.goto(new URL(HOME + at, on.server.address).href);
      await page.locator('main h2').first().waitFor();
      const more = page.locator('main details > summary').first();
      if (at !== '/print' && (await more.count()) > 0) await more.click();
      expect([at, await cut(page)]).toEqual([at, []]);
      expect([at, await violations(page)]).toEqual([at, []]);
    }
  },
  240_000,
);

test('on paper: the sheets alone, in their own style, over several pages of A4', async () => {
  const page = await on.open(`${HOME}/print`);
  const paper = page.locator('.survey-sheets');
  await paper.waitFor();
  await page.emulateMedia({ media: 'print' });
  for (const gone of ['.top', '.status', '.not-printed'])
    expect(await page.locator(gone).evaluate((element) => getComputedStyle(element).display)).toBe('none');
  const article = paper.locator('article').first();
  expect(await article.evaluate((element) => getComputedStyle(element).breakInside)).toBe('avoid');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) =>
    [w, h].map(Number),
  );
  expect(boxes.length).toBeGreaterThan(8);
  // A4 in points, to the nearest of the two that browsers round to.
  for (const [width, height] of boxes) {
    expect(Math.abs(width! - 595.3)).toBeLessThan(1);
    expect(Math.abs(height! - 841.9)).toBeLessThan(1);
  }
}, 120_000);
