/** Every field of the screen with what no field can take: each says what is wrong, and nothing is recorded. */
import { expect, test } from 'vitest';
import { setStage } from './stage.ts';

const on = setStage();

/** Texts that no quantity and no curve can be, with a word for each. */
const HOSTILE: readonly (readonly [what: string, text: string])[] = [
  ['words', 'about so much'],
  ['wrong dimension', '5 kg·K·A'],
  ['markup', '<img src=x onerror=alert(1)>'],
  ['not a number', 'NaN'],
  ['too large', '1e999'],
  ['far too long', 'x'.repeat(100_000)],
];

interface Answered {
  readonly path: string;
  readonly what: string;
  readonly said: string;
}

/** Types each text into each field of the page and reads what is said. Runs in the page. */
async function typeEverywhere(texts: readonly (readonly [string, string])[]): Promise<Answered[]> {
  const rest = () => new Promise((done) => setTimeout(done, 4));
  const all: Answered[] = [];
  for (const field of document.querySelectorAll<HTMLElement>('.field[data-path]')) {
    const entry = field.querySelector<HTMLInputElement | HTMLTextAreaElement>('input:not([type]), textarea');
    // A note may be any text.
    if (!entry || (entry instanceof HTMLTextAreaElement && entry.placeholder === '')) continue;
    const prototype = entry instanceof HTMLInputElement ? HTMLInputElement : HTMLTextAreaElement;
    const put = Object.getOwnPropertyDescriptor(prototype.prototype, 'value')!.set!;
    const type = (text: string): void => {
      put.call(entry, text);
      entry.dispatchEvent(new Event('input', { bubbles: true }));
    };
    const said = () => field.querySelector('.said .bad')?.textContent ?? '';
    for (const [what, text] of texts) {
      const before = said();
      type(text);
      for (let tries = 0; tries < 500 && (said() === '' || said() === before); tries++) await rest();
      all.push({ path: field.dataset.path!, what, said: said() });
    }
    entry.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    for (let tries = 0; tries < 500 && said() !== ''; tries++) await rest();
  }
  return all;
}

test('every fact of an axis and of the machine', async () => {
  const page = await on.open('/refit/boatyard-mill/know');
  await page.getByRole('heading', { name: 'Everything, place by place' }).waitFor();
  for (const group of ['Z axis', 'Whole machine']) {
    const section = page.locator('.sheet', { has: page.getByRole('heading', { name: group, exact: true }) });
    for (const each of await section.locator('> details > summary').all()) await each.click();
    for (const each of await section.getByText('more that decide nothing now').all()) await each.click();
  }
  const answers = await page.evaluate(typeEverywhere, HOSTILE);
  const paths = new Set(answers.map(({ path }) => path));
  expect(paths.size).toBeGreaterThan(80);
  expect(answers.filter(({ said }) => said === '')).toEqual([]);
  expect(
    answers.filter(
      ({ said }) => said.length > 600 || /NaN|undefined|\[object/.test(said.replace('“NaN”', '')),
    ),
  ).toEqual([]);
  expect(await page.locator('.status').innerText()).not.toContain('Saved');
}, 300_000);

test('every habit', async () => {
  const page = await on.open('/refit/boatyard-mill/habits');
  const fields = page.locator('.field input');
  await fields.first().waitFor();
  const count = await fields.count();
  expect(count).toBeGreaterThan(15);
  for (let at = 0; at < count; at++) {
    const field = fields.nth(at);
    for (const text of ['lots', '-1e308', '<b>2</b>', '5 kg·K·A']) {
      await field.fill(text);
      await field.press('Enter');
      const said = page.locator('.field').nth(at).locator('.said .bad');
      await said.waitFor();
      expect((await said.innerText()).length).toBeLessThan(600);
    }
  }
  expect(await page.locator('.status').innerText()).not.toContain('Saved');
  expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|\[object/);
}, 300_000);

test('every field of a new refit', async () => {
  const page = await on.open('/new');
  await page.getByRole('button', { name: 'a lathe' }).click();
  const name = page.getByLabel('What you call it');
  const refused = async (label: string, text: string, mend: string): Promise<void> => {
    await page.getByLabel(label).fill(text);
    await page.getByRole('button', { name: /^Start/ }).click();
    await page.getByRole('alert').waitFor();
    expect((await page.getByRole('alert').innerText()).length).toBeLessThan(600);
    expect(new URL(page.url()).pathname).toBe('/new');
    await page.getByLabel(label).fill(mend);
  };
  await refused('What you call it', 'x'.repeat(5000), '');
  await refused('A line about it', 'x'.repeat(1_000_000), '');
  for (const axes of [
    '',
    'X, X',
    '<b>',
    'X'.repeat(5000),
    '1, 2',
    'A,B,C,D,E,F,G,H,I,J,K,L,M,N,O,P,Q,R,S,T,U,V,W,X,Y,Z',
  ])
    await refused('Its axes', axes, 'X, Z');
  await name.fill('<script>alert(1)</script>');
  await page.getByRole('button', { name: /^Start/ }).click();
  await page.getByText('<script>alert(1)</script>').first().waitFor();
  expect(on.faults.splice(0).filter((fault) => !fault.includes('status of 4'))).toEqual([]);
}, 120_000);
