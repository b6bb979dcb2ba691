import { describe, expect, test } from 'vitest';
import { KEEPS, surveyItem } from '../parts/survey/index.ts';
import { applyEdit } from './edit.ts';
import { itemProblem, readAnswer } from './read-answer.ts';
import { SAMPLE } from './sample.fixture.ts';
import { surveyOf } from './survey.ts';
import { itemFound, keepFound, newKeepId, newTagId, partFound, tagFound } from './survey-set.ts';
import { tagsCsv } from './tags-csv.ts';
import type { Change, Refit, Tag } from './types.ts';

const changed = (refit: Refit, ...changes: (Change | undefined)[]): Refit => {
  const done = applyEdit(refit, { changes: changes.filter((each) => each !== undefined) });
  if (!done.ok) throw new Error(done.problem.message);
  return done.value;
};
const coolant = surveyItem('coolant')!;

describe('how far a survey is', () => {
  test('derived: parts that fill a place count, wishes, the workshop and options do not', () => {
    const { parts, shares } = surveyOf(SAMPLE);
    expect(parts.map(({ at, looked }) => [at, looked])).toEqual([
      ['X.motor', false],
      ['X.screw', true],
    ]);
    expect(shares.parts).toEqual({ done: 1, all: 2 });
    const unsure = changed(SAMPLE, partFound(SAMPLE, 'x-screw', { condition: 'unknown' }));
    expect(surveyOf(unsure).shares.parts.done).toBe(0);
    expect(partFound(SAMPLE, 'constructor', { condition: 'dead' })).toBeUndefined();
  });

  test('derived: a conductor has two ends; each state counts those that carry a tag', () => {
    const states: Tag['state'][] = ['untagged', 'one-end', 'both-ends', 'both-ends'];
    let refit: Refit = { ...SAMPLE, tags: {} };
    for (const [n, state] of states.entries())
      refit = changed(
        refit,
        tagFound(refit, newTagId(refit), { tag: `${10 - n}`, state, there: n ? 'X2' : ' ' }),
      );
    const { shares, tags } = surveyOf(refit);
    expect(shares.ends).toEqual({ done: 0 + 1 + 2 + 2, all: 8 });
    expect(shares.traced).toEqual({ done: 3, all: 4 });
    // Sorted as people count: 7, 8, 9, 10.
    expect(tags.map(({ tag }) => tag)).toEqual(['7', '8', '9', '10']);
    expect(Object.keys(refit.tags)).toEqual(['t-1', 't-2', 't-3', 't-4']);
  });

  test('derived: what to keep is the usual list and what was added; “not there” is done as well', () => {
    let refit = changed(SAMPLE, keepFound(SAMPLE, 'ladder', { state: 'not-there' }));
    refit = changed(refit, keepFound(refit, newKeepId(refit), { what: 'Hour meter', state: 'kept' }));
    const { keeps, shares } = surveyOf(refit);
    expect(shares.keeps).toEqual({ done: 2, all: KEEPS.length + 1 });
    expect(keeps.at(-1)).toMatchObject({ id: 'k-1', what: 'Hour meter', done: true });
    expect(refit.keeps.ladder!.what).toBe('Ladder or logic program');
  });

  test('derived: an item stays on the list when the machine is called something else', () => {
    const refit = changed(SAMPLE, itemFound(SAMPLE, 'tailstock', { state: 'worn' }), {
      do: 'machine',
      old: 'lathe',
      new: 'mill',
    });
    const items = surveyOf(refit).items;
    expect(items.find(({ spec }) => spec.id === 'tailstock')?.looked).toBe(true);
    expect(items.some(({ spec }) => spec.id === 'turret')).toBe(false);
  });

  test('derived: setting one thing leaves the others, and undoing leaves nothing', () => {
    const first = itemFound(SAMPLE, 'coolant', { note: 'Stinks.' });
    expect(first).toMatchObject({ new: { state: 'works', photos: ['pump.png'], note: 'Stinks.' } });
    const fresh = tagFound(SAMPLE, 't-7', { tag: '7' });
    const made = changed(SAMPLE, fresh);
    expect(changed(made, { ...fresh, old: fresh.new, new: fresh.old } as Change)).toEqual(SAMPLE);
  });
});

describe('answers', () => {
  test('derived: are read by their question, kept as typed', () => {
    expect(readAnswer(coolant, 'supply', ' 400 V ')).toEqual({ ok: true, value: '400 V' });
    expect(readAnswer(coolant, 'kindOfVoltage', 'three')).toEqual({ ok: true, value: 'three' });
    expect(readAnswer(coolant, 'supply', '')).toEqual({ ok: true, value: '' });
    expect(readAnswer(coolant, 'commands', 'wire 31')).toMatchObject({ ok: true });
    for (const [id, text, says] of [
      ['supply', '400 kg', /kg/],
      ['supply', 'lots', /number/],
      ['kindOfVoltage', 'thre', /Did you mean “three”/],
      ['colour', 'red', /no question about the coolant called “colour”/],
      ['toString', 'x', /no question/],
    ] as const) {
      const read = readAnswer(coolant, id, text);
      expect(read.ok ? 'accepted' : read.problem.message, `${id} ${text}`).toMatch(says);
    }
  });

  test('derived: an item that is none is refused, an old answer that can no longer be read is let be', () => {
    const found = {
      id: 'coolant',
      state: 'works' as const,
      note: '',
      photos: [],
      answers: { supply: 'lots' },
    };
    expect(itemProblem(found, null)).toMatchObject({ where: 'answers.supply' });
    expect(itemProblem(found, found)).toBeUndefined();
    expect(itemProblem({ ...found, id: 'radio' }, null)?.message).toBe(
      'The survey has no item called “radio”.',
    );
  });
});

test('derived: CSV of tags: quotation marks doubled, lines kept together, nothing a spreadsheet would run', () => {
  const tag: Tag = {
    ...SAMPLE.tags['t-1']!,
    tag: '-K1',
    here: 'plug "A", pin 3',
    signal: '=cmd|x',
    note: 'two\nlines',
    state: 'one-end',
    photos: ['a.jpg', 'b.jpg'],
  };
  expect(tagsCsv([tag])).toBe(
    '\ufeffTag,Cable,Here,There,Tag there,Colour,Signal,State,Note,Photos\r\n' +
      '\'-K1,W4,"plug ""A"", pin 3","X drive, U1",12,brown,\'=cmd|x,tagged at one end,"two\nlines",a.jpg b.jpg\r\n',
  );
});
