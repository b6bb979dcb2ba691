import { expect, test } from 'vitest';
import { parseUnit } from '../../quantity/index.ts';
import { PARTS } from '../index.ts';
import { itemsFor, KEEPS, SKETCHES, SURVEY_ITEMS } from './index.ts';

const ID = /^[a-z][A-Za-z0-9-]{0,40}$/;

test('derived: ids are permanent names, each once; every sentence ends', () => {
  for (const list of [SURVEY_ITEMS, KEEPS]) {
    const ids = list.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(ID);
  }
  for (const { id, look, caution } of SURVEY_ITEMS)
    for (const text of [look, caution ?? 'None.']) expect(text, id).toMatch(/[.]$/);
  for (const { id, why, how, caution } of KEEPS)
    for (const text of [why, how, caution ?? 'None.']) expect(text, id).toMatch(/[.]$/);
  for (const { id, what } of KEEPS) expect(what.length, id).toBeLessThanOrEqual(120);
});

test('derived: every question can be asked: its unit is one that is read, a choice has two answers at least', () => {
  for (const item of SURVEY_ITEMS) {
    expect(Object.keys(item.questions).length, item.id).toBeGreaterThan(0);
    for (const [id, question] of Object.entries(item.questions)) {
      expect(id, item.id).toMatch(ID);
      if (question.kind === 'quantity') expect(parseUnit(question.unit).ok, `${item.id}.${id}`).toBe(true);
      if (question.kind === 'choice') expect(Object.keys(question.options).length).toBeGreaterThan(1);
    }
  }
});

test('derived: every sketch that is named is there, every kind of thing has one, and words stay in the box', () => {
  for (const { sketch } of SURVEY_ITEMS) if (sketch) expect(SKETCHES).toHaveProperty(sketch);
  for (const kind of Object.keys(PARTS))
    if (!['axis-duty', 'spindle-duty', 'job'].includes(kind)) expect(SKETCHES).toHaveProperty(kind);
  for (const [id, { strokes, labels }] of Object.entries(SKETCHES)) {
    for (const stroke of strokes) expect(stroke, id).toMatch(/^M[-0-9 .MLHVAZmlhvaz]+$/);
    for (const [x, y, text] of labels) {
      expect(x, `${id} ${text}`).toBeGreaterThanOrEqual(0);
      // At 8 px a letter takes about 4.6.
      expect(x + 4.6 * text.length, `${id} ${text}`).toBeLessThanOrEqual(202);
      expect(y, `${id} ${text}`).toBeLessThanOrEqual(120);
    }
  }
});

test('derived: a mill has no tailstock and a lathe no tool clamp; the battery comes first of what to keep', () => {
  const ids = (machine: 'lathe' | 'mill' | 'other') => itemsFor(machine).map(({ id }) => id);
  expect(ids('mill')).not.toContain('tailstock');
  expect(ids('lathe')).not.toContain('tool-clamp');
  expect(ids('other')).toEqual(SURVEY_ITEMS.map(({ id }) => id));
  expect(KEEPS[0]!.id).toBe('battery');
  expect(KEEPS[0]!.caution).toMatch(/lost the moment the battery is out/);
});
