import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseThread } from './parse.ts';

/** [text, designation, pitch in mm, starts, hand] */
const READ: readonly (readonly [string, string, number, number?, string?])[] = [
  ['M10', 'M10', 1.5],
  ['m10', 'M10', 1.5],
  ['M 10 x 1.25', 'M10x1.25', 1.25],
  ['M10×1,25', 'M10x1.25', 1.25],
  ['M10 × 1.25 LH', 'M10x1.25 LH', 1.25, 1, 'left'],
  ['M10x1.5-6g', 'M10', 1.5],
  ['M10 - 5g6g', 'M10', 1.5],
  ['M6-6H/6g', 'M6', 1],
  ['M16xPh3P1.5', 'M16xPh3P1.5', 1.5, 2],
  ['M10x1.12', 'M10x1.12', 1.12],
  ['M2.5', 'M2.5', 0.45],
  ['Tr 40x14 (P7) LH', 'Tr 40x14 (P7) LH', 7, 2, 'left'],
  ['TR40X7', 'Tr 40x7', 7],
  ['Tr40x14P7-7e', 'Tr 40x14 (P7)', 7, 2],
  ['Tr 8', 'Tr 8x1.5', 1.5],
  ['2-start Tr 20x4', 'Tr 20x8 (P4)', 4, 2],
  ['1/4-20 UNC', '1/4-20 UNC', 25.4 / 20],
  ['UNC 1/4-20', '1/4-20 UNC', 25.4 / 20],
  ['1/4 UNC', '1/4-20 UNC', 25.4 / 20],
  ['¼-20 UNC-2A', '1/4-20 UNC', 25.4 / 20],
  ['1/4"-28UNF-3B LH', '1/4-28 UNF LH', 25.4 / 28, 1, 'left'],
  ['#10-32 UNF', '#10-32 UNF', 25.4 / 32],
  ['10-24 UNC', '#10-24 UNC', 25.4 / 24],
  ['No. 8-32 UNC', '#8-32 UNC', 25.4 / 32],
  ['1-8 UNC', '1-8 UNC', 25.4 / 8],
  ['1-64 UNC', '#1-64 UNC', 25.4 / 64],
  ['1 1/8-7 UNC', '1 1/8-7 UNC', 25.4 / 7],
  ['1-1/8-7 UNC', '1 1/8-7 UNC', 25.4 / 7],
  ['0.250-20 UNC', '1/4-20 UNC', 25.4 / 20],
  ['3/4-12 UN', '3/4-12 UN', 25.4 / 12],
  ['1/2" x 13 tpi', '1/2-13 UNC', 25.4 / 13],
  ['5/16 BSW', '5/16-18 BSW', 25.4 / 18],
  ['BSW 5/16 x 18', '5/16-18 BSW', 25.4 / 18],
  ['3/8 Whitworth', '3/8-16 BSW', 25.4 / 16],
  ['3/8" BSF', '3/8-20 BSF', 25.4 / 20],
  ['G 1/2', 'G 1/2', 25.4 / 14],
  ['G1/2A', 'G 1/2 A', 25.4 / 14],
  ['1/2 BSPP', 'G 1/2', 25.4 / 14],
  ['G 1 1/4', 'G 1 1/4', 25.4 / 11],
  ['R 1/2', 'R 1/2', 25.4 / 14],
  ['Rc 1/2', 'Rc 1/2', 25.4 / 14],
  ['Rp 1', 'Rp 1', 25.4 / 11],
  ['1/2" BSPT', 'R 1/2', 25.4 / 14],
  ['1/2-14 NPT', '1/2-14 NPT', 25.4 / 14],
  ['NPT 1/2', '1/2-14 NPT', 25.4 / 14],
  ['1-11.5 NPT', '1-11.5 NPT', 25.4 / 11.5],
  ['3-start pitch 2 mm ø20', 'M20xPh6P2', 2, 3],
  ['two-start lead 3 mm dia 16', 'M16xPh3P1.5', 1.5, 2],
];

describe('what people write', () => {
  for (const [text, designation, pitch, starts = 1, hand = 'right'] of READ)
    test(`derived: “${text}” is ${designation}`, () => {
      const read = parseThread(text);
      if (!read.ok) throw new Error(read.problem.message);
      const { value } = read;
      expect(value.designation).toBe(designation);
      expect(value.pitch).toBeCloseTo(pitch / 1000, 12);
      expect(value.starts).toBe(starts);
      expect(value.lead).toBeCloseTo((starts * pitch) / 1000, 12);
      expect(value.hand).toBe(hand);
      // Its own name reads back as the same thread.
      const again = parseThread(designation);
      if (!again.ok) throw new Error(`${designation}: ${again.problem.message}`);
      expect(again.value.designation).toBe(designation);
      expect(again.value.pitch).toBeCloseTo(value.pitch, 12);
    });
});

/** [text, readings that must be offered] */
const ASKED: readonly (readonly [string, readonly string[]])[] = [
  ['1/4" x 20 tpi', ['1/4-20 UNC', '1/4-20 BSW']],
  ['1/4-20', ['1/4-20 UNC', '1/4-20 BSW']],
  ['1/2', ['1/2-13 UNC', '1/2-12 BSW', 'G 1/2', 'R 1/2']],
  ['1/2 BSP', ['G 1/2', 'R 1/2']],
  ['Tr 40', ['Tr 40x7', 'Tr 40x3']],
  ['M15', ['M15x1.5', 'M15x1']],
  ['10x1.5', ['M10x1.5']],
  ['lead 6 mm ø20', ['1-start pitch 6 mm ø20', '2-start pitch 3 mm ø20']],
];
for (const [text, readings] of ASKED)
  test(`derived: “${text}” is asked, not guessed`, () => {
    const read = parseThread(text);
    if (read.ok) throw new Error(`taken as ${read.value.designation}`);
    expect(read.problem.code).toBe('ambiguous');
    for (const each of readings) expect(read.problem.readings).toContain(each);
    for (const each of read.problem.readings!) expect(parseThread(each).ok, each).toBe(true);
  });

/** [text, what the refusal must name] */
const REFUSED: readonly (readonly [string, string])[] = [
  ['', 'M10x1.25'],
  ['M', 'M10'],
  ['M10x0', 'M10x1.25'],
  ['M6x30', 'length'],
  ['M10x-1', 'M10x1.25'],
  ['M10x1,250', 'point'],
  ['M1e308', 'M10x1.25'],
  ['M99999', '355 mm'],
  ['M0', '355 mm'],
  ['Tr 40x14', 'Tr 40x14 (P7)'],
  ['Tr 40x15 (P7)', 'pitch times the starts'],
  ['Tr 41x7', 'Tr 40'],
  ['lead 7 mm 2-start pitch 3 mm ø20', 'pitch times the starts'],
  ['0-start pitch 2 mm ø20', 'whole number from 1'],
  ['999-start pitch 2 mm ø20', 'whole number from 1'],
  ['3-start pitch 0 mm ø20', 'from 0.2 mm'],
  ['3-start pitch 2 mm', 'diameter is missing'],
  ['1/2-11 UNC', '1/2-13 UNC'],
  ['1/0-20 UNC', 'not'],
  ['7/32 BSW', 'BSF'],
  ['G 2/7', 'G 1/2'],
  ['R 5/8', 'G 5/8'],
  ['R 1/2A', 'R threads have none'],
  ['1/2-11.5 NPT', '14'],
  ['1/2 NPTF', 'NPT'],
  ['3/4-6 Acme', 'Tr 20x4'],
  ['a nice thread', 'M10x1.25'],
  ['__proto__', 'M10x1.25'],
  ['M10x1.25 LH RH', 'one of them'],
  ['M10x1.25\u0000', 'printed'],
  ['x'.repeat(100_000), 'too long'],
];
for (const [text, names] of REFUSED)
  test(`derived: “${text.slice(0, 40)}” is refused and says what would be right`, () => {
    const read = parseThread(text);
    if (read.ok) throw new Error(`taken as ${read.value.designation}`);
    expect(read.problem.message).toContain(names);
    expect(read.problem.message).toMatch(/[.]$/);
    expect(read.problem.message).not.toMatch(/NaN|undefined|Infinity/);
  });

test('derived: any text is answered with a thread that has finite sizes, or a sentence', () => {
  const piece = fc.constantFrom(
    'M',
    'Tr',
    'G',
    'R',
    'UNC',
    'NPT',
    'BSW',
    '1/4',
    '10',
    'x',
    '-',
    '1.25',
    ' ',
    'LH',
    'P',
    '(',
    '7',
    'start',
    'lead',
    '"',
    '0',
    '1e308',
    'ø',
    'mm',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ maxLength: 40 }),
        fc.array(piece, { maxLength: 8 }).map((parts) => parts.join('')),
      ),
      (text) => {
        const read = parseThread(text);
        if (read.ok) {
          const { diameter, pitch, lead, starts } = read.value;
          for (const value of [diameter, pitch, lead]) expect(value > 0 && Number.isFinite(value)).toBe(true);
          expect(Number.isInteger(starts)).toBe(true);
          expect(parseThread(read.value.designation).ok, read.value.designation).toBe(true);
        } else {
          expect(read.problem.message).toMatch(/[.]$/);
          expect(read.problem.message).not.toMatch(/NaN|undefined|Infinity/);
        }
      },
    ),
    { numRuns: 3000, seed: 7 },
  );
});
