import { expect, test } from 'vitest';
import { SYMPTOMS } from '../engine/advice/faults/index.ts';
import { run } from './run.fixture.ts';

test('derived: without a symptom each is listed with its plain name and how to begin', async () => {
  const { out, code } = await run('fault');
  expect(code).toBe(0);
  for (const { id, title } of SYMPTOMS)
    expect(
      out.split('\n').some((line) => line.startsWith(title) && line.endsWith(`fettle fault ${id}`)),
      id,
    ).toBe(true);
});

test('derived: words of one’s own lead to the symptom, with or without quotation marks', async () => {
  for (const words of [['it falls'], ['it', 'falls'], ['The Z axis drops'], ['AXIS-DROPS']]) {
    const { out, code } = await run('fault', ...words);
    expect(code, words.join(' ')).toBe(0);
    expect(out).toMatch(/^An axis drops.*Before/);
    expect(out.indexOf('prop it')).toBeLessThan(out.indexOf('What to test next'));
    // What is printed to go on with can be typed as it stands.
    expect(out).toMatch(/fettle fault axis-drops [\w-]+=\w+/);
  }
  const answered = JSON.parse((await run('fault', 'it falls', 'when=off', '--json')).out);
  expect(answered.symptom).toBe('axis-drops');
  expect(answered.asked).toHaveLength(1);
});

test('derived: smoke and burning say first what to do first', async () => {
  for (const words of ['smoke', 'it is burning']) {
    const { out, code } = await run('fault', words);
    expect(code).toBe(0);
    expect(out).toMatch(/^Caution: Main switch off now/);
  }
});

test('derived: a file or words that fit nothing are told the symptoms by their plain names', async () => {
  for (const word of ['lathe.json', 'lathe.refit', 'qwertzuiop', '', '\u0007', 'x'.repeat(100_000)]) {
    const { out, err, code } = await run('fault', word);
    expect([code, out], word.slice(0, 20)).toEqual([2, '']);
    for (const { id, title } of SYMPTOMS.slice(0, 3)) expect(err).toContain(`${id}: ${title}`);
    expect(err.length).toBeLessThan(2_100);
  }
  expect((await run('fault', 'screen-drak')).err).toContain('Did you mean screen-dark?');
  expect((await run('fault', 'screen-dark', 'anything=yes')).code).toBe(2);
  expect((await run('fault', 'screen-dark', 'yes')).err).toContain('write TEST=ANSWER');
});
