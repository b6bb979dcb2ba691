/** Amounts far outside what is usual: the screen asks back, records nothing by itself, and loses nothing. */
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();

const REFIT = '/refit/carriage-works-lathe';
const QUESTION =
  '9999 V is far outside what is usual for the mains voltage, 90 V to 690 V. Is a digit or the unit wrong?';

const asked = (within: Page | Locator) => within.getByRole('group', { name: 'Is this right?' });
const anyway = (within: Page | Locator) => within.getByRole('button', { name: 'Record it anyway' });
const change = (within: Page | Locator) => within.getByRole('button', { name: 'Change it' });
const saved = (page: Page, words: string) => page.locator('.status', { hasText: words }).waitFor();

/** The whole refit as the server has it, as text. */
const stored = async (): Promise<string> =>
  (await fetch(new URL('/api/refits/carriage-works-lathe', on.server.address))).text();

/** The field of the mains voltage, with its place opened. */
async function mains(page: Page): Promise<{ readonly field: Locator; readonly entry: Locator }> {
  await page.getByRole('heading', { name: 'Everything, place by place' }).waitFor();
  const section = page.locator('.sheet', {
    has: page.getByRole('heading', { name: 'Whole machine', exact: true }),
  });
  for (const each of await section.locator('> details > summary').all()) await each.click();
  for (const each of await section.getByText('more that decide nothing now').all()) await each.click();
  const field = section.locator('[data-path="site.mains"]').first();
  const entry = field.getByLabel('Mains voltage', { exact: true });
  await entry.waitFor();
  return { field, entry };
}

test('a fact: asked on Enter, changed, asked again when the field is left, kept over a reload, recorded anyway; by keyboard', async () => {
  const page = await on.open(`${REFIT}/know`);
  const { field, entry } = await mains(page);
  const before = await stored();
  await entry.fill('9999 V');
  await entry.press('Enter');
  await asked(field).waitFor();
  const alert = field.getByRole('alert');
  expect(await alert.innerText()).toBe(`Not recorded yet. ${QUESTION}`);
  // Read out again with the field itself.
  expect(await entry.getAttribute('aria-describedby')).toContain((await alert.getAttribute('id'))!);
  expect(await stored()).toBe(before);
  expect(await violations(page)).toEqual([]);

  // Enter once more is no answer.
  await entry.press('Enter');
  expect(await stored()).toBe(before);

  await change(field).focus();
  await page.keyboard.press('Enter');
  expect(await entry.evaluate((each) => each === document.activeElement)).toBe(true);
  expect(await entry.inputValue()).toBe('9999 V');
  await page.keyboard.press('End');
  await page.keyboard.type('9');
  await asked(field).waitFor({ state: 'detached' });
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Tab');
  await asked(field).waitFor();
  expect(await stored()).toBe(before);

  await page.reload();
  const again = await mains(page);
  expect(await again.entry.inputValue()).toBe('9999 V');
  await asked(again.field).waitFor();
  expect(await stored()).toBe(before);

  await anyway(again.field).focus();
  await page.keyboard.press('Enter');
  await saved(page, 'mains voltage 9999 V');
  await asked(again.field).waitFor({ state: 'detached' });
  expect(await again.entry.evaluate((each) => each === document.activeElement)).toBe(true);
  expect(await stored()).toContain('"9999 V"');

  // What is recorded is not asked again; a usual value goes straight in.
  await page.keyboard.press('Tab');
  expect(await asked(page).count()).toBe(0);
  await again.entry.fill('230 V');
  await again.entry.press('Enter');
  await saved(page, 'mains voltage 230 V');
}, 240_000);

test('a fact: Escape takes back what was typed, and the question with it; a little outside is recorded as before', async () => {
  const page = await on.open(`${REFIT}/know`);
  const { field, entry } = await mains(page);
  const stood = await entry.inputValue();
  await entry.fill('16 mV');
  await entry.press('Enter');
  await asked(field).waitFor();
  await entry.press('Escape');
  await asked(field).waitFor({ state: 'detached' });
  expect(await entry.inputValue()).toBe(stood);
  await entry.fill('700 V');
  await entry.press('Enter');
  await saved(page, 'mains voltage 700 V');
}, 120_000);

test('a habit: asked, and recorded anyway', async () => {
  const page = await on.open(`${REFIT}/habits`);
  const entry = page.locator('#policy-run-down');
  await entry.fill('30000 s');
  await entry.press('Enter');
  await asked(page).waitFor();
  expect(await page.getByRole('alert').innerText()).toContain('30 s. Did you mean 30 s?');
  await anyway(page).click();
  await saved(page, '30000 s');
}, 120_000);

test('a setting of the whole wiring and one of an auxiliary: asked in the same words', async () => {
  const page = await on.open(`${REFIT}/wiring`);
  await page.locator('[data-device-row]').first().waitFor();
  const before = await stored();
  const socket = page.getByLabel(/^Fuse or breaker before the socket/);
  if (!(await socket.isVisible()))
    await page.locator('summary', { hasText: 'The supply, the cabinet' }).click();
  await socket.fill('16000 A');
  await socket.press('Enter');
  await asked(page).waitFor();
  expect(await page.getByRole('alert').innerText()).toContain('6 A to 125 A. Did you mean 16 A?');
  expect(await stored()).toBe(before);
  await change(page).click();
  expect(await socket.evaluate((each) => each === document.activeElement)).toBe(true);
  await socket.press('Escape');

  await page.goto(new URL(`${REFIT}/auxiliaries`, on.server.address).href);
  const time = page.getByLabel('Time from one position to the next');
  await time.fill('700 s');
  await time.press('Enter');
  await asked(page).waitFor();
  expect(await stored()).toBe(before);
  await anyway(page).click();
  await saved(page, 'Saved');
  expect(await stored()).toContain('"700 s"');
}, 240_000);

test('an answer of the survey and a bench test: asked before anything is recorded; nothing is cut on a phone', async () => {
  const page = await on.open(`${REFIT}/survey/others`, { viewport: { width: 390, height: 844 } });
  const before = await stored();
  const card = page.locator('li.sheet', { has: page.getByRole('heading', { name: 'Coolant', exact: true }) });
  await card.locator('summary').first().click();
  const volts = card.getByLabel(/^Supply voltage/);
  await volts.fill('400 kV');
  await volts.press('Enter');
  await asked(card).waitFor();
  expect(await card.getByRole('alert').innerText()).toContain('Did you mean 400 V?');
  expect(await cut(page)).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await page.reload();
  await card.locator('summary').first().click();
  await asked(card).waitFor();
  expect(await stored()).toBe(before);

  await page.goto(new URL(`${REFIT}/evidence/travel-per-turn?for=X.screw`, on.server.address).href);
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.locator('[data-entry="turns"] input').fill('1');
  await page.locator('[data-cell="0.0"]').fill('50 m');
  await page.locator('[data-cell="1.0"]').fill('50 m');
  await page.getByRole('button', { name: 'Record it', exact: true }).click();
  await asked(page).waitFor();
  expect(await stored()).toBe(before);
  await change(page).click();
  expect(await page.locator('[data-cell="0.0"]').evaluate((each) => each === document.activeElement)).toBe(
    true,
  );
  await page.getByRole('button', { name: 'Record it', exact: true }).click();
  await anyway(page).click();
  await saved(page, 'Saved:');
  expect(await stored()).not.toBe(before);
}, 240_000);

test('work and the stop circuit: asked, with the same two answers', async () => {
  const page = await on.open(`${REFIT}/work`);
  const form = page.locator('.work-add');
  await form.waitFor();
  const before = await stored();
  await form.getByLabel('Thread', { exact: true }).fill('M12');
  const speed = form.getByLabel(/Spindle speed or cutting speed/);
  await speed.fill('900000 r/min');
  await speed.press('Enter');
  await asked(form).waitFor();
  expect(await speed.evaluate((each) => each === document.activeElement)).toBe(true);
  await speed.press('Enter');
  expect(await stored()).toBe(before);
  await speed.fill('300 r/min');
  await asked(form).waitFor({ state: 'detached' });
  await speed.press('Enter');
  await page.getByRole('heading', { name: 'M12', exact: true }).waitFor();
  const added = await stored();
  await page.locator('summary', { hasText: 'what was asked' }).click();
  const detail = page.locator('#work-detail');
  const own = detail.getByLabel(/Spindle speed or cutting speed/);
  await own.fill('900000 r/min');
  await own.press('Tab');
  await asked(detail).waitFor();
  expect(await stored()).toBe(added);
  await anyway(detail).click();
  await saved(page, '900000 r/min');

  await page.goto(new URL(`${REFIT}/stop`, on.server.address).href);
  const motion = page.locator('.stop-element', { has: page.getByText('cross slide', { exact: true }) });
  await page.locator('summary', { hasText: 'Change the circuit' }).click();
  await motion.locator('summary').first().click();
  const travel = motion.getByLabel(/from one hard stop to the other$/);
  await travel.fill('400 m');
  await travel.press('Enter');
  await asked(motion).waitFor();
  expect(await motion.getByRole('alert').innerText()).toContain('Did you mean 400 mm?');
}, 240_000);
