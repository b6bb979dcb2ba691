/** Advice through the screen: keep or replace, whether it is worth it, what is dead, and what to ask of an axis. */
import { expect, test } from 'vitest';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();

/** The computer of a test may be busy. */
const WAIT = { timeout: 30_000 };
const PHONE = { viewport: { width: 390, height: 844 } };

test('keep: a part opens to its reasons and to what another one would change; a price is recorded and added', async () => {
  const page = await on.open('/refit/carriage-works-lathe/keep', PHONE);
  const motor = page.locator('[data-part="X.motor"]');
  await motor.locator('summary').first().click();
  await motor.getByRole('heading', { name: 'What speaks for it' }).waitFor();
  expect(await motor.innerText()).toContain('Stepper at rapid');
  await page.locator('[role="status"]', { hasText: 'parts weighed' }).waitFor({ timeout: 60_000 });
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
  expect(await motor.innerText()).not.toMatch(/NaN|undefined|\[object/);

  const field = motor.locator('[data-path="X.motor@x-motor.repairCost"] input').first();
  await field.fill('lots');
  await motor.locator('.said .bad').first().waitFor();
  await field.fill('30–50 EUR');
  await field.press('Enter');
  await page.locator('.status', { hasText: 'Saved:' }).waitFor();
  await expect.poll(() => motor.innerText(), { timeout: 60_000 }).toContain('285 to 305 EUR');
}, 240_000);

test('worth: usual values are guesses; taken one by one they become an answer, and what stops it comes first', async () => {
  const page = await on.open('/refit/carriage-works-lathe/worth', PHONE);
  const status = page.locator('main [role="status"]').first();
  await expect.poll(() => status.innerText(), WAIT).toContain('guessed');
  const take = page.getByRole('button', { name: /^Take .* as mine/ });
  for (let left = await take.count(); left > 0; left = await take.count()) {
    await take.first().click();
    await expect.poll(() => take.count(), WAIT).toBe(left - 1);
  }
  await expect.poll(() => status.innerText(), WAIT).toMatch(/cases of a hundred/);
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
  const stopper = page.locator('li', { hasText: 'weight on the lifting gear' });
  await stopper.locator('summary').first().click();
  const lift = stopper.locator('[data-path="site.lift"] input');
  await lift.fill('1500 kg');
  await lift.press('Enter');
  await expect.poll(() => status.innerText(), WAIT).toContain('Not as it stands');
}, 240_000);

test('fault: answers tapped on a phone lead from a dark screen to its backlight; an answer is taken back', async () => {
  const page = await on.open('/refit/boatyard-mill/fault', PHONE);
  await page.getByRole('button', { name: /^The screen stays dark/ }).click();
  const tap = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const cause = page.getByRole('heading', { name: 'This is what it is' });
  const ANSWERS: readonly (readonly [question: string, answer: string])[] = [
    ['Does the control answer in another way', 'Yes'],
    ['Is a faint picture there', 'Yes, faint'],
    ['Does anything else live', 'Yes, something'],
  ];
  for (let step = 0; step < 6 && !(await cause.isVisible()); step++) {
    const asked = await page.locator('.fault section h3').first().innerText();
    const known = ANSWERS.find(([question]) => asked.startsWith(question));
    await tap(known ? known[1] : 'I cannot do this test');
  }
  await cause.waitFor();
  expect(await page.locator('.fault').innerText()).toContain('own lamp');
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
  await page.reload();
  await cause.waitFor();
  await page
    .getByRole('button', { name: /^Answer again/ })
    .first()
    .click();
  await page.getByRole('heading', { name: 'What it can be' }).waitFor();
}, 240_000);

test('duty: a new mill takes what is usual for its size as one edit, confirms a value, and undoes all', async () => {
  const page = await on.open('/new', PHONE);
  await page.getByRole('button', { name: 'a mill' }).click();
  await page.getByLabel('What you call it').fill('Shed mill');
  await page.getByRole('button', { name: /^Start/ }).click();
  const block = page.locator('.duty-proposal');
  await block.getByRole('heading', { name: 'What shall it do?' }).waitFor();
  await block.getByRole('button', { name: 'small', exact: true }).click();
  await block.getByText(/^See the \d+ values/).click();
  expect(await block.innerText()).toContain('common practice, no source');
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
  await block.getByRole('button', { name: 'Take all as guesses' }).click();
  await block.getByRole('heading', { name: 'Is this what you want of it?' }).waitFor(WAIT);
  await block.getByText(/guesses to confirm/).click();
  const count = await block.getByRole('button', { name: /^That is right/ }).count();
  await block.getByRole('button', { name: /^That is right: X rapid speed/ }).click();
  await expect
    .poll(() => block.getByRole('button', { name: /^That is right/ }).count(), WAIT)
    .toBe(count - 1);
  expect(await violations(page)).toEqual([]);
  for (let k = 0; k < 2; k++) {
    await page.locator('.status').getByRole('button', { name: 'Undo' }).click();
    await page.locator('.status', { hasText: 'Undone:' }).waitFor();
    await page.waitForTimeout(500);
  }
  await block.getByRole('heading', { name: 'What shall it do?' }).waitFor(WAIT);
}, 240_000);
