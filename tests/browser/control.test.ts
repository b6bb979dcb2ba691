/** Control and auxiliaries through the screen: answer a row, add an auxiliary, mend the planted hang. */
import { expect, test } from 'vitest';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();

const LATHE = '/refit/carriage-works-lathe';

test('a row that nobody knew is answered, and the candidate fits', async () => {
  const page = await on.open(`${LATHE}/control`);
  const cell = page.getByRole('button', { name: /four-axis control.*drives powered tools: unknown/ });
  await cell.click();
  const panel = page.getByRole('region', { name: /drives powered tools, four-axis/ });
  expect(await panel.innerText()).toContain('Cross hole M5 with a driven tool');
  await panel.getByLabel('Drives powered tools', { exact: true }).selectOption('yes');
  await page.getByRole('button', { name: /four-axis control.*drives powered tools: fits/ }).waitFor();
  await page.getByRole('button', { name: /two-axis pulse control, cuts taper threads: fails/ }).waitFor();
  expect(await violations(page)).toEqual([]);
}, 120_000);

test('the planted hang of the turret is shown, and gone with a time-out; a text that is none is refused', async () => {
  const page = await on.open(`${LATHE}/auxiliaries`);
  const hang = page.locator('[data-finding="hang forward.turn"]');
  await hang.waitFor({ timeout: 60_000 });
  expect(await page.locator('.control-chart svg').textContent()).toContain('no time-out');
  const field = page.getByLabel('Time-out of turning', { exact: true });
  await field.fill('soon');
  await field.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'time-out of turning' }).waitFor();
  await field.fill('15 s');
  await field.press('Enter');
  await hang.waitFor({ state: 'detached', timeout: 60_000 });
  expect(await violations(page)).toEqual([]);
}, 180_000);

test('an auxiliary is added and taken out; on a phone, dark, nothing is cut off', async () => {
  const page = await on.open('/refit/boatyard-mill/auxiliaries', {
    viewport: { width: 360, height: 740 },
    colorScheme: 'dark',
  });
  await page.getByLabel('Add').selectOption('door');
  await page.getByRole('button', { name: 'Add it' }).click();
  await page.getByRole('heading', { name: 'Door with a lock: its steps' }).waitFor();
  expect(await cut(page)).toEqual([]);
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take Door with a lock out' }).click();
  await page.getByRole('heading', { name: 'Door with a lock: its steps' }).waitFor({ state: 'detached' });
  await page.goto(new URL('/refit/boatyard-mill/control', page.url()).href);
  await page.getByRole('heading', { name: 'Row by row' }).waitFor();
  expect(await cut(page)).toEqual([]);
  expect(await violations(page)).toEqual([]);
}, 180_000);
