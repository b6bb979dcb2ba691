/** Every page, wide and phone, light and dark: axe finds nothing, nothing is cut, verdicts do not make the page jump. */
import { describe, expect, test } from 'vitest';
import { cut, setStage, violations } from './stage.ts';

const on = setStage();

const PAGES: readonly (readonly [path: string, ready: string])[] = [
  ['/', '.card'],
  ['/new', 'form'],
  ['/threads', '.thread-profile svg'],
  ['/refit/carriage-works-lathe/know', '.cards li'],
  ['/refit/carriage-works-lathe/fit/X', '.formula math'],
  ['/refit/boatyard-mill/fit/Z', '.formula math'],
  ['/refit/carriage-works-lathe/move/X', '.move-chart'],
  ['/refit/boatyard-mill/fit/machine', '.finding'],
  ['/refit/carriage-works-lathe/keep', '.keep li'],
  ['/refit/carriage-works-lathe/worth', '.range'],
  ['/refit/carriage-works-lathe/fault', '.taps li'],
  ['/refit/carriage-works-lathe/stop', '.stop-findings li'],
  ['/refit/boatyard-mill/stop', '.stop-findings li'],
  ['/refit/boatyard-mill/evidence', '.bench-cards'],
  ['/refit/boatyard-mill/evidence/back-emf?for=X.motor', '.bench-hazards'],
  ['/refit/boatyard-mill/habits', '.field'],
  ['/refit/boatyard-mill/history', 'table'],
];

const WIDE = { width: 1280, height: 900 };
const PHONE = { width: 390, height: 844 };
/** Colours come from one list of pairs, so each page is seen once in each; one is seen in all four windows. */
const WINDOWS = [
  { window: 'wide, light', viewport: WIDE, colorScheme: 'light', pages: PAGES },
  { window: 'phone, dark', viewport: PHONE, colorScheme: 'dark', pages: PAGES },
  { window: 'wide, dark', viewport: WIDE, colorScheme: 'dark', pages: PAGES.slice(4, 5) },
  { window: 'phone, light', viewport: PHONE, colorScheme: 'light', pages: PAGES.slice(4, 5) },
] as const;

for (const { window, viewport, colorScheme, pages } of WINDOWS) {
  describe(window, () => {
    for (const [path, ready] of pages) {
      test(path, async () => {
        const page = await on.open(path, { viewport, colorScheme });
        await page.locator(ready).first().waitFor();
        expect(await violations(page)).toEqual([]);
        expect(await cut(page)).toEqual([]);
        expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|\[object/);
      }, 120_000);
    }
  });
}

test('a new verdict does not make the page jump', async () => {
  const page = await on.open('/refit/carriage-works-lathe/fit/X');
  await page.getByRole('button', { name: /^Duty of the axis/ }).click();
  const field = page.locator('[data-path="X.duty.rapid"] input');
  await field.scrollIntoViewIfNeeded();
  const before = await field.boundingBox();
  await field.fill('5.2 m/min');
  await page.waitForTimeout(300);
  const after = await field.boundingBox();
  expect(Math.abs((after?.y ?? 0) - (before?.y ?? 0))).toBeLessThan(30);
}, 120_000);
