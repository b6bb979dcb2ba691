/** An axis of a sample moves on the screen; a gain is dragged until the loop swings, and the page says so. */
import { expect, test } from 'vitest';
import { setStage } from './stage.ts';

const on = setStage();

test('a servo axis: moved, a gain dragged into instability, gains to begin with, kept to compare', async () => {
  const page = await on.open('/refit/carriage-works-lathe/move/Z');
  const says = page.locator('.says');
  await says.getByText('behind its command').first().waitFor({ timeout: 60_000 });
  expect(await says.innerText()).not.toMatch(/swing|unstable/i);
  await page.getByText('Will the loop hold still?').waitFor();
  await page.getByText('phase margin').waitFor();
  await page.getByRole('button', { name: 'Keep this to compare' }).click();

  const slider = page.getByRole('slider', { name: 'Derivative gain' });
  await slider.focus();
  await slider.press('End');
  await expect.poll(() => says.innerText(), { timeout: 60_000 }).toMatch(/is unstable|grows|swings/i);
  await expect
    .poll(() => page.locator('section', { has: page.getByText('Will the loop hold still?') }).innerText())
    .toMatch(/swings by itself|does not come to rest/);
  await page
    .getByRole('button', { name: /^Back to/ })
    .first()
    .click();
  await expect
    .poll(() => says.locator('.sayings').first().innerText(), { timeout: 60_000 })
    .not.toMatch(/unstable|swings/i);

  const speed = page.getByLabel('Speed', { exact: true });
  await speed.fill('5 kg');
  await page.locator('#move-speed-said .bad').waitFor();
  await speed.fill('200 in/min');
  await expect.poll(() => page.locator('#move-speed-said').innerText()).toBe('');
  expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|\[object/);
}, 240_000);

test('the salvaged servo against the stepper on offer, in one plot', async () => {
  const page = await on.open('/refit/carriage-works-lathe/move/X');
  const says = page.locator('.says');
  await says.getByText('behind its command').first().waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Keep this to compare' }).click();
  const was = await says.locator('.sayings').first().innerText();
  await page.getByLabel('Motor', { exact: true }).selectOption({ index: 1 });
  await expect.poll(() => says.locator('.sayings').first().innerText(), { timeout: 60_000 }).not.toBe(was);
  expect(await says.locator('.sayings').nth(1).innerText()).toBe(was);
  await page.locator('.trace.other').first().waitFor({ state: 'attached' });
}, 240_000);

test('a stepper axis goes round a circle, and a thousand of it can be stopped on the way', async () => {
  const page = await on.open('/refit/boatyard-mill/move/X');
  await page.locator('.says').getByText('behind its command').first().waitFor({ timeout: 60_000 });
  await page.getByLabel('Move', { exact: true }).selectOption('circle');
  await page.getByText('The circle is out of round').waitFor({ timeout: 60_000 });
  await page.getByLabel('Move', { exact: true }).selectOption('rapid');
  await page.getByRole('button', { name: /^Move 1000/ }).click();
  await page.getByLabel('Axes moved').waitFor();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await page.getByRole('button', { name: /^Move 1000/ }).waitFor();
}, 240_000);

test('an axis of which too little is known says what it lacks', async () => {
  const page = await on.open('/new');
  await page.getByRole('button', { name: /^Start/ }).click();
  await page.getByRole('heading', { name: 'What should you find out next?' }).waitFor();
  await page.getByRole('link', { name: 'Fit', exact: true }).click();
  await page.getByRole('link', { name: 'Move', exact: true }).click();
  await page.getByRole('heading', { name: 'It cannot be moved yet' }).waitFor();
  await page.getByText('Kind of motor of the X motor').waitFor();
}, 120_000);
