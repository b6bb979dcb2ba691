/** The spindle's chain through the screen: judged and drawn beside the axes, tried, and added to a refit that had none. */
import { devices } from 'playwright-core';
import { expect, test } from 'vitest';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();

const PHONE = { ...devices['Pixel 5'], colorScheme: 'dark' as const };
const WAIT = { timeout: 60_000 };

test('the mill’s spindle in star: the finding, its working, delta as its remedy, pictures with their tables', async () => {
  const page = await on.open('/refit/boatyard-mill/fit/S', PHONE);
  await page.getByRole('heading', { name: 'Will the spindle do what you ask?' }).waitFor(WAIT);
  await page.getByRole('region', { name: 'Chain of the spindle' }).getByText('Spindle motor').waitFor();
  await page.getByRole('button', { name: /^Star or delta: volts of the winding/ }).click();
  await page.getByText(/to a third for star where delta would be right/).waitFor(WAIT);
  await page
    .getByText(/how the winding is connected.*delta/i)
    .first()
    .waitFor(WAIT);
  await page.getByRole('button', { name: /^What the drive could turn it to/ }).waitFor();
  const picture = page.locator('article.picture', { hasText: 'Has the spindle the torque for its cuts?' });
  await picture.getByText('heaviest cut', { exact: true }).waitFor(WAIT);
  await picture.getByText('Show the numbers').click();
  expect(await picture.locator('table').innerText()).toContain('first range');
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
}, 240_000);

test('a refit without a spindle is given one, and a wrong speed is refused where it is typed', async () => {
  const page = await on.open('/new');
  await page.getByRole('button', { name: 'No, or later' }).click();
  await page.getByLabel('What you call it').fill('Turner');
  await page.getByRole('button', { name: /^Start/ }).click();
  await page.getByRole('heading', { name: 'What should you find out next?' }).waitFor(WAIT);
  await page.getByRole('button', { name: 'Add the spindle' }).click();
  await page.getByRole('heading', { name: 'Will the spindle do what you ask?' }).waitFor(WAIT);
  expect(await page.getByRole('button', { name: 'Add the spindle' }).count()).toBe(0);
  await page.getByRole('button', { name: /^Duty of the spindle/ }).click();
  const field = page.locator('[data-path="S.spindle-duty.topSpeed"] input').first();
  await field.fill('0 r/min');
  await field.press('Enter');
  await page
    .getByText(/above zero/)
    .first()
    .waitFor(WAIT);
  await field.fill('2000 r/min');
  await field.press('Enter');
  await page.locator('.status', { hasText: 'saved' }).waitFor(WAIT);
  expect(await violations(page)).toEqual([]);
}, 240_000);
