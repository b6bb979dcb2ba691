import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PARTS } from '../../parts/index.ts';
import { readRefit } from '../../refit/index.ts';
import { ringItOut } from '../readings/index.ts';
import { readWiring } from '../wiring/index.ts';
import { LISTS, listCsv, listDocument, sharedLines } from './index.ts';
import { SMALL } from './read.fixture.ts';
import { sectionsOf } from './ring-sections.ts';
import { sayTerminal } from './words.ts';

const SAMPLES = join(import.meta.dirname, '..', '..', '..', 'samples');

function sample(name: string) {
  const read = readRefit(readFileSync(join(SAMPLES, `${name}.json`), 'utf8'), Object.keys(PARTS));
  if (!read.ok) throw new Error(read.problem.message);
  return readWiring(read.value.wiring, read.value);
}

const OF = { first: 0, red: 1, black: 2, shows: 4, otherwise: 5 };

describe('the lathe rung out', () => {
  const read = sample('carriage-works-lathe');
  const list = LISTS['ring-out'](read);
  const lines = list.groups.flatMap(({ title, rows }) => rows.map(({ cells }) => ({ title, cells })));

  test('derived: no line without a word on what another reading means, none that is not meaningful', () => {
    for (const { cells } of lines) {
      expect(cells[OF.otherwise], cells.join(' | ')).not.toBe('');
      expect(cells[OF.shows]).not.toMatch(/not meaningful/);
    }
    expect(list.about).toMatch(/\d+ readings are left out/);
  });

  test('derived: what another reading means fits the row: a coil says less, more and OL, an open way any reading', () => {
    const coil = lines.find(({ cells }) => /^101 Ω to 138 Ω/.test(cells[OF.shows]!))!;
    expect(coil.cells[OF.otherwise]).toMatch(/Less: .*More: .*OL: /);
    for (const { cells } of lines)
      if (cells[OF.shows] === 'no path: the meter shows OL' && cells[OF.black] === 'X1.1')
        expect(cells[OF.otherwise]).toMatch(/^Any reading but OL/);
  });

  test('derived: in a table without a turn of its own, terminals come in the order one counts them', () => {
    const collator = new Intl.Collator('en', { numeric: true });
    const [wires] = list.groups;
    const reds = wires!.rows.map(({ cells }) => cells[OF.red]!);
    expect(reds).toEqual([...reds].sort(collator.compare));
    expect(wires!.rows).toHaveLength(read.wires.size);
  });

  test('derived: a sentence that all lines of a table share stands once on paper, and in every line of the CSV', () => {
    const [wires] = list.groups;
    const [, broken] = sharedLines(wires!, list.columns);
    expect(broken).toContain('a ferrule pressed on insulation');
    const paper = listDocument('Lathe', list, '2026-01-02');
    expect(paper.split('a ferrule pressed on insulation')).toHaveLength(2);
    expect(listCsv(list).split('a ferrule pressed on insulation')).toHaveLength(read.wires.size + 1);
  });

  test('derived: long sets of joined terminals are folded to one on a strip and their number', () => {
    for (const { cells } of lines) expect(cells[OF.red]!.length).toBeLessThan(60);
    const folded = lines.find(({ cells }) => /terminals joined/.test(cells[OF.red]!))!;
    const [, where, many] = /^(\S+) \(.*?(\d+) terminals joined/.exec(folded.cells[OF.red]!)!;
    expect(read.devices.get(where!.split('.')[0]!)!.id).toMatch(/^X/);
    expect(Number(many)).toBeLessThanOrEqual(read.netOf.get(where!)!.terminals.length);
  });

  test('derived: every reading that tells something is on the sheet once, contacts at rest and moved on one line', () => {
    const told = ringItOut(read).steps.flatMap(({ id, rows }) =>
      id === 'common' ? [] : rows.filter(({ expect: band, otherwise }) => band || otherwise !== ''),
    );
    const on = new Set(list.groups.flatMap(({ rows }) => rows.map(({ id }) => id)));
    const missing = told.filter(
      ({ id }) => !on.has(id) && !(id.endsWith(':moved') && on.has(id.replace(/moved$/, 'rest'))),
    );
    expect(missing.map(({ id }) => id)).toEqual([]);
  });

  test('frozen: about a dozen sheets of A4: under 600 lines, most of them one of two beside each other', () => {
    expect(lines.length).toBeLessThan(600);
    const paper = listDocument('Lathe', list, '2026-01-02');
    expect(paper).toContain('class="beside-2"');
    expect(paper).toContain('class="beside-3"');
  });
});

test('derived: lines that must be worked in turn keep it; others part by what they share', () => {
  const line = (sort: string, shows: string, otherwise = 'x') => ({
    id: sort,
    sort,
    cells: ['', sort, 'X1.1', '', shows, otherwise],
  });
  const lines = [line('K10.1', 'a'), line('K2.1', 'a'), line('K1.1', 'b'), line('K3.1', 'a')];
  expect(sectionsOf(lines, true)[0]!.lines.map(({ sort }) => sort)).toEqual([
    'K10.1',
    'K2.1',
    'K1.1',
    'K3.1',
  ]);
  const [alike, others] = sectionsOf(lines, false);
  expect(alike!.lines.map(({ sort }) => sort)).toEqual(['K2.1', 'K3.1', 'K10.1']);
  expect(alike!.shared).toContain(4);
  expect(others!.lines.map(({ sort }) => sort)).toEqual(['K1.1']);
  expect(sectionsOf([], false)).toEqual([]);
});

test('derived: volts in a pin table are rounded as everywhere else', () => {
  const [terminal] = [...SMALL.terminals.values()];
  const said = sayTerminal({
    ...terminal!,
    name: 'plus',
    nature: { kind: 'supply', pole: 'plus', volts: 79.62840682017506 },
  });
  expect(said).toBe('plus (gives plus of a supply, 79.6 V)');
});
