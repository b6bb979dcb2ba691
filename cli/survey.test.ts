import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readRefit } from '../engine/refit/index.ts';
import { inFolder, run } from './run.fixture.ts';

const WORKS = join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json');

const state = (file: string) => {
  const read = readRefit(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
};
const onWorks = (use: (file: string, folder: string) => Promise<void>) =>
  inFolder(async (folder) => {
    const file = join(folder, 'works.json');
    copyFileSync(WORKS, file);
    await use(file, folder);
  });

describe('recording', () => {
  test('derived: what is named is set, what is not stays', () =>
    onWorks(async (file) => {
      const before = state(file);
      const nine = Object.values(before.tags).find(({ tag }) => tag === '9')!;
      expect((await run('survey', file, 'tag', '9', 'COLOUR=grey and pink', 'ends=both')).code).toBe(0);
      expect(state(file).tags[nine.id]).toEqual({ ...nine, colour: 'grey and pink', state: 'both-ends' });
      expect((await run('survey', file, 'tag', '--', '-K1:13', 'here=Brake relay')).code).toBe(0);
      const made = Object.values(state(file).tags).find(({ tag }) => tag === '-K1:13');
      expect(made).toMatchObject({ here: 'Brake relay', there: '', state: 'one-end', id: 't-11' });

      const set = await run(
        'survey',
        file,
        'item',
        'coolant',
        'worn',
        'power=',
        'current=0.4 A',
        '--note',
        'Leaks',
      );
      expect(set.code).toBe(0);
      expect(state(file).survey.coolant).toEqual({
        ...before.survey.coolant,
        state: 'worn',
        note: 'Leaks',
        answers: { supply: '400 V', kindOfVoltage: 'three', current: '0.4 A' },
      });
      expect((await run('survey', file, 'condition', 'x.MOTOR', 'Dead', '--note', 'Smells burnt')).code).toBe(
        0,
      );
      expect(state(file).parts['x-motor']).toEqual({
        ...before.parts['x-motor'],
        condition: 'dead',
        notes: 'Smells burnt',
      });
      const again = await run('survey', file, 'keep', 'dip-switches', 'kept');
      expect(again.out).toBe('That is how it stands already; nothing was written.\n');
    }));

  test.each<[string[], RegExp]>([
    [['condition', 'X.motor'], /as in: condition X.motor worn/],
    [['condition', 'X.motor', 'fine'], /“fine” is no condition/],
    [['condition', 'X.motor.resistance', 'worn'], /more than a part/],
    [['condition', 'X.duty', 'worn'], /No part whose condition/],
    [['condition', 'X.motor', 'worn', 'out'], /“out” is too much/],
    [['condition', 'Q.motor', 'worn'], /Q/],
    [['item', 'coolnt', 'works'], /Did you mean coolant/],
    [['item', 'coolant', 'works', 'supply'], /has no “=”/],
    [['item', 'coolant', 'works', 'supply=4 kg'], /^supply: /],
    [['item', 'coolant', 'works', 'supply=1 V', 'supply=2 V'], /set twice/],
    [['item', 'coolant', 'works', 'constructor=1'], /no question about the coolant/],
    [['keep', 'ladder', 'gone'], /There are: kept, not-there, to-do/],
    [['keep', 'x'.repeat(80), 'kept'], /is no thing to keep/],
    [['tag', 'here=X'], /what stands on the sleeve first/],
    [['tag', '12', `here=${'x'.repeat(200)}`], /here may have 120 characters/],
    [['tag', '12', 'ends=three'], /no number of ends/],
    [['tag', '\u0007'], /one line without control characters/],
    [['tga', '12'], /Did you mean tag/],
    [['tag', '12', '--sheets', 'out.html'], /does not go with “tag”/],
  ])('derived: %j is refused, and nothing is written', (words, says) =>
    onWorks(async (file) => {
      const before = readFileSync(file, 'utf8');
      const { code, err } = await run('survey', file, ...words);
      expect([code, err]).toEqual([2, expect.stringMatching(says)]);
      expect(err.split('\n').length).toBeLessThan(9);
      expect(readFileSync(file, 'utf8')).toBe(before);
    }),
  );
});

describe('showing', () => {
  test('derived: JSON holds the same numbers as the list', () =>
    onWorks(async (file) => {
      const { out } = await run('survey', file, '--json');
      const { format, shares, tags, keeps } = JSON.parse(out);
      expect(format).toBe('fettle-survey');
      expect(shares.ends).toEqual({ done: 18, all: 20 });
      expect(tags).toHaveLength(10);
      expect(keeps.filter(({ done }: { done: boolean }) => done)).toHaveLength(shares.keeps.done);
      const list = (await run('survey', file)).out;
      expect(list).toContain(`Saved from the old control: ${shares.keeps.done} of ${shares.keeps.all}`);
      const { length } = list.split('\n');
      expect((await run('survey', file, '--all')).out.split('\n').length).toBeGreaterThan(length + 15);
    }));

  test('derived: sheets and tags are files of their own, and none is written over', () =>
    onWorks(async (file, folder) => {
      const sheets = join(folder, 'sheets.html');
      const tags = join(folder, 'tags.csv');
      expect((await run('survey', file, '--sheets', sheets, '--tags', tags)).code).toBe(0);
      expect(readFileSync(sheets, 'utf8')).toMatch(/^<!doctype html>[\s\S]*Tenter Row[\s\S]*<\/html>\n$/);
      expect(readFileSync(tags, 'utf8').split('\r\n')).toHaveLength(12);
      writeFileSync(sheets, 'mine');
      const refused = await run('survey', file, '--sheets', sheets);
      expect([refused.code, readFileSync(sheets, 'utf8')]).toEqual([2, 'mine']);
      expect((await run('survey', file, '--sheets', sheets, '--force', '--inches')).code).toBe(0);
      expect(readFileSync(sheets, 'utf8')).toContain('<span class="unit">thou</span>');
    }));
});
