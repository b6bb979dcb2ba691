import { expect, test } from 'vitest';
import { PARTS } from '../../parts/index.ts';
import { KEEPS } from '../../parts/survey/index.ts';
import { blankRefit } from '../blank.ts';
import { itemFound, keepFound } from '../survey-set.ts';
import type { Refit } from '../types.ts';
import { surveyDocument } from './document.ts';
import { element, toHtml } from './node.ts';
import { surveySheets } from './survey-sheets.ts';

const made = blankRefit({ id: 'a', name: 'Lathe', machine: 'lathe', axes: ['X'] });
if (!made.ok) throw new Error(made.problem.message);
const LATHE: Refit = made.value;
const count = (text: string, what: string): number => text.split(what).length - 1;

test('derived: a block for every part in a place, its unit in every box, and a drawing of where to look', () => {
  const html = toHtml(surveySheets(LATHE));
  for (const name of ['motor', 'screw', 'slide', 'drive', 'feedback', 'reduction'])
    expect(html).toContain(`<h3>X axis, ${name}</h3>`);
  const { resistance } = PARTS.motor!.facts;
  expect(html).toContain(
    `<span class="name">W${resistance!.name.slice(1)}</span><span class="known"></span><span class="unit">Ω</span>`,
  );
  expect(count(html, '<svg')).toBeGreaterThan(15);
  expect(count(html, '<tr>')).toBe(1 + KEEPS.length + 1 + 18);
  expect(toHtml(surveySheets(LATHE, 'in'))).toContain('<span class="unit">thou</span>');
});

test('derived: every fact of a part that can be found at the machine has its box, whatever it is called', () => {
  const html = toHtml(surveySheets(LATHE));
  for (const name of [
    'Teeth on the motor',
    'Teeth on the screw',
    'Secondary voltage at rated load',
    'Bus capacitance',
  ])
    expect(html).toContain(`<span class="name">${name}</span>`);
  // But for prices, and for what is chosen at a desk.
  const asked = Object.values(PARTS.screw!.facts).filter(
    ({ kind, name }) => kind !== 'text' || !/price|cost/.test(name),
  ).length;
  const screw = html.slice(html.indexOf('<h3>X axis, screw</h3>'));
  const block = screw.slice(0, screw.indexOf('</article>'));
  // One box more for notes, one less for the load factor.
  expect(count(block, 'class="box')).toBe(asked + 1 - 1 + 1); // and the grid of boxes itself
});

test('derived: a part still to be bought has no boxes to fill', () => {
  const drive = LATHE.parts['x-drive']!;
  const fact = { value: { kind: 'text' as const, text: '210 EUR' }, basis: 'told' as const };
  const html = toHtml(
    surveySheets({ ...LATHE, parts: { ...LATHE.parts, 'x-drive': { ...drive, facts: { price: fact } } } }),
  );
  const block = html.slice(html.indexOf('<h3>X axis, drive</h3>'));
  expect(block.slice(0, block.indexOf('</article>'))).toContain('To be bought');
  expect(block.slice(0, block.indexOf('</article>'))).not.toContain('class="boxes"');
});

test('derived: what is known stands in its box and its square is ticked', () => {
  const fact = { value: { kind: 'quantity' as const, text: '1.32 ± 0.06 ohm' }, basis: 'measured' as const };
  const brushed = { value: { kind: 'choice' as const, option: 'brushed' }, basis: 'plate' as const };
  const motor = { ...LATHE.parts['x-motor']!, condition: 'worn' as const };
  let refit: Refit = {
    ...LATHE,
    parts: { ...LATHE.parts, 'x-motor': { ...motor, facts: { resistance: fact, type: brushed } } },
  };
  const kept = keepFound(refit, 'ladder', { state: 'kept', note: 'Blue folder' });
  const coolant = itemFound(refit, 'coolant', { state: 'none' });
  if (kept.do !== 'keep' || coolant.do !== 'survey') throw new Error('another change');
  refit = { ...refit, keeps: { ladder: kept.new! }, survey: { coolant: coolant.new! } };
  const html = toHtml(surveySheets(refit));
  expect(html).toContain('<span class="known">1.32 ± 0.06 ohm (measured)</span>');
  expect(html).toContain('Blue folder');
  for (const words of ['worn', 'DC motor with brushes', 'none here'])
    expect(html).toContain(`✕</span> ${words}<span class="hidden"> (ticked)</span>`);
  // Of four states, one kind, one thing kept and one item: four squares ticked.
  expect(count(html, '✕')).toBe(4);
});

test('derived: nothing a person typed is ever markup', () => {
  const name = `<script>alert(1)</script>"'&`;
  const html = surveyDocument({ ...LATHE, name });
  expect(html).not.toContain('<script>');
  expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;&quot;&#39;&amp;');
  expect(html).toContain("default-src 'none'");
  expect(toHtml(element('a', { title: '">' }, '<b>'))).toBe('<a title="&quot;&gt;">&lt;b&gt;</a>');
});
