import { expect, test } from 'vitest';
import type { Column } from '../../../engine/evidence/index.ts';
import { type Draft, draftOf, noteOf, setAside, setCell, takenOf } from './rows.ts';
import { pasteInto, tableOf } from './table-text.ts';

const COLUMNS: readonly Column[] = [
  { key: 'volts', kind: 'quantity', name: 'volts', unit: 'V', help: 'Volts.' },
  { key: 'speed', kind: 'quantity', name: 'speed', unit: 'r/min', help: 'Speed.' },
  {
    key: 'way',
    kind: 'choice',
    name: 'which way',
    options: { cw: 'clockwise', ccw: 'counter-clockwise' },
    optional: true,
    help: 'Way.',
  },
];
const paste = (text: string, column = 0) => {
  const pasted = pasteInto(COLUMNS, [], text, { row: 0, column });
  if (!pasted.ok) throw new Error(pasted.problem.message);
  return pasted.value;
};
const draft = (rows: Draft['rows']): Draft => ({ given: {}, rows, note: '', photos: [] });

test('derived: headings in another order, another unit, decimal commas and words for a choice', () => {
  const { rows, notes } = paste(
    'Speed\tVolts (mV)\tWhich way\n1012\t36400\tclockwise\n1012,5\t36200\tCCW\n990\t\t',
  );
  expect(rows.map(({ cells }) => cells)).toEqual([
    { speed: '1012', volts: '36.4 V', way: 'cw' },
    { speed: '1012,5', volts: '36.2 V', way: 'ccw' },
    { speed: '990', volts: '', way: '' },
  ]);
  expect(notes.join(' ')).toContain('mV, as the heading says');
});

test('derived: one column with decimal commas goes into the column it was pasted in, and keeps its digits', () => {
  const { rows, notes } = paste('1,310\n1,33\n1,3', 1);
  expect(rows.map(({ cells }) => cells)).toEqual([{ speed: '1.310' }, { speed: '1,33' }, { speed: '1,3' }]);
  expect(notes.join(' ')).not.toContain('ends before');
});

test('derived: what is no number keeps its text and is said', () => {
  const { rows, notes } = paste('36.4\t1012\n<img onerror=x>\t1010');
  expect(rows[1]!.cells.volts).toBe('<img onerror=x>');
  expect(notes.join(' ')).toContain('A2');
});

test('derived: written and read back, with the rows set aside', () => {
  const typed = setAside(
    setCell(
      setCell(setCell(setCell([], 0, 'volts', '36.40'), 0, 'speed', '1,5'), 1, 'volts', '40'),
      1,
      'way',
      'cw',
    ),
    1,
    'bumped, "badly"',
  );
  const { rows } = paste(tableOf(COLUMNS, typed));
  expect(rows).toEqual([
    { cells: { volts: '36.40', speed: '1.5', way: '' } },
    { cells: { volts: '40', speed: '', way: 'cw' }, aside: 'bumped, "badly"' },
  ]);
});

test('derived: the row being typed is left out until it is whole, or left', () => {
  const rows = setCell(setCell(setCell([], 0, 'volts', '1'), 0, 'speed', '2'), 1, 'volts', '3');
  expect(takenOf(COLUMNS, draft(rows), 1)).toMatchObject({
    unfinished: 2,
    taken: { readings: { volts: ['1'] } },
  });
  expect(takenOf(COLUMNS, draft(rows)).taken.readings).toEqual({ volts: ['1', '3'], speed: ['2', ''] });
});

test('derived: reasons travel in the note and come back to their rows', () => {
  const rows = setAside(setCell(setCell([], 0, 'volts', '1'), 1, 'volts', '9'), 1, 'probe slipped');
  const note = noteOf({ ...draft(rows), note: 'Motor on the bench.' });
  expect(note).toBe('Motor on the bench.\nRow 2 set aside: probe slipped');
  const back = draftOf({
    id: 'e-1',
    method: 'm',
    part: null,
    given: {},
    readings: { volts: ['1', '9'] },
    aside: [1],
    note,
    when: '2024-03-01',
    photos: [],
  });
  expect(back).toEqual({ ...draft(rows), note: 'Motor on the bench.' });
});
