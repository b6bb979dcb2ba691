import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cell, type Column, type Pasted, parseReadings, writeReadings } from './index.ts';

const TWO: readonly Column[] = [
  { key: 'position', name: 'Position', unit: 'mm' },
  { key: 'error', name: 'Error', unit: 'µm' },
];
const ONE: readonly Column[] = [{ key: 'r', name: 'Resistance', unit: 'ohm' }];

function read(text: string, columns: readonly Column[] = TWO): Pasted {
  const result = parseReadings(text, { columns });
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}
const values = (pasted: Pasted, key: string): (number | null)[] =>
  pasted.columns[key]!.map((c) =>
    c.value === null
      ? null
      : Number((c.value * (key === 'error' ? 1e6 : key === 'position' ? 1e3 : 1)).toPrecision(12)),
  );
const refusal = (text: string, columns: readonly Column[] = TWO) => {
  const result = parseReadings(text, { columns });
  if (result.ok) throw new Error(`read: ${JSON.stringify(result.value.columns)}`);
  return result.problem;
};
const problems = (cells: readonly Cell[]) => cells.flatMap((c) => (c.problem ? [c.problem] : []));

describe('derived: pasted rows', () => {
  test.each([
    ['tabs', '0\t1.5\n100\t-2.5\n'],
    ['tabs and decimal commas', '0\t1,5\r\n100\t-2,5\r\n'],
    ['semicolons', '0;1,5\n100;-2,5'],
    ['commas', '0,1.5\n100,-2.5'],
    ['commas and blanks', '0, 1.5\n100, -2.5\n\n'],
    ['blanks', '0   1.5\n100  -2.5'],
    ['single blanks and decimal commas', '0 1,5\n100 -2,5'],
    ['quotes', '"0","1,5"\n"100","-2,5"'],
    ['old line ends', '0\t1.5\r100\t-2.5'],
    ['a byte order mark', '\ufeff0\t1.5\n100\t-2.5'],
    ['minus signs of print', '0\t1.5\n100\t−2.5'],
    ['headings', 'Position\tError\n0\t1.5\n100\t-2.5'],
    ['headings with units', 'Position (cm)\tError [mm]\n0\t0.0015\n10\t-0.0025'],
    ['headings with strokes', 'Position / m\tError / µm\n0\t1.5\n0.1\t-2.5'],
    [
      'headings in another order, with more columns',
      'No;Error, µm;Note;position\n1;1,5;ok;0\n2;-2,5;bad;100',
    ],
    ['a row of units', 'Position\tError\ncm\t(µm)\n0\t1.5\n10\t-2.5'],
    ['units in cells', '0 mm\t1.5 µm\n10 cm\t-0.0025 mm'],
    ['mixed units', 'Position (mm)\tError (µm)\n0\t1.5\n0.1 m\t-2.5'],
    ['blank rows', '\n\n0\t1.5\n\t\n\n100\t-2.5\n\n'],
  ])('%s', (_, text) => {
    const pasted = read(text);
    expect(values(pasted, 'position')).toEqual([0, 100]);
    expect(values(pasted, 'error')).toEqual([1.5, -2.5]);
    expect([...problems(pasted.columns.position!), ...problems(pasted.columns.error!)]).toEqual([]);
  });

  test('one column: decimal commas are not separators', () => {
    expect(values(read('1,32\n1,33\n1,3', ONE), 'r')).toEqual([1.32, 1.33, 1.3]);
    expect(values(read('Resistance, ohm\n1,32\n1,33', ONE), 'r')).toEqual([1.32, 1.33]);
    expect(values(read('R (mohm)\n1320\n1.33 ohm', ONE), 'r')).toEqual([1.32, 1.33]);
    expect(values(read('1.32,\n1.33,\n', ONE), 'r')).toEqual([1.32, 1.33]);
    const inches = read('1 3/8"\n1 1/2"', [{ key: 'position', name: 'Length', unit: 'mm' }]);
    expect(values(inches, 'position')).toEqual([34.925, 38.1]);
  });

  test('what was assumed is said', () => {
    expect(read('0\t1.5').notes).toEqual([
      'Position: numbers without a unit were taken in mm.',
      'Error: numbers without a unit were taken in µm.',
    ]);
    expect(read('Position (cm)\tError\n1\t1.5 µm').notes).toEqual([
      'Position: numbers without a unit were taken in cm, as the heading says.',
    ]);
    expect(read('A\tB\n1 mm\t1.5 µm').notes).toEqual([
      'No heading names these columns, so they were taken by order: Position from column A, Error from column B.',
    ]);
    expect(read('Error\tWhere\n1 µm\t2 mm').notes[0]).toMatch(/this column.*Position from column B/);
  });

  test('an undecided comma is asked about, unless the other cells of the column settle it', () => {
    const asked = read('1,250\t1\n2,500\t2');
    expect(values(asked, 'position')).toEqual([null, null]);
    expect(asked.columns.position![0]!.problem).toMatchObject({
      code: 'ambiguous',
      where: 'A1',
      readings: ['1.250 mm', '1250 mm'],
    });
    const settled = read('1,250\t1\n2,5\t2');
    expect(values(settled, 'position')).toEqual([1.25, 2.5]);
    expect(settled.notes.join()).toMatch(/taken as a decimal comma, as in the other cells/);
    for (const text of ['1,250\t1\n2,5\t2\n3.5\t3', '1,250\t1\n1,250.5\t2\n0,5\t3'])
      expect(read(text).columns.position![0]!.problem?.code).toBe('ambiguous');
  });

  test('blanks stay blank and keep their rows; a lone dash is a blank', () => {
    const pasted = read('0\t1\n100\t\n\t3\n300\t-\n400\t–');
    expect(values(pasted, 'position')).toEqual([0, 100, null, 300, 400]);
    expect(values(pasted, 'error')).toEqual([1, null, 3, null, null]);
    expect(problems(pasted.columns.error!)).toEqual([]);
  });

  test('uneven rows are said', () => {
    const pasted = read('0\t1\n100\n200\t2\tsurplus');
    expect(values(pasted, 'error')).toEqual([1, null, 2]);
    expect(pasted.notes.join('\n')).toMatch(/Row 2 ends before the last column/);
    expect(pasted.notes.join('\n')).toMatch(/Row 3 has more cells/);
  });

  test('a wild reading is questioned by its cell and kept', () => {
    const pasted = read('Resistance\n1.32\n1.33\n1.31\n1.32\n13.2\n1.33\n1.32\n1.31', ONE);
    expect(values(pasted, 'r')).toContain(13.2);
    expect(pasted.notes.at(-1)).toMatch(/^Resistance: cell A6 \(“13.2”\) lies .* still counts/);
  });
});

describe('derived: hostile paste', () => {
  test.each([
    ['=A1', /Cell B2 holds the formula “=A1”/],
    ['=SUM(A1:A9)', /Cell B2 holds the formula/],
    ['+A1', /Cell B2 holds the formula/],
    ['@x', /Cell B2 holds the formula/],
    ['=1.5', /Cell B2 holds the formula/],
    ['#DIV/0!', /Cell B2 holds the spreadsheet's own error/],
    ['NaN', /Cell B2: .*no number/],
    ['inf', /Cell B2: .*infinite/],
    ['1e999', /Cell B2: .*too large/],
    ['about 3', /Cell B2: No number/],
    ['3 V', /Cell B2: .*voltage.*length/],
    ['3 4', /Cell B2: Two numbers/],
    ['x'.repeat(5000), /Cell B2: This has more than 200 characters/],
  ])('cell %#, not a number, keeps its text with a problem naming the cell', (cell, words) => {
    const pasted = read(`0\t1\n100\t${cell}\n200\t2`);
    const [, bad] = pasted.columns.error!;
    expect(bad).toMatchObject({ text: cell, value: null, problem: { where: 'B2' } });
    expect(bad!.problem!.message).toMatch(words);
    expect(values(pasted, 'error')).toEqual([1, null, 2]);
  });

  test.each([
    ['', 'empty', /Paste rows with Position, Error/],
    [' \n\t\n', 'empty', /Nothing was pasted/],
    ['Position\tError', 'empty', /no readings below/],
    ['0,0,1,5\n100,0,2,5', 'ambiguous', /inside the numbers and between them/],
    ['1\t2\n'.repeat(30_000), 'too-long', /20000 rows/],
    ['1\t'.repeat(300_000), 'too-long', /cells/],
    ['9'.repeat(1_000_001), 'too-long', /million/],
  ])('text %# is refused as a whole', (text, code, words) => {
    expect(refusal(text).code).toBe(code);
    expect(refusal(text).message).toMatch(words);
  });

  test.each([
    '1',
    ' ',
    '"',
    '""',
    '",',
    ' "',
    '1,',
    '(',
    '[a',
    '/ ',
    ', a',
    '\n',
    '"\n',
    '1\t2\n',
    '=A1\t',
    '1 ',
    '±',
  ])('a megabyte of %j takes little time', { timeout: 20_000 }, (piece) => {
    const start = performance.now();
    const text = piece.repeat(Math.floor(1_000_000 / piece.length));
    for (const columns of [ONE, TWO]) {
      const result = parseReadings(text, { columns });
      if (!result.ok) expect(result.problem.message).toMatch(/\.$/);
    }
    // On an idle computer a quarter of a second; what grows with the square would take many minutes.
    expect(performance.now() - start).toBeLessThan(15_000);
  });

  test('20 000 rows are read', () => {
    const text = Array.from({ length: 20_000 }, (_, i) => `${i}\t${(i % 7) / 10}`).join('\n');
    const pasted = read(text);
    expect(pasted.columns.position!.length).toBe(20_000);
    expect(pasted.columns.position!.at(-1)!.value).toBeCloseTo(19.999, 9);
  });

  test('any text: columns of one length, finite values or null, whole sentences', () => {
    const piece = fc.constantFrom(
      '1',
      '2,5',
      '1,250',
      '-3.5',
      '\t',
      '\t',
      '\n',
      '\n',
      ';',
      ',',
      ' ',
      '"',
      'mm',
      'Position',
      'Error (µm)',
      '=A1',
      '#N/A',
      'NaN',
      '±',
      '-',
      '1e5',
    );
    const text = fc.oneof(
      fc.array(piece, { maxLength: 60 }).map((p) => p.join('')),
      fc.string({ unit: 'binary', maxLength: 300 }),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(ONE, TWO), (typed, columns) => {
        const result = parseReadings(typed, { columns });
        if (!result.ok) {
          expect(result.problem.message).toMatch(/\.$/);
          return;
        }
        const lists = columns.map((c) => result.value.columns[c.key]!);
        expect(new Set(lists.map((l) => l.length)).size).toBe(1);
        for (const cell of lists.flat()) {
          expect(cell.value === null || Number.isFinite(cell.value)).toBe(true);
          if (cell.problem) expect(cell.problem.message).not.toMatch(/undefined|\[object/);
        }
        for (const note of result.value.notes) expect(note).toMatch(/\.$/);
      }),
      { numRuns: 400 },
    );
  });
});

describe('derived: written as separated values', () => {
  test('what was written reads back the same, with points or commas', () => {
    const number = fc.oneof(
      fc.integer({ min: -1e15, max: 1e15 }).map((n) => n / 1e9),
      fc.integer({ min: -99999, max: 99999 }).map((n) => n / 1000),
    );
    const cell = fc.option(number, { nil: null });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, cell), { minLength: 1, maxLength: 20 }),
        fc.constantFrom('.', ','),
        (rows, decimal) => {
          const list = (k: 0 | 1, scale: number): Cell[] =>
            rows.map((r) => ({ text: '', value: r[k] === null ? null : r[k]! * scale }));
          const columns = { position: list(0, 1e-3), error: list(1, 1e-6) };
          const again = read(writeReadings({ columns }, { columns: TWO }, { decimal: decimal as '.' | ',' }));
          for (const key of ['position', 'error'] as const) {
            expect(again.columns[key]!.length).toBe(rows.length);
            for (const [i, c] of again.columns[key]!.entries()) {
              const before = columns[key][i]!.value;
              if (before === null) expect(c).toEqual({ text: '', value: null });
              else expect(Math.abs(c.value! - before)).toBeLessThanOrEqual(1e-11 * Math.abs(before));
            }
          }
        },
      ),
    );
  });

  test('headings with units; what could not be read is kept, and no formula can run', () => {
    const pasted = read('0\t1,250\n100\t=A1\n200\t"a;b"');
    expect(writeReadings(pasted, { columns: TWO })).toBe(
      'Position (mm),Error (µm)\r\n0,"1,250"\r\n100,\'=A1\r\n200,"a;b"\r\n',
    );
  });
});
