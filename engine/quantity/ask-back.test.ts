import { describe, expect, test } from 'vitest';
import { askBack, type Usual } from './ask-back.ts';
import { parseQuantity } from './quantity.ts';
import { askBackOfSetting } from './read-setting.ts';
import { amount, choice, level, mostly } from './settings.ts';

const root: Usual = { name: 'root diameter', unit: 'mm', plausible: ['4 mm', '110 mm'] };
const asked = (of: Usual, text: string): string | undefined => {
  const read = parseQuantity(text, of.unit);
  if (!read.ok) throw new Error(read.problem.message);
  return askBack(of, read.value.value, read.value);
};

describe('asking back', () => {
  test('derived: says what was understood in the unit typed, what is usual, and the same digits where they fit', () => {
    expect(asked(root, '16 m')).toBe(
      '16 m is far outside what is usual for the root diameter, 4 mm to 110 mm. Did you mean 16 mm?',
    );
    expect(asked(root, '16000 mm')).toContain('16000 mm is far outside');
    expect(asked(root, '16 µm')).toContain('Did you mean 16 mm?');
    // Rather than 16000 mA.
    const fuse: Usual = { name: 'fuse', unit: 'A', plausible: ['6 A', '125 A'] };
    expect(asked(fuse, '16000 A')).toContain('Did you mean 16 A?');
    // A digit held too long.
    expect(asked({ name: 'mains voltage', unit: 'V', plausible: ['90 V', '690 V'] }, '23000 V')).toContain(
      'Did you mean 230 V?',
    );
  });

  test('derived: where no slip explains it, no guess is offered', () => {
    expect(asked({ name: 'mains voltage', unit: 'V', plausible: ['90 V', '690 V'] }, '9999 V')).toBe(
      '9999 V is far outside what is usual for the mains voltage, 90 V to 690 V. Is a digit or the unit wrong?',
    );
  });

  test('derived: ten times outside is not far yet, a little more is; nought never is', () => {
    for (const [text, is] of [
      ['1100 mm', false],
      ['1101 mm', true],
      ['0.4 mm', false],
      ['0.39 mm', true],
      ['0 mm', false],
      ['60 mm', false],
    ] as const)
      expect(asked(root, text) !== undefined, text).toBe(is);
  });

  test('derived: a thermometer is read from its own nought, and a span that begins at nought has no lower end', () => {
    const warm: Usual = { name: 'temperature of the room', unit: '°C', plausible: ['-20 °C', '60 °C'] };
    expect(asked(warm, '600 °C')).toBeUndefined();
    expect(asked(warm, '700 °C')).toContain('-20 °C to 60 °C');
    expect(asked(warm, '1500 °F')).toBeDefined();
    expect(asked({ name: 'play', unit: 'mm', plausible: ['0 mm', '2 mm'] }, '1 nm')).toBeUndefined();
  });

  test('derived: without span and usual value nothing is asked; with one usual value, from a hundred times on', () => {
    expect(asked({ name: 'length', unit: 'm' }, '1e9 m')).toBeUndefined();
    expect(asked({ name: 'length', unit: 'm', usual: '' }, '1e9 m')).toBeUndefined();
    const one: Usual = { name: 'voltage it gives', unit: 'V', usual: '24 V' };
    expect(asked(one, '2400 V')).toBeUndefined();
    expect(asked(one, '24 kV')).toBe(
      '24 kV is far from what is usual for the voltage it gives, 24 V. Did you mean 24 V?',
    );
    expect(asked(one, '24 mV')).toContain('Did you mean 24 V?');
    expect(asked({ ...one, mayBeNought: true }, '24 mV')).toBeUndefined();
  });

  test('derived: a name that is half a sentence is quoted; what it adds behind a colon is left out', () => {
    expect(asked({ ...root, name: 'how far it may stray' }, '16 m')).toContain('for “how far it may stray”,');
    expect(asked({ ...root, name: 'lead: travel of one turn' }, '16 m')).toContain(
      'usual for the lead, 4 mm',
    );
  });

  test('derived: hostile sizes give a sentence, never NaN', () => {
    for (const text of [
      '1e300 mm',
      '-1e300 mm',
      '1e-280 mm',
      '99999999999999999999999 mm',
      '16000 ± 1e9 mm',
    ]) {
      const said = asked(root, text);
      expect(said, text).toMatch(/^\S.* is far outside .*[?]$/);
      expect(said).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('derived: settings are asked back by their span or their usual value; words and choices never', () => {
    const length = mostly(amount('length', 'm'), '5 cm', '50 m');
    expect(askBackOfSetting(length, '2.5 km')).toContain('Did you mean 2.5 m?');
    expect(askBackOfSetting(length, '')).toBeUndefined();
    expect(askBackOfSetting(length, 'long')).toBeUndefined();
    // Refused, and so not asked.
    expect(askBackOfSetting(length, '-1e6 m')).toBeUndefined();
    expect(askBackOfSetting(length, '1e300 m')).toBeUndefined();
    expect(askBackOfSetting(choice('kind', ['a', 'b']), '9999')).toBeUndefined();
    expect(askBackOfSetting(amount('current', 'A'), '1e6 A')).toBeUndefined();
    // What may be nought may be as small as it likes.
    expect(askBackOfSetting(level('current that leaks', 'A', '0.1 mA'), '1 pA')).toBeUndefined();
  });
});
