import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Basis, parseQuantity, printQuantity, type Quantity, standardUncertainty } from './index.ts';

function read(text: string, unit?: string): Quantity {
  const result = parseQuantity(text, unit);
  if (!result.ok) throw new Error(`${text}: ${result.problem.message}`);
  return result.value;
}
function problem(text: string, unit?: string) {
  const result = parseQuantity(text, unit);
  if (result.ok) throw new Error(`${text} was read as ${printQuantity(result.value)}`);
  return result.problem;
}

describe('derived: accuracy as makers of meters state it', () => {
  test.each([
    ['1.32 ohm ±(0.8 % + 3 digits)', 0.01056 + 0.03],
    ['1.32 ohm ± (0.8% + 3 dgt)', 0.01056 + 0.03],
    ['1.32 ohm ±(0.8%+3d)', 0.01056 + 0.03],
    ['1.32 ohm +/-(3 digits + 0.8 %)', 0.01056 + 0.03],
    ['1.32 ohm ± 0.8 % + 3 digits', 0.01056 + 0.03],
    ['1.32 ±(0.8 % + 3 digits) ohm', 0.01056 + 0.03],
    ['(1.32 ±(0.8 % + 3 digits)) ohm', 0.01056 + 0.03],
    ['1.32 ohm ±(0.8 % of reading + 3 counts)', 0.01056 + 0.03],
    ['1.32 ohm ±(0.8 % rdg + 3 LSD)', 0.01056 + 0.03],
    ['1.32 ohm ±(0.8 % + 50 mohm)', 0.01056 + 0.05],
    ['1.32 ±(0.8 % + 0.05 ohm)', 0.01056 + 0.05],
    ['1.32 ohm ±(0.8 % + 3 digits + 10 mohm)', 0.01056 + 0.04],
    ['1,32 ohm ±(0,8 % + 3 digits)', 0.01056 + 0.03],
    ['1.320 ohm ±(0.8 % + 3 digits)', 0.01056 + 0.003],
    ['0.00132 kohm ±(0.8 % + 3 digits)', 0.01056 + 0.03],
    ['1.32e-3 kohm ±(0.8 % + 3 digits)', 0.01056 + 0.03],
    ['1.32 ohm ± 3 digits', 0.03],
    ['1.32 ohm ± 1 digit', 0.01],
    ['1.32 ohm ± 0.8 % of reading', 0.01056],
  ])('%s', (text, half) => {
    const q = read(text, 'ohm');
    expect(q.value).toBeCloseTo(1.32, 12);
    expect(q.half).toBeCloseTo(half, 12);
    expect(q.spread).toEqual({
      kind: 'instrument',
      shape: 'rectangular',
      standard: expect.closeTo(half / Math.sqrt(3), 12),
    });
    expect(q.notes.join()).toContain('accuracy of the instrument');
  });

  test.each([
    ['1250 r/min ±(0.05 % + 1 digit)', 'r/min', 1.625],
    ['1 250 r/min ±(0.05 % + 1 digit)', 'r/min', 1.625],
    ['-12.5 V ±(1 % + 2 digits)', 'V', 0.325],
    ['25.0 °C ± 2 digits', '°C', 0.2],
    ['25.0 °C ±(1 °C + 2 digits)', '°C', 1.2],
    ['0.0 V ±(1 % + 2 digits)', 'V', 0.2],
    ['50.0 % ±(2 % + 1 digit)', '%', 2.1],
    ['50.0 % ±(2 % of reading + 1 digit)', '%', 1.1],
    ['1000 counts ±(1 % + 3 counts)', 'counts', 13],
    ['5 TPI ± 1 digit', 'mm', 1.016],
  ])('%s: half %d in its unit', (text, unit, half) => {
    const q = read(text, unit);
    expect(q.half / q.unit.scale).toBeCloseTo(half, 9);
    expect(q.spread?.kind).toBe('instrument');
  });

  test('brackets alone change nothing', () => {
    expect(read('230 V ±(5 %)', 'V')).toMatchObject({ half: 11.5 });
    expect(read('230 V ±(5 %)', 'V').spread).toBeUndefined();
    expect(read('230 ±(5 V)', 'V').half).toBe(5);
    expect(read('230 ±(5) V', 'V').half).toBe(5);
  });

  test.each([
    ['1.32 ohm ±(0.8 % FS + 3 digits)', /range of the instrument/],
    ['1.32 ohm ± 0.8 % of full scale', /range of the instrument/],
    ['1.32 ohm ±(0.8 + 3 digits)', /needs %, a unit or the word digits/],
    ['1.32 ohm ±(0.8 % + )', /no number/],
    ['1.32 ohm ±(0.8 % + 3 digits', /./],
    ['1.32 ohm ±()', /./],
    ['1.32 ohm ±(0.8 % + -3 digits)', /./],
    ['1.32 ohm ± -3 digits', /below zero/],
    ['1 3/8 in ± 3 digits', /fraction has no last digit/],
    ['25 °C ±(1 % + 2 digits)', /no percentage/],
    ['1.32 ohm ±(1 % + 5 V)', /./],
    ['1.32 ohm ±(1 % + 2 digits) ohm', /Write it once/],
    ['1.32 ±(1 % + 2 digits ohm) ohm', /twice/],
    ['1.32 ohm ±(1 % + 1 % + 1 % + 1 % + 1 %)', /too many parts/],
    ['1.32 ohm ±(1 % + 3 digits) ± 2 %', /More than one ±/],
  ])('%s is refused in words', (text, words) => {
    const { message } = problem(text, text.includes('°C') ? '°C' : text.includes('in ') ? 'mm' : 'ohm');
    expect(message).toMatch(words);
    expect(message).toMatch(/\.$/);
  });

  test('a missing unit is suggested where it reads back, the words kept', () => {
    for (const text of [
      '1.32 ±(0.8 % + 3 digits)',
      '1.32 ± 3 digits + 0.8 %',
      '1.32 ± 0.1 (k=2)',
      '1.32 ± 0.1 guess',
    ]) {
      const { code, suggestion = '' } = problem(text, 'ohm');
      expect(code).toBe('unit-missing');
      expect(read(suggestion, 'ohm').spread, suggestion).toEqual(read(text, '1').spread);
    }
    expect(problem('1,250 ± 0,8 % + 3 digits', 'mm').readings).toHaveLength(2);
    for (const reading of problem('1,250 ± 0,8 % + 3 digits', 'mm').readings ?? [])
      expect(read(reading, 'mm').spread?.kind, reading).toBe('instrument');
  });
});

describe('derived: words that say what a ± is', () => {
  const SQRT3 = Math.sqrt(3);
  test.each([
    ['1.32 ohm ± 0.06 (k=2)', 'expanded', 0.06, 0.03, 'normal'],
    ['1.32 ohm ± 0.06 (k = 2)', 'expanded', 0.06, 0.03, 'normal'],
    ['1.32 ohm ± 0.06 (k=2, 95 %)', 'expanded', 0.06, 0.03, 'normal'],
    ['1.32 ohm ± 0.06 k=2', 'expanded', 0.06, 0.03, 'normal'],
    ['(1.32 ± 0.06) ohm (k=2)', 'expanded', 0.06, 0.03, 'normal'],
    ['1.32 ± 0.06 (k=2) ohm', 'expanded', 0.06, 0.03, 'normal'],
    ['1.32 ± 0.06 ohm (k=2,5)', 'expanded', 0.06, 0.024, 'normal'],
    ['1.32 ohm ± 0.06 (k=1)', 'expanded', 0.06, 0.06, 'normal'],
    ['1.32 ohm ± 0.06 (95 %)', 'expanded', 0.06, 0.06 / 1.959963984540054, 'normal'],
    ['1.32 ohm ± 0.06 (95% confidence)', 'expanded', 0.06, 0.06 / 1.959963984540054, 'normal'],
    ['1.32 ohm ± 5 % (99 %)', 'expanded', 0.066, 0.066 / 2.5758293035489004, 'normal'],
    ['1.32 ohm ± 0.03 (1 sd)', 'readings', 0.03, 0.03, 'normal'],
    ['1.32 ohm ± 0.06 (2 sd)', 'readings', 0.06, 0.03, 'normal'],
    ['1.32 ohm ± 0.03 1σ', 'readings', 0.03, 0.03, 'normal'],
    ['1.32 ohm ± 0.01 resolution', 'resolution', 0.005, 0.005 / SQRT3, 'rectangular'],
    ['1.32 ± 0.01 ohm (resolution)', 'resolution', 0.005, 0.005 / SQRT3, 'rectangular'],
    ['1.32 ohm ± 0.1 tolerance', 'tolerance', 0.1, 0.1 / SQRT3, 'rectangular'],
    ['1.32 ohm ± 0.1 tol.', 'tolerance', 0.1, 0.1 / SQRT3, 'rectangular'],
    ['1.32 ohm +0.1/-0.05 tolerance', 'tolerance', 0.1, 0.1 / SQRT3, 'rectangular'],
    ['1.32 ohm ± 20 % guess', 'guess', 0.264, 0.264 / SQRT3, 'rectangular'],
    ['1.30 to 1.34 ohm guess', 'guess', 0.02, 0.02 / SQRT3, 'rectangular'],
    ['1.32 ohm ± 0.04 instrument', 'instrument', 0.04, 0.04 / SQRT3, 'rectangular'],
    ['1.32 ohm ±(0.8 % + 3 digits) (k=2)', 'expanded', 0.04056, 0.02028, 'normal'],
    ['1.32 ohm ±(1 % + 1 digit) tolerance', 'tolerance', 0.0232, 0.0232 / SQRT3, 'rectangular'],
  ] as const)('%s', (text, kind, half, standard, shape) => {
    const q = read(text, 'ohm');
    expect(q.value).toBeCloseTo(1.32, 12);
    expect(q.half).toBeCloseTo(half, 12);
    expect(q.spread).toEqual({ kind, standard: expect.closeTo(standard, 12), shape });
    for (const basis of ['measured', 'datasheet', 'guess'] as Basis[])
      expect(standardUncertainty(q, basis)).toBeCloseTo(standard, 12);
  });

  test('the step of a display is a rectangle of that width: q/√12 (published: JCGM 100:2008, F.2.2.1)', () => {
    expect(standardUncertainty(read('7.42 mm ± 0.01 mm resolution', 'mm'), 'measured')).toBeCloseTo(
      1e-5 / Math.sqrt(12),
      16,
    );
  });

  test('without such words everything stays as it was', () => {
    for (const text of [
      '1.32 ohm',
      '1.32 ± 0.06 ohm',
      '1.32 ohm +10/-15 %',
      '1 to 2 ohm',
      '1.32 ohm ± 0 guess',
    ])
      expect(read(text, 'ohm').spread).toBeUndefined();
    expect(standardUncertainty(read('1.32 ± 0.06 ohm'), 'measured')).toBeCloseTo(0.03, 14);
    expect(standardUncertainty(read('1.32 ± 0.06 ohm'), 'plate')).toBeCloseTo(0.06 / SQRT3, 14);
  });

  test('the spread goes with the length it belongs to', () => {
    const q = parseQuantity('R 20 mm ± 0.1 mm tolerance', { unit: 'mm', of: 'diameter' });
    expect(q.ok && q.value.spread?.standard).toBeCloseTo(0.0002 / SQRT3, 15);
    const lead = parseQuantity('3-start pitch 2 mm ± 0.01 mm (k=2)', { unit: 'mm', of: 'lead' });
    expect(lead.ok && lead.value.spread?.standard).toBeCloseTo(1.5e-5, 15);
  });

  test.each([
    ['5 mm guess', /no ± in front/],
    ['5 mm (k=2)', /no ± in front/],
    ['5 mm (95 %)', /no ± in front/],
    ['5 mm ± 1 mm (k=0)', /between 0.1 and 10/],
    ['5 mm ± 1 mm (k=200)', /between 0.1 and 10/],
    ['5 mm ± 1 mm (0 sd)', /between 0.1 and 10/],
    ['5 mm ± 1 mm (42 %)', /level of 42 %/],
    ['5 mm ± 1 mm (95 %) guess', /./],
    ['5 mm ± 1 mm guess guess', /./],
    ['5 mm ± guess', /./],
    ['5 mm ± 2 sd', /./],
    ['5 to 6 mm resolution', /one step of the display/],
    ['5 mm +1/-2 mm resolution', /one step of the display/],
    ['guess', /./],
    ['(k=2)', /./],
    ['(95 %)', /./],
  ])('%s is refused in words', (text, words) => {
    const { message } = problem(text, 'mm');
    expect(message).toMatch(words);
    expect(message).toMatch(/[.?]$/);
    expect(message).not.toMatch(/undefined|NaN/);
  });
});

const PIECES = [
  '1.32',
  '1,250',
  '3',
  '0.8',
  '%',
  '±',
  '(',
  ')',
  '+',
  '-',
  '/',
  ' ',
  'digits',
  'counts',
  'd',
  'ohm',
  'mm',
  '°C',
  'k=2',
  '(k=2)',
  '(95 %)',
  '(1 sd)',
  'sd',
  'σ',
  'resolution',
  'tolerance',
  'tol.',
  'guess',
  'instrument',
  'of reading',
  'FS',
  'e-3',
  '1/2',
  'to',
  '×10',
  '3-start',
  'pitch',
  'R',
  'TPI',
];

describe('derived: properties of spreads', () => {
  test('any text gives finite numbers or whole sentences, and what was read prints and reads back the same', () => {
    const parts = fc.array(fc.constantFrom(...PIECES), { maxLength: 14 });
    const text = fc.oneof(
      parts.map((p) => p.join('')),
      parts.map((p) => p.join(' ')),
      fc
        .tuple(
          fc.constantFrom('1.32', '0.5e3', '20', '-7.0', '1 3/8'),
          fc.constantFrom('', ' ohm', ' mm', ' counts'),
          fc.constantFrom(
            '1',
            '0.8 %',
            '3 digits',
            '0.8 % + 3 digits',
            '(0.8 % + 3 d)',
            '(1 % + 0.1)',
            '2 counts',
          ),
          fc.constantFrom('', ' ohm', ' (k=2)', ' (95 %)', ' (1 sd)', ' resolution', ' guess', ' tol'),
        )
        .map(([n, unit, bound, words]) => `${n}${unit} ± ${bound}${words}`),
    );
    let spreads = 0;
    fc.assert(
      fc.property(text, fc.constantFrom(undefined, 'mm', 'ohm', '1', '%', '°C', 'counts'), (typed, unit) => {
        const result = parseQuantity(typed, unit);
        if (!result.ok) {
          expect(result.problem.message).toMatch(/[.?]$/);
          expect(result.problem.message).not.toMatch(/undefined|\[object|NaN/);
          return;
        }
        const q = result.value;
        expect(Number.isFinite(q.value) && Number.isFinite(q.half) && q.half >= 0).toBe(true);
        if (!q.spread) return;
        spreads++;
        expect(q.spread.standard > 0 && Number.isFinite(q.spread.standard)).toBe(true);
        expect(q.half).toBeGreaterThan(0);
        const printed = printQuantity(q);
        const again = read(printed, unit);
        expect(again.spread, printed).toMatchObject({ kind: q.spread.kind, shape: q.spread.shape });
        expect(Math.abs(again.spread!.standard / q.spread.standard - 1)).toBeLessThan(1e-12);
        expect(printQuantity(again)).toBe(printed);
      }),
      { numRuns: 4000 },
    );
    expect(spreads).toBeGreaterThan(50);
  });

  test('every spread in every unit prints and reads back the same', () => {
    const number = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    const words = fc.constantFrom(
      '(k=2)',
      '(k=1.234)',
      '(95 %)',
      '(90 %)',
      '(1 sd)',
      '(3 sd)',
      'resolution',
      'tolerance',
      'guess',
      'instrument',
    );
    const unit = fc.constantFrom('mm', 'ohm', 'r/min', 'V/krpm', 'oz-in-s²', 'kgf·m² GD²', 'counts', '1');
    fc.assert(
      fc.property(number, number, unit, words, (n, h, symbol, said) => {
        const q = read(`${n} ± ${h} ${symbol === '1' ? '' : symbol} ${said}`, symbol);
        const again = read(printQuantity(q), symbol);
        expect(Math.abs(again.half / q.half - 1)).toBeLessThan(1e-12);
        expect(Math.abs(again.spread!.standard / q.spread!.standard - 1)).toBeLessThan(1e-12);
        expect({ ...again.spread, standard: 0 }).toEqual({ ...q.spread, standard: 0 });
        expect(printQuantity(again)).toBe(printQuantity(q));
      }),
      { numRuns: 1000 },
    );
  });

  test.each(['(', '±(', 'k=', '(95 %', '1 sd ', '+ 1 % ', ' guess', '1 digits+'])(
    '200 characters of %j take no time',
    (piece) => {
      const start = performance.now();
      const typed = `5 mm ± ${piece.repeat(100)}`.slice(0, 200);
      expect(problem(typed, 'mm').message.length).toBeLessThan(400);
      expect(performance.now() - start).toBeLessThan(50);
    },
  );
});
