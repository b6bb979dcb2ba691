/** The wiring through the screen: a wrong join is tried, understood, made and cut; diagrams, lists, paper, photos, hostile text. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { wired } from '../../engine/circuit/wiring/wired.fixture.ts';
import type { Change, Wiring } from '../../engine/refit/types.ts';
import { cut, setStage, violations } from './stage.ts';

const on = setStage(async () => {
  await record('carriage-works-lathe', bench());
  await record('boatyard-mill', bench());
});

/** Beside whatever the sample has: a control with outputs of 24 V, a drive with inputs of 5 V, a supply, a lamp, a strip. */
function bench(): readonly Change[] {
  const { devices, wires } = wired(
    [
      'A90 control output-level=24v pulse-axes=X',
      'T90 drive command=pulses input-level=opto-5v motor=brushed',
      'G90 supply volts=24_V current=5_A',
      'F90 fuse amps=4_A',
      'P90 lamp coil-volts=24_V coil-current=20_mA',
      'X90 strip ways=4',
    ],
    [
      'G90.plus F90.1',
      'F90.2 A90.plus',
      'G90.minus A90.minus',
      'A90.out1 X90.1',
      'X90.1 P90.x1',
      'P90.x2 G90.minus',
      'T90.STEP- G90.minus',
    ],
  );
  return [
    ...Object.values(devices).map((each): Change => ({ do: 'device', id: each.id, old: null, new: each })),
    ...Object.values(wires).map(
      (each): Change => ({
        do: 'wire',
        id: `bench-${each.id}`,
        old: null,
        new: { ...each, id: `bench-${each.id}` },
      }),
    ),
  ];
}

async function record(refit: string, changes: readonly Change[]): Promise<void> {
  const at = new URL(`/api/refits/${refit}`, on.server.address).href;
  const { head } = await (await fetch(at)).json();
  const answer = await fetch(`${at}/edits`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ who: 'test', basedOn: head, changes }),
  });
  if (!answer.ok) throw new Error(await answer.text());
}

const HOME = '/refit/carriage-works-lathe/wiring';
const choose = async (page: Page, end: 'From' | 'To', terminal: string): Promise<void> => {
  const part = page.locator('#wiring-join-part');
  await part.getByLabel(end, { exact: true }).fill(terminal);
  await part.getByRole('button', { name: new RegExp(`^${terminal.replaceAll(/[.+]/g, '\\$&')} `) }).click();
};
const looked = (page: Page) => page.locator('[data-device-row]').first().waitFor({ timeout: 60_000 });
const saved = (page: Page, words: string) => page.locator('.status', { hasText: words }).waitFor();

test('an output of 24 V on an input of 5 V: what would happen, the resistor that mends it, joined and cut', async () => {
  const page = await on.open(HOME);
  await looked(page);
  await choose(page, 'From', 'T90.STEP+');
  // What fits comes first; the 24 V output is among those that do not, with the reason.
  await page.locator('[data-fitting]').first().waitFor();
  await choose(page, 'To', 'A90.out2');
  const wouldBe = page.locator('[data-would-be]');
  await wouldBe.locator('[data-finding]', { hasText: 'resistor' }).first().waitFor();
  const said = await wouldBe.innerText();
  expect(said).toMatch(/fails/);
  expect(said).toMatch(/T90\.STEP\+/);
  expect(said).toMatch(/What would make it right:.*[\d.]+ ?k?Ω/);
  expect(said).toMatch(/main switch off and locked/);
  await wouldBe.getByRole('button', { name: 'Join them all the same' }).click();
  await saved(page, 'Saved: ');
  const finding = page.locator('.wiring-findings [data-finding]', { hasText: 'T90.STEP+' }).first();
  await finding.waitFor();

  // It is cut where it ends.
  await page.getByLabel('Look for a device, a terminal, a wire').fill('T90');
  await page.getByRole('button', { name: 'Open T90' }).click();
  const panel = page.locator('[data-device-panel="T90"]');
  await panel.locator('summary', { hasText: 'A90.out2' }).click();
  await panel.getByRole('button', { name: /^Cut wire/ }).click();
  await panel.locator('summary', { hasText: 'A90.out2' }).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await panel.locator('summary', { hasText: 'A90.out2' }).waitFor();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await panel.locator('summary', { hasText: 'A90.out2' }).waitFor({ state: 'detached' });
}, 180_000);

test('two terminals are picked on the drawing by keyboard; the drawing is redrawn and moved', async () => {
  const page = await on.open(`${HOME}/diagrams`);
  await page.locator('.wiring-viewer').waitFor({ timeout: 60_000 });
  const sheets = page.getByLabel('Diagram', { exact: true });
  expect(await sheets.locator('option').count()).toBeGreaterThan(2);
  for (const option of await sheets.locator('option').all()) {
    await sheets.selectOption((await option.getAttribute('value'))!);
    await page.getByRole('region', { name: `Diagram ${await option.innerText()}`, exact: true }).waitFor();
    const both = page.locator('[data-terminal="A90.out1"], [data-terminal="P90.x2"]');
    if ((await both.count()) > 1) break;
  }
  const terminal = (id: string) => page.locator(`[data-terminal="${id}"]`).first();
  await terminal('A90.out1').focus();
  await page.keyboard.press('Enter');
  await page.locator('#wiring-join-part strong', { hasText: 'A90.out1' }).waitFor();
  await terminal('P90.x2').focus();
  await page.keyboard.press('Enter');
  await page.locator('[data-would-be="A90.out1 P90.x2"]').waitFor();
  await page.getByRole('button', { name: 'Leave it' }).click();
  // Text lies where the layout left room for it: no letter is wider than was reckoned.
  const svg = page.locator('.wiring-diagram');
  const before = await svg.getAttribute('viewBox');
  await page.getByRole('button', { name: 'Larger' }).click();
  expect(await svg.getAttribute('viewBox')).not.toBe(before);
  await svg.focus();
  await page.keyboard.press('0');
  expect(await svg.getAttribute('viewBox')).toBe(before);
  expect(await overlapping(page)).toEqual([]);
}, 180_000);

/** Texts of the drawing that lie on each other as the browser draws them. */
const overlapping = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll<SVGTextElement>('.wiring-diagram text')].map((text) => ({
      words: text.textContent,
      box: text.getBoundingClientRect(),
    }));
    return boxes.flatMap((a, at) =>
      boxes.slice(at + 1).flatMap((b) => {
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        // Rectangles of letters hold room above and below that stays empty.
        return wide > 0.5 && high > 0.35 * Math.min(a.box.height, b.box.height)
          ? [`${a.words} on ${b.words}`]
          : [];
      }),
    );
  });

test('what a terminal really is: said to give 5 V it fails at once, and fits again when set back', async () => {
  const page = await on.open(HOME);
  await looked(page);
  await page.getByLabel('Look for a device, a terminal, a wire').fill('A90');
  await page.getByRole('button', { name: 'Open A90', exact: true }).click();
  await page.getByRole('button', { name: /^Open A90\.out1: / }).click();
  const panel = page.locator('[data-terminal-panel="A90.out1"]');
  const field = (setting: string) => panel.locator(`[data-field="${setting}"]`);
  expect(await field('high').innerText()).toMatch(/Taken as 21 V: follows from .* of A90/);
  expect(await panel.locator('[data-said]', { hasText: 'fails' }).count()).toBe(0);
  await field('high').locator('input').fill('5 kg');
  await field('high').locator('input').press('Enter');
  await field('high')
    .getByText(/^Lowest voltage when high: .*such as/)
    .waitFor();
  for (const setting of ['high', 'top']) {
    await field(setting).locator('input').fill('5 V');
    await field(setting).locator('input').press('Enter');
    await field(setting).getByText('Said of this terminal.').waitFor();
  }
  await panel.locator('[data-said]', { hasText: 'fails' }).first().waitFor();
  expect(await violations(page)).toEqual([]);
  await panel.getByRole('button', { name: 'Set A90.out1 back to the usual' }).press('Enter');
  await panel.locator('[data-said]', { hasText: 'fails' }).waitFor({ state: 'detached' });
  await field('high')
    .getByText(/^Taken as 21 V/)
    .waitFor();
}, 120_000);

test('lists are read, saved as CSV and shown as paper; the diagrams too', async () => {
  const page = await on.open(`${HOME}/lists`);
  await page.locator('[data-list="wires"] tbody tr').first().waitFor({ timeout: 60_000 });
  for (const [name, id] of [
    ['Cables', 'cables'],
    ['Terminal strips', 'strips'],
    ['Labels', 'labels'],
    ['Pins of plugs and devices', 'pins'],
    ['Ring it out', 'ring-out'],
  ] as const) {
    await page.getByRole('button', { name, exact: true }).click();
    await page.locator(`[data-list="${id}"]`).waitFor({ timeout: 60_000 });
  }
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('ring-out.csv');
  await page.getByRole('link', { name: 'Look at it on paper' }).click();
  await page.locator('.wiring-paper table').first().waitFor();
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print, or save as PDF' }).isVisible()).toBe(false);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.length).toBeGreaterThan(5_000);
  await page.emulateMedia({ media: 'screen' });
  await page.goto(new URL(`${HOME}/print/diagrams`, on.server.address).href);
  await page.locator('.wiring-sheet svg').first().waitFor({ timeout: 60_000 });
  expect(await page.locator('.wiring-sheet').count()).toBeGreaterThan(1);
}, 180_000);

test('a terminal is pinned to where a photo shows it, by a click and by keys, and taken off', async () => {
  const page = await on.open(HOME);
  await looked(page);
  await page.getByLabel('Look for a device, a terminal, a wire').fill('X90');
  await page.getByRole('button', { name: 'Open X90' }).click();
  const panel = page.locator('[data-device-panel="X90"]');
  await panel.locator('summary', { hasText: 'Photos of its terminals' }).click();
  const square = await page.screenshot({ clip: { x: 0, y: 0, width: 200, height: 100 } });
  await panel
    .locator('input[type="file"]')
    .last()
    .setInputFiles({ name: 'strip.png', mimeType: 'image/png', buffer: square });
  const photo = panel.locator('button.wiring-photo');
  await photo.locator('img').waitFor();
  await page.waitForFunction(() => {
    const image = document.querySelector<HTMLImageElement>('.wiring-photo img');
    return image?.complete && image.naturalWidth > 0;
  });
  await photo.locator('img').click({ position: { x: 50, y: 25 } });
  await panel.locator('.wiring-pin').waitFor();
  const shares = await panel
    .locator('.wiring-pin')
    .evaluate((pin: HTMLElement) => [Number.parseFloat(pin.style.left), Number.parseFloat(pin.style.top)]);
  // A click falls on whole pixels of a picture of two hundred.
  for (const share of shares) expect(Math.abs(share - 25)).toBeLessThanOrEqual(2);
  await panel.getByLabel('1 from the left, %').press('ArrowRight');
  await page.waitForFunction(() => document.querySelector<HTMLElement>('.wiring-pin')?.style.left === '26%');
  await panel.getByRole('button', { name: 'Take the pin of 1 off' }).click();
  await panel.locator('.wiring-pin').waitFor({ state: 'detached' });
}, 120_000);

test.each(['light', 'dark'] as const)(
  'a phone, %s: nothing cut, nothing for axe, a wrong setting answered in words',
  async (colorScheme) => {
    const page = await on.open('/refit/boatyard-mill/wiring', {
      viewport: { width: 390, height: 844 },
      colorScheme,
    });
    await looked(page);
    await page.getByLabel('Look for a device, a terminal, a wire').fill('G90');
    await page.getByRole('button', { name: 'Open G90' }).click();
    const panel = page.locator('[data-device-panel="G90"]');
    const field = panel.getByLabel(/^(Rated )?[Vv]olt|^[Vv]oltage/).first();
    await field.fill('5 kg');
    await field.press('Enter');
    await panel.locator('.survey-field .bad').first().waitFor();
    await field.press('Escape');
    expect(await violations(page)).toEqual([]);
    expect(await cut(page)).toEqual([]);
    await page.getByRole('link', { name: 'Diagrams', exact: true }).click();
    await page.locator('.wiring-viewer').waitFor({ timeout: 60_000 });
    expect(await violations(page)).toEqual([]);
    expect(await cut(page)).toEqual([]);
    await page.getByRole('link', { name: 'Lists', exact: true }).click();
    await page.locator('[data-list]').waitFor({ timeout: 60_000 });
    expect(await violations(page)).toEqual([]);
    expect(await cut(page)).toEqual([]);
  },
  180_000,
);

// Last, since it takes the wiring out first.
test('a proposal asks, is answered in place by keyboard, and is made anew; nonsense is refused with an example', async () => {
  await bare('boatyard-mill');
  const page = await on.open('/refit/boatyard-mill/wiring', { viewport: { width: 390, height: 844 } });
  await page.getByRole('button', { name: 'Propose the wiring' }).press('Enter');
  const question = (id: string) => page.locator(`[data-question="${id}"]`);
  const homes = question('wiring.homes');
  await homes.waitFor({ timeout: 60_000 });
  expect(await homes.innerText()).toContain('Nothing of this is laid before it is told.');
  await homes.getByRole('button', { name: 'Answer' }).press('Enter');
  await homes.getByText('Choose one of the answers.').waitFor();
  await homes.locator('select').selectOption('none');
  await homes.getByRole('button', { name: 'Answer' }).press('Enter');
  await homes.waitFor({ state: 'detached', timeout: 60_000 });
  // The next question has the keyboard.
  expect(await page.evaluate(() => document.activeElement?.closest('[data-question]') !== null)).toBe(true);
  await page.getByText(/^1 of \d+ answered$/).waitFor();
  // Both contactors are asked once; what cannot be is refused before anything is recorded.
  const coils = question('contactor in the stop circuit: coil-current');
  const number = coils.getByRole('textbox', { name: /^Each contactor \(K1 and K2\): current of the coil\?/ });
  expect(await coils.innerText()).toMatch(/wires? (is|are) not laid before it is told/);
  await number.fill('5 kg');
  await number.press('Enter');
  await coils.locator('.bad', { hasText: 'such as' }).waitFor();
  // Each by itself, where they are not alike after all.
  await coils.getByText('Each by itself: 2').click();
  expect(await violations(page)).toEqual([]);
  expect(await cut(page)).toEqual([]);
  const alone = question('K2.coil-current');
  await alone.getByRole('textbox').fill('0.2 A');
  await alone.getByRole('textbox').press('Enter');
  await alone.waitFor({ state: 'detached', timeout: 60_000 });
  // The other stays asked, now by itself; a plate with two numbers is answered at once.
  const first = question('K1.coil-current');
  await first.getByRole('textbox').fill('0.1 A');
  await first.getByRole('textbox').press('Enter');
  await first.waitFor({ state: 'detached', timeout: 60_000 });
  const plate = page
    .locator('[data-question]', { hasText: 'what its main contacts may switch, a.c.' })
    .first();
  await plate
    .getByRole('textbox', { name: /^A\.c\. voltage/ })
    .first()
    .fill('400 V');
  await plate
    .getByRole('textbox', { name: /^A\.c\. current/ })
    .first()
    .fill('9 A');
  await plate.getByRole('button', { name: 'Answer' }).first().press('Enter');
  await plate.waitFor({ state: 'detached', timeout: 60_000 });
  await page.getByText(/^3 of \d+ answered$/).waitFor();
  await page.getByRole('button', { name: /^Record what waits for nothing: \d+ wires/ }).click();
  await saved(page, 'Saved: ');
  // Questions stay open, and with them their wires.
  await page.getByText(/\d+ wires wait for an answer and stay unmade/).waitFor();
}, 180_000);

/** Takes all wiring of a refit out, as one edit. */
async function bare(refit: string): Promise<void> {
  const at = new URL(`/api/refits/${refit}`, on.server.address).href;
  const { devices, wires, cables, settings } = (await (await fetch(at)).json()).refit.wiring as Wiring;
  await record(refit, [
    ...Object.values(wires).map(({ id }): Change => ({ do: 'wire', id, old: wires[id]!, new: null })),
    ...Object.values(cables).map(({ id }): Change => ({ do: 'cable', id, old: cables[id]!, new: null })),
    ...Object.values(devices).map(({ id }): Change => ({ do: 'device', id, old: devices[id]!, new: null })),
    ...Object.entries(settings).map(
      ([setting, old]): Change => ({ do: 'wiring-setting', setting, old, new: null }),
    ),
  ]);
}
