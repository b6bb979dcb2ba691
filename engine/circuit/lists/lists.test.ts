import { expect, test } from 'vitest';
import { usualColours } from './core-colours.ts';
import { LISTS, listCsv, listDocument } from './index.ts';
import { SMALL } from './read.fixture.ts';

/** CSV taken apart as RFC 4180 says, by another way than it was made. */
function parsed(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, cell = '', end] of text
    .replace(/^\ufeff/, '')
    .matchAll(/("(?:[^"]|"")*"|[^,\r\n"]*)(,|\r\n)/g)) {
    rows.at(-1)!.push(cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell);
    if (end !== ',') rows.push([]);
  }
  return rows.slice(0, -1);
}

test('derived: the wire list holds every wire twice, once at each end, each with the other', () => {
  const { groups } = LISTS.wires(SMALL);
  const rows = groups.flatMap((group) => group.rows);
  for (const wire of SMALL.wires.values()) {
    const own = rows.filter(({ id }) => id === wire.id).map(({ cells }) => [cells[0], cells[2]]);
    expect(own.sort()).toEqual(
      [
        [wire.from, wire.to],
        [wire.to, wire.from],
      ].sort(),
    );
  }
  expect(rows).toHaveLength(2 * SMALL.wires.size);
  expect(rows.find(({ cells }) => cells[0] === 'A1.I1')!.cells).toEqual([
    'A1.I1',
    '7',
    'X1.2',
    'blue',
    '0.75',
    '',
    '0.75 grey',
    '',
  ]);
  expect(rows.find(({ cells }) => cells[0] === 'G1.plus')!.cells[6]).toBe('0.75');
  // S2 would come before S10.
  expect(groups.map(({ title }) => title)).toEqual(['A1', 'G1', 'K1', 'M1', 'Q1', 'S10', 'T1', 'X0', 'X1']);
});

test('derived: a cable says its cores, way and shield; a strip what stays and what goes out', () => {
  const [cable] = LISTS.cables(SMALL).groups;
  expect(cable!.note).toBe(
    '2 of 5 cores in use; 0.5 mm²; 4.5 m; shield of braid; moves with the machine: a cable made for it; drag chain; between S10, X1',
  );
  expect(cable!.rows[0]!.cells).toEqual(['1', 'white', 'X1.1', 'S10.13', '0.5', '+5']);
  const [strip] = LISTS.strips(SMALL).groups;
  expect(strip!.rows.map(({ cells }) => cells)).toEqual([
    ['1', '4 → G1.plus', '+5 → S10.13', 'W2', ''],
    ['2', '7 → A1.I1', '6 → S10.14', 'W2', ''],
    ['10', '', '', '', ''],
  ]);
});

test('derived: pins say what they are and where a photo shows them; labels count two a wire and a cable', () => {
  const pins = LISTS.pins(SMALL, { photos: new Map([['A1.Q1', 'board-1.jpg']]) });
  const control = pins.groups.find(({ title }) => title === 'A1')!;
  expect(control.rows.map(({ cells }) => cells)).toEqual([
    ['I1', 'input that wants plus (PNP)', '7', 'blue', 'X1.2', ''],
    ['Q1', 'output that gives plus (PNP)', '8', '', 'K1.A1', 'board-1.jpg'],
    ['C', 'common of inputs', '10, 11', '', 'G1.minus, K1.A2', ''],
  ]);
  expect(pins.groups.some(({ title }) => title === 'X1')).toBe(false);
  expect(LISTS.labels(SMALL).groups.map(({ rows }) => rows.length)).toEqual([26, 2, 9, 3]);
});

test('derived: cores of which nobody said the colour get the usual ones, each once, and with a question mark', () => {
  for (const cable of SMALL.cables.values()) {
    const usual = [...usualColours(SMALL, cable).values()];
    for (const id of usualColours(SMALL, cable).keys()) expect(SMALL.wires.get(id)!.colour).toBe('');
    const guessed = usual.filter((each) => each.endsWith('?'));
    expect(new Set(guessed).size).toBe(guessed.length);
  }
  const wire = (id: string, colour = '') => ({
    ...[...SMALL.wires.values()][0]!,
    id,
    colour,
    from: 'a.1',
    to: 'b.1',
  });
  const wires = new Map(['u', 'v', 'w'].map((id) => [id, wire(id, id === 'v' ? 'white' : '')]));
  const cable = { ...[...SMALL.cables.values()][0]!, wires: ['u', 'v', 'w'], section: 0.25e-6 };
  expect([...usualColours({ ...SMALL, wires }, cable)]).toEqual([
    ['u', 'brown (BN)?'],
    ['w', 'green (GN)?'],
  ]);
  expect([...usualColours({ ...SMALL, wires }, { ...cable, section: 1.5e-6 }).values()]).toEqual([
    'black, number 1 (BK)?',
    'black, number 2 (BK)?',
  ]);
});

test('derived: CSV reads back cell by cell, and nothing in it is a formula', () => {
  for (const make of Object.values(LISTS)) {
    const list = make(SMALL);
    const rows = parsed(listCsv(list));
    const wanted = list.groups.flatMap(({ title, rows: own }) => own.map(({ cells }) => [title, ...cells]));
    expect(rows.slice(1).map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@])/, '')))).toEqual(wanted);
    for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
  }
  expect(listCsv(LISTS.labels(SMALL))).toContain(`"'=cmd(a,""b"")"`);
});

test('derived: on paper every list has its caution, a square a line, and no markup from a name', () => {
  for (const make of Object.values(LISTS)) {
    const html = listDocument('<b>Lathe</b>', make(SMALL), '2026-01-02');
    expect(html).toContain('licensed electrician');
    expect(html).not.toContain('<b>Lathe');
    expect(html).not.toContain('<script');
    expect(html).toContain('As of 2026-01-02');
  }
  const wires = listDocument('Lathe', LISTS.wires(SMALL), '2026-01-02');
  expect(wires.match(/class="done"/g)).toHaveLength(2 * SMALL.wires.size);
});

test('derived: ringing out goes step by step, with its cautions on paper and room for what was measured', () => {
  const list = LISTS['ring-out'](SMALL);
  const rows = list.groups.flatMap((group) => group.rows);
  // The first step has a line for every wire.
  expect(list.groups[0]!.rows).toHaveLength(SMALL.wires.size);
  for (const { cells } of rows) {
    expect(cells).toHaveLength(list.columns.length);
    expect(cells[4]).not.toBe('');
    expect(cells.at(-1)).toBe('');
  }
  const paper = listDocument('Lathe', list, '2026-01-02');
  for (const caution of list.groups.flatMap(({ cautions = [] }) => cautions))
    expect(paper).toContain(caution.replaceAll("'", '&#39;'));
});
