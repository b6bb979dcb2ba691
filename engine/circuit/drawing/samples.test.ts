import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PARTS } from '../../parts/index.ts';
import { readRefit } from '../../refit/index.ts';
import { lookThrough } from '../whole/index.ts';
import { proposeWiring } from '../wiring/index.ts';
import { legendFile, svgFile } from './file.ts';
import { layOut } from './layout.ts';
import { libraryLayouter } from './library.ts';
import { wrapped } from './measure.ts';
import { overlaps } from './overlap.fixture.ts';
import { PAGE } from './pack.ts';
import { planOf } from './plan.ts';

const SAMPLES = join(import.meta.dirname, '..', '..', '..', 'samples');

test.each(['carriage-works-lathe', 'boatyard-mill'])(
  'derived: %s, wired as proposed: nothing lies on anything, every wire is drawn, a sheet is near A3',
  async (name) => {
    const read = readRefit(readFileSync(join(SAMPLES, `${name}.json`), 'utf8'), Object.keys(PARTS));
    if (!read.ok) throw new Error(read.problem.message);
    const refit = { ...read.value, wiring: proposeWiring(read.value).wiring };
    const looked = lookThrough(refit);
    expect(looked.read.wires.size).toBeGreaterThan(80);
    const { sheets } = (await layOut(planOf(refit, looked.read), libraryLayouter()))!;
    const clusters = sheets.flatMap((sheet) => sheet.clusters.map(({ laid }) => laid));
    expect(clusters.flatMap(overlaps)).toEqual([]);
    const drawn = new Set(
      clusters.flatMap(({ wires, flags }) => [
        ...wires.map(({ wire }) => wire.id),
        ...flags.flatMap(({ flag }) => flag.lines.map(({ wire }) => wire)),
      ]),
    );
    expect([...looked.read.wires.keys()].filter((id) => !drawn.has(id))).toEqual([]);
    // Printed on A3 a letter of nine units is at least a millimetre and a half high.
    for (const { width, height } of sheets)
      expect(Math.max(width / PAGE.width, height / PAGE.height)).toBeLessThan(1.5);
  },
  60_000,
);

async function drawn(name: string) {
  const read = readRefit(readFileSync(join(SAMPLES, `${name}.json`), 'utf8'), Object.keys(PARTS));
  if (!read.ok) throw new Error(read.problem.message);
  const looked = lookThrough(read.value);
  const plan = planOf(read.value, looked.read);
  const { sheets } = await layOut(plan, libraryLayouter());
  return { read: looked.read, plan, sheets };
}

describe.each(['carriage-works-lathe', 'boatyard-mill'])('%s as it is wired', (name) => {
  test('derived: no word is cut, no pole is called by a terminal only, no strip stands about alone', async () => {
    const { sheets } = await drawn(name);
    for (const sheet of sheets) {
      expect(svgFile(sheet).match(/[^<>]*…/g)).toBeNull();
      expect(svgFile(sheet)).not.toMatch(/all on /);
      for (const { laid } of sheet.clusters)
        if (laid.pieces.every(({ piece }) => piece.group.symbol === 'terminal'))
          expect(laid.wires.length, laid.pieces.map(({ piece }) => piece.id).join()).toBeGreaterThan(0);
    }
  }, 60_000);

  test('derived: phases of the inlet come in their order, earth last; the mains flow from left to right', async () => {
    const { sheets, read } = await drawn(name);
    const power = sheets.filter(({ circuit }) => circuit === 'power').flatMap(({ clusters }) => clusters);
    const inlet = power.flatMap(({ laid }) => laid.pieces).find(({ piece }) => piece.device === 'X0')!;
    const marks = [...inlet.ports].sort((a, b) => a.y - b.y).map(({ terminal }) => terminal.slice(3));
    expect(marks).toEqual(['L1', 'L2', 'L3', 'N', 'PE'].filter((mark) => marks.includes(mark)));
    let looked = 0;
    for (const { laid } of power)
      for (const { wire } of laid.wires)
        for (const [own, other] of [
          [wire.from, wire.to],
          [wire.to, wire.from],
        ] as const) {
          const nature = read.terminals.get(own)?.nature;
          if (nature?.kind !== 'mains' || nature.side !== 'takes') continue;
          looked++;
          const place = (id: string) =>
            laid.pieces.find(({ ports }) => ports.some(({ terminal }) => terminal === id))!.x;
          expect(place(own), `${other} feeds ${own}`).toBeGreaterThan(place(other));
        }
    expect(looked).toBeGreaterThan(3);
  }, 60_000);

  test('derived: a contact that stands in two diagrams says so in both', async () => {
    const { sheets } = await drawn(name);
    const where = new Map<string, Set<string>>();
    const says = new Map<string, boolean[]>();
    for (const { circuit, clusters } of sheets)
      for (const { laid } of clusters)
        for (const { piece } of laid.pieces)
          if ('poles' in piece.group)
            for (const terminal of piece.group.poles.flat()) {
              where.set(terminal, (where.get(terminal) ?? new Set()).add(circuit));
              const also = piece.refers.some((each) => each.startsWith('the same one also in'));
              says.set(terminal, [...(says.get(terminal) ?? []), also]);
            }
    const twice = [...where].filter(([, circuits]) => circuits.size > 1);
    expect(twice.length).toBeGreaterThan(0);
    for (const [terminal] of twice) expect(says.get(terminal), terminal).not.toContain(false);
  }, 60_000);
});

test('derived: an emergency stop opens directly, a coil shows what lies across it, and the legend tells the marks', async () => {
  const { plan, sheets } = await drawn('carriage-works-lathe');
  const groups = (id: string) =>
    plan.devices.find((device) => device.id === id)!.groups.map(({ symbol }) => symbol);
  expect(groups('S1')).toContain('mushroom');
  expect(groups('K1')).toContain('coil-clamp');
  const legend = legendFile(plan);
  for (const words of [
    'opens directly',
    'coil with a clamp',
    'dashed wire',
    'bold frame',
    'terminal of which a finding speaks',
  ])
    expect(legend).toContain(words);
  expect(
    sheets
      .flatMap(({ clusters }) => clusters)
      .flatMap(({ laid }) => laid.flags)
      .some(({ flag }) => flag.lines.some(({ joint }) => joint?.startsWith('X2.'))),
  ).toBe(true);
});

test('derived: long names go on in a second line and are cut nowhere but where they are no names any more', () => {
  expect(wrapped('Drive of spindle with chuck', 20)).toEqual(['Drive of spindle', 'with chuck']);
  expect(wrapped('x'.repeat(45), 20)).toEqual(['x'.repeat(20), 'x'.repeat(20), 'x'.repeat(5)]);
  expect(wrapped('')).toEqual([]);
  const endless = wrapped('word '.repeat(200), 20);
  expect(endless).toHaveLength(4);
  expect(endless.at(-1)).toMatch(/…$/);
});
