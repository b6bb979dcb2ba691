import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PARTS } from '../../parts/index.ts';
import { readRefit } from '../../refit/index.ts';
import { lookThrough } from '../whole/index.ts';
import { proposeWiring } from '../wiring/index.ts';
import { layOut } from './layout.ts';
import { libraryLayouter } from './library.ts';
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
