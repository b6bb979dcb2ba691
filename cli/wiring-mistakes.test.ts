/** Mistakes of a hand that wires: each is told plainly, and nothing that was entered is lost. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readWiring } from '../engine/circuit/wiring/index.ts';
import { wired } from '../engine/circuit/wiring/wired.fixture.ts';
import { blankRefit } from '../engine/refit/blank.ts';
import { type Refit, readRefit, type Wiring, writeRefit } from '../engine/refit/index.ts';
import { inFolder, run } from './run.fixture.ts';

const DEVICES = [
  'G1 supply volts=24_V current=5_A',
  'A1 control',
  'K1 relay suppressor=clamp',
  'X2 strip ways=4',
];
const WIRES = ['G1.plus A1.plus', 'G1.minus A1.minus', 'A1.out1 K1.A1', 'K1.A2 G1.minus'];

interface Said {
  readonly findings: readonly {
    readonly id: string;
    readonly verdict: string;
    readonly sentence: string;
    readonly remedy?: string;
    readonly about: readonly string[];
  }[];
}

/** What `fettle wiring` says of it; and that the file holds afterwards what it held before. */
async function asked(
  wiring: Wiring,
  change: (refit: Refit) => Refit = (refit) => refit,
): Promise<Said & { text: string }> {
  const made = blankRefit({ id: 'a', name: 'Lathe', machine: 'lathe', axes: ['X'] });
  if (!made.ok) throw new Error(made.problem.message);
  const text = writeRefit(change({ ...made.value, wiring }));
  let answer: (Said & { text: string }) | undefined;
  await inFolder(async (folder) => {
    const file = join(folder, 'machine.json');
    writeFileSync(file, text);
    const said = await run('wiring', file, '--all');
    const { code, out } = await run('wiring', file, '--json');
    // A wire that goes nowhere cannot be read: 2.
    expect([1, 2, 3]).toContain(code);
    answer = { ...(JSON.parse(out) as Said), text: said.out };
    expect(readFileSync(file, 'utf8')).toBe(text);
    const again = readRefit(readFileSync(file, 'utf8'));
    expect(again.ok && again.value.wiring).toEqual(wiring);
    const read = readWiring(wiring);
    expect([read.devices.size, read.wires.size]).toEqual([
      Object.keys(wiring.devices).length,
      Object.keys(wiring.wires).length,
    ]);
  });
  return answer!;
}

const about = ({ findings }: Said, id: string) => findings.find((each) => each.id === id);

describe('derived: mistakes in a wiring', () => {
  test('derived: a ring of wires on a 0 V', async () => {
    const ring = await asked(wired(DEVICES, [...WIRES, 'G1.minus X2.1', 'X2.1 A1.minus']));
    const found = about(ring, ring.findings.find(({ id }) => id.startsWith('loop:'))!.id)!;
    expect(found).toMatchObject({
      verdict: 'tight',
      sentence: expect.stringMatching(/two ways from one terminal/),
    });
    expect(found.remedy).toMatch(/Take one of them off/);
    expect(ring.text.replace(/\s+/g, ' ')).toContain('make a ring');
  });

  test('derived: a wire from a terminal to itself', async () => {
    const own = await asked(wired(DEVICES, [...WIRES, 'X2.1 X2.1']));
    expect(about(own, 'wire:w5')).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(/to itself/),
    });
  });

  test('derived: two supplies joined, of different volts and of the same', async () => {
    for (const [volts, verdict, says] of [
      ['5_V', 'fails', /feeds into the lower/],
      ['24_V', 'tight', /share a load only where their makers say so/],
    ] as const) {
      const said = await asked(
        wired(
          [...DEVICES, `G2 supply volts=${volts} current=5_A`],
          [...WIRES, 'G1.plus G2.plus', 'G1.minus G2.minus'],
        ),
      );
      expect(about(said, 'supplies-joined:G1.plus:G2.plus')).toMatchObject({
        verdict,
        sentence: expect.stringMatching(says),
        remedy: expect.stringMatching(/own rail/),
      });
    }
  });

  test('derived: plus on minus of one supply', async () => {
    const said = await asked(wired(DEVICES, [...WIRES, 'G1.plus G1.minus']));
    expect(about(said, 'supplies-joined:G1.plus:short')).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(/short circuit/),
    });
  });

  test('derived: a terminal used more often than it holds; two outputs on one input', async () => {
    const three = await asked(wired(DEVICES, [...WIRES, 'A1.out1 X2.1', 'A1.out1 X2.3']));
    expect(about(three, 'holding:A1.out1')).toMatchObject({
      verdict: 'tight',
      sentence: expect.stringMatching(/3 conductors.*holds 2/),
    });
    const two = await asked(
      wired(
        [
          'G1 supply',
          'A1 control pulse-axes=X output-level=ttl-5v',
          'A2 control pulse-axes=X output-level=ttl-5v',
          'T1 drive command=pulses input-level=ttl-5v motor=stepper',
        ],
        ['A1.X-step T1.STEP', 'A2.X-step T1.STEP', 'A1.GND T1.GND', 'A2.GND T1.GND'],
      ),
    );
    expect(about(two, 'outputs-joined:A1.X-step')).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(/drive the same wire/),
    });
  });

  test('derived: a part taken out while it is wired: the device, its wires and what they were stay', async () => {
    const wiring = wired(
      [...DEVICES, 'T1 drive motor=stepper'],
      [...WIRES, 'G1.plus T1.DC+', 'G1.minus T1.DC-'],
    );
    const own = { ...wiring.devices.T1!, part: 'x-drive-old' };
    const said = await asked({ ...wiring, devices: { ...wiring.devices, T1: own } });
    const found = about(said, 'part:T1')!;
    expect(found).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(
        /fills no place of the machine any more, and is still wired at T1\.DC\+ and T1\.DC-/,
      ),
    });
    expect(found.remedy).toMatch(/Let it stand for the part that took its place/);
  });

  test('derived: a part that stays but no longer fills its place', async () => {
    const wiring = wired([...DEVICES, 'T1 drive motor=stepper'], [...WIRES, 'G1.plus T1.DC+']);
    const own = { ...wiring.devices.T1!, part: 'x-drive' };
    const said = await asked({ ...wiring, devices: { ...wiring.devices, T1: own } }, (refit) => ({
      ...refit,
      chains: refit.chains.map((chain) => ({
        ...chain,
        places: { ...chain.places, drive: { ...chain.places.drive!, chosen: null } },
      })),
    }));
    expect(about(said, 'part:T1')!.verdict).toBe('fails');
  });

  test('derived: a wire to a terminal or a device that is not there', async () => {
    const said = await asked(wired(DEVICES, [...WIRES, 'A1.out1 K1.A9', 'K9.13 X2.2']));
    expect(about(said, 'wire:w5')).toMatchObject({
      verdict: 'fails',
      remedy: expect.stringMatching(/K1 has: A1, A2/),
    });
    expect(about(said, 'wire:w6')).toMatchObject({
      verdict: 'fails',
      sentence: expect.stringMatching(/no such terminal/),
    });
  });
});
