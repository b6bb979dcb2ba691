/** Work through the screen: what fits and what not, a thread added and changed, a stroke run in time, the chart. */
import { expect, test } from 'vitest';
import { setStage, violations } from './stage.ts';

const on = setStage();

const HOME = '/refit/carriage-works-lathe/work';
const SLOW = { timeout: 90_000 };

test('a thread the control cannot cut shows its ways round; a spoilt tap runs in time', async () => {
  const page = await on.open(`${HOME}/thread-4`);
  await page.getByRole('heading', { name: 'Ways round' }).waitFor(SLOW);
  expect(await page.locator('.ways li').count()).toBeGreaterThan(2);
  await page.getByRole('link', { name: /Axle box M6, fast/ }).click();
  await page.getByRole('heading', { name: 'At the reversal' }).waitFor(SLOW);
  await page.getByRole('button', { name: 'Run the stroke' }).click();
  await page.getByText(/After the order to turn back it turns/).waitFor(SLOW);
  await page.locator('summary', { hasText: 'The same as a table' }).first().click();
  expect(await page.locator('#work-detail details table tr').count()).toBeGreaterThan(10);
  expect(await violations(page)).toEqual([]);
}, 240_000);

test('added by keyboard, answered, changed to nonsense, mended, taken off', async () => {
  const page = await on.open(HOME);
  await page.locator('.work-add').waitFor(SLOW);
  await page.locator('.work-add').getByLabel('Thread', { exact: true }).fill('M12');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'M12', exact: true }).waitFor(SLOW);
  await page.locator('summary', { hasText: 'what was asked' }).click();
  const speed = page.locator('#work-detail').getByLabel(/Spindle speed or cutting speed/);
  await speed.fill('fast');
  await speed.press('Enter');
  await page.locator('#work-detail .fault').first().waitFor(SLOW);
  await speed.fill('300 r/min');
  await speed.press('Enter');
  await page.locator('#work-detail .fault').waitFor({ state: 'detached', ...SLOW });
  await page
    .getByText(/At 300 r\/min every known link keeps up/)
    .first()
    .waitFor(SLOW);
  await page.getByRole('button', { name: 'Take this thread off the list' }).click();
  await page.getByRole('heading', { name: 'M12', exact: true }).waitFor({ state: 'detached', ...SLOW });
}, 240_000);

test('on a phone, in the dark, nothing goes sideways; the chart has its table', async () => {
  const page = await on.open('/refit/boatyard-mill/work/tap-2', {
    viewport: { width: 390, height: 844 },
    colorScheme: 'dark',
  });
  await page.getByRole('heading', { name: /For the wall/ }).waitFor(SLOW);
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
  ).toBe(0);
  await page.locator('.wall-table summary').click();
  expect(await page.locator('.wall-table tbody tr').count()).toBeGreaterThan(15);
  expect(await violations(page)).toEqual([]);
}, 240_000);
