/** The main job through the screen: from nothing to verdicts, a remedy tried, kept and undone; two windows; files. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { setStage, violations } from './stage.ts';

const on = setStage();

const path = (page: Page, fact: string) => page.locator(`[data-path="${fact}"]`).first();

/** Opens a place on the Know page and leaves it open. */
async function place(page: Page, chain: string, name: string): Promise<void> {
  const group = page.locator('.sheet', { has: page.getByRole('heading', { name: chain, exact: true }) });
  const summary = group.locator('details > summary', { hasText: name }).first();
  if (!(await summary.evaluate((element) => (element.parentElement as HTMLDetailsElement).open)))
    await summary.click();
  // Fields are made once the place is open.
  await summary.locator('..').locator('.field').first().waitFor();
  const more = group.locator('summary', { hasText: 'more that decide nothing now' });
  for (const each of await more.all()) {
    if (!(await each.evaluate((element) => (element.parentElement as HTMLDetailsElement).open)))
      await each.click();
  }
}

async function saved(page: Page, what: string): Promise<void> {
  await page.locator('.status', { hasText: what }).waitFor();
}

async function enter(page: Page, fact: string, text: string): Promise<void> {
  const field = path(page, fact).locator('input, textarea').first();
  await field.fill(text);
  await field.press('Enter');
  await saved(page, text);
}

async function choose(page: Page, fact: string, option: string): Promise<void> {
  await path(page, fact).locator('select').first().selectOption(option);
  await saved(page, 'Saved:');
}

test('an empty lathe: ten facts in mixed units bring findings from unknown to verdicts; a remedy is tried, kept, undone', async () => {
  const page = await on.open('/');
  await page.getByRole('link', { name: 'Start a refit' }).click();
  await page.getByRole('button', { name: 'a lathe' }).click();
  await page.getByLabel('What you call it').fill('Shed lathe');
  await page.getByRole('button', { name: /^Start/ }).click();
  await page.getByRole('heading', { name: 'What should you find out next?' }).waitFor();
  await page.getByText('0 fit', { exact: false }).first().waitFor();

  await place(page, 'X axis', 'Screw');
  await choose(page, 'X.screw.type', 'ball');
  await enter(page, 'X.screw.pitch', '5 TPI');
  await enter(page, 'X.screw.starts', '1');
  await enter(page, 'X.screw.root', '0.31 in');
  await enter(page, 'X.screw.freeLength', '47,5 in');
  await choose(page, 'X.screw.ends', 'fixed-supported');
  await choose(page, 'X.screw.driven', 'screw');
  await enter(page, 'X.screw.ballCircle', 'R 5.2 mm');
  await place(page, 'X axis', 'Duty of the axis');
  await enter(page, 'X.duty.rapid', '320 in/min');
  await enter(page, 'X.duty.hoursWanted', '2000 h');

  await page.getByRole('link', { name: 'Fit', exact: true }).click();
  const whirl = page.locator('.finding', { hasText: 'Whirling of the screw' });
  await whirl.waitFor();
  await expect.poll(() => whirl.innerText()).toContain('×');
  expect(await page.locator('.finding', { hasText: 'Speed of the balls' }).innerText()).toContain('×');
  await whirl.click();
  await page.getByRole('heading', { name: /Why: whirling/ }).waitFor();
  expect(await whirl.locator('.margin').innerText()).toMatch(/^×0\./);
  await page.locator('.formula math').first().waitFor();

  const remedy = page
    .locator('li', { hasText: /rapid speed wanted/i })
    .getByRole('button', { name: 'Try it' });
  await remedy.waitFor({ timeout: 20_000 });
  await remedy.click();
  await page.getByRole('region', { name: 'Trying' }).waitFor();
  await expect.poll(() => whirl.locator('.margin').innerText()).toMatch(/^×[1-9]/);
  await page.getByRole('button', { name: 'Drop it' }).click();
  await expect.poll(() => whirl.locator('.margin').innerText()).toMatch(/^×0\./);
  await remedy.click();
  await page.getByRole('button', { name: 'Keep it' }).click();
  await saved(page, 'Saved:');
  await expect.poll(() => whirl.locator('.margin').innerText()).toMatch(/^×[1-9]/);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await saved(page, 'Undone:');
  await expect.poll(() => whirl.locator('.margin').innerText()).toMatch(/^×0\./);
  await page.reload();
  await expect.poll(() => whirl.locator('.margin').innerText()).toMatch(/^×0\./);
}, 240_000);

test('typing shows the new verdict before it is recorded; what cannot be read is explained and not recorded', async () => {
  const page = await on.open('/refit/carriage-works-lathe/fit/X');
  await page.getByRole('button', { name: /^Duty of the axis/ }).click();
  const field = path(page, 'X.duty.rapid').locator('input');
  const before = await page.locator('.finding', { hasText: 'Speed at low mains' }).count();
  expect(before).toBeLessThanOrEqual(1);
  const rule = page.locator('.finding', { hasText: 'Pace of the work' }).locator('.margin');
  const was = await rule.innerText();
  await field.fill('0.5 m/min');
  await expect.poll(() => rule.innerText()).not.toBe(was);
  await field.press('Escape');
  await expect.poll(() => rule.innerText()).toBe(was);
  for (const [text, says] of [
    ['5 kg', 'speed'],
    ['1,250 m/min', 'decimal comma'],
    ['<script>alert(1)</script>', 'number'],
    ['-3 m/min', 'above zero'],
    ['0', 'unit'],
    ['x'.repeat(100_000), '200 characters'],
  ] as const) {
    await field.fill(text);
    const said = path(page, 'X.duty.rapid').locator('.said .bad');
    await said.waitFor();
    await expect.poll(() => said.innerText(), { timeout: 10_000 }).toContain(says);
    expect((await said.innerText()).length).toBeLessThan(600);
  }
  // Readable, but hardly meant: a question, not a refusal, and no number on the page that is none.
  await field.fill('1e308 m/min');
  await expect.poll(() => path(page, 'X.duty.rapid').locator('.said').innerText()).toContain('really');
  expect(await page.locator('body').innerText()).not.toMatch(/NaN|Infinity/);
  await field.press('Escape');
  expect(await page.locator('.status').innerText()).not.toContain('Saved');
}, 180_000);

test('two open windows follow each other', async () => {
  const one = await on.open('/refit/boatyard-mill/know');
  const two = await on.open('/refit/boatyard-mill/history');
  await two.getByRole('heading', { name: 'Who changed what, and when?' }).waitFor();
  await place(one, 'X axis', 'Duty of the axis');
  await enter(one, 'X.duty.rapid', '2.75 m/min');
  await two
    .getByRole('cell', { name: /2\.75 m\/min/ })
    .first()
    .waitFor();
}, 180_000);

test('inches are a choice of the reader and change nothing that was typed', async () => {
  const page = await on.open('/refit/carriage-works-lathe/fit/X');
  await page.locator('.finding').first().waitFor();
  await page.getByText('Units and looks').click();
  await page.getByLabel('Read lengths in').selectOption('in');
  await expect.poll(() => page.locator('.findings').first().innerText()).toMatch(/\bin\b|thou|in\//);
  await page.getByLabel('Read lengths in').selectOption('mm');
}, 180_000);

test('a file of the wrong shape is refused naming the path within it; a good one is taken in', async () => {
  const page = await on.open('/');
  const bad = JSON.stringify({ format: 'fettle-refit', version: 1, id: 'a', name: 7 });
  await page
    .locator('#bring')
    .setInputFiles({ name: 'bad.json', mimeType: 'application/json', buffer: Buffer.from(bad) });
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.innerText()).toContain('name');
  on.faults.splice(0);
}, 180_000);

test('the whole way by keyboard', async () => {
  const page = await on.open('/new');
  await page.getByLabel('What you call it').waitFor();
  for (let k = 0; k < 30 && !(await page.evaluate(() => document.activeElement?.id === 'name')); k++)
    await page.keyboard.press('Tab');
  await page.keyboard.type('By keyboard');
  for (
    let k = 0;
    k < 5 &&
    !(await page.evaluate(() => (document.activeElement as HTMLButtonElement | null)?.type === 'submit'));
    k++
  )
    await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'What should you find out next?' }).waitFor();
  for (
    let k = 0;
    k < 30 &&
    !(await page.evaluate(
      () => document.activeElement?.tagName === 'SELECT' && !!document.activeElement.closest('[data-path]'),
    ));
    k++
  ) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('ArrowDown');
  await saved(page, 'Saved:');
  expect(await violations(page)).toEqual([]);
}, 180_000);
