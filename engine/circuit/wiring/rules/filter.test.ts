import { describe, expect, test } from 'vitest';
import { newRefit } from '../../../refit/index.ts';
import { judgeSupply } from '../../power/index.ts';
import { checkWiring } from '../check/checker.ts';
import { readWiring } from '../read.ts';
import { wired } from '../wired.fixture.ts';

const ask = (wiring: ReturnType<typeof wired>, id: string) =>
  checkWiring(wiring).find((each) => each.id === id);
const DEVICES = (filter = 'current=10_A volts=250_V leakage=2_mA leakage-volts=230_V') => [
  'X0 mains-inlet volts=230_V current=16_A',
  'F1 breaker poles=1 amps=10_A',
  `Z1 mains-filter ${filter}`,
  'T1 inverter volts=230_V supply-current=8_A',
  'X1 earth-bar',
];
const RIGHT = [
  'X0.L1 F1.1',
  'F1.2 Z1.L1',
  'X0.N Z1.N',
  'Z1.L1-load T1.L',
  'Z1.N-load T1.N',
  'X0.PE X1.1',
  'Z1.PE X1.2',
  'T1.PE X1.3',
];

describe('a mains filter', () => {
  test('derived: behind its breaker and before its inverter it fits; mains pass through it', () => {
    const wiring = wired(DEVICES(), RIGHT);
    const findings = checkWiring(wiring);
    expect(
      findings.filter(({ rule }) => rule === 'filter').map(({ id, verdict }) => `${verdict} ${id}`),
    ).toEqual(['fits filter:Z1', 'fits filter:Z1:current']);
    expect(ask(wiring, 'filter:Z1:current')!.margin).toBeCloseTo(10 / 8, 12);
    expect(ask(wiring, 'mains:T1.L')!.verdict).toBe('fits');
  });

  test('derived: bridged, the wrong way round, without a breaker, before no drive', () => {
    expect(ask(wired(DEVICES(), [...RIGHT, 'F1.2 T1.L']), 'filter:Z1')!.sentence).toMatch(/leads round/);
    const round = ['X0.L1 F1.1', 'F1.2 Z1.L1-load', 'X0.N Z1.N-load', 'Z1.L1 T1.L', 'Z1.N T1.N'];
    expect(ask(wired(DEVICES(), round), 'filter:Z1')!.sentence).toMatch(/wrong way round/);
    const bare = ask(wired(DEVICES(), ['X0.L1 Z1.L1', ...RIGHT.slice(2)]), 'filter:Z1')!;
    expect([bare.verdict, bare.sentence]).toEqual(['tight', expect.stringMatching(/No fuse or breaker/)]);
    const supply = [...DEVICES().filter((each) => !each.startsWith('T1')), 'T1 supply mains-current=1_A'];
    expect(ask(wired(supply, RIGHT), 'filter:Z1')!.sentence).toMatch(/no drive/);
  });

  test('derived: too small, for too few volts, currents not known', () => {
    const small = ask(wired(DEVICES('current=6_A'), RIGHT), 'filter:Z1:current')!;
    expect(small.verdict).toBe('fails');
    expect(small.margin).toBeCloseTo(6 / 8, 12);
    expect(ask(wired(DEVICES(''), RIGHT), 'filter:Z1:current')!.needs).toEqual(['Z1.current']);
    expect(ask(wired(DEVICES('current=10_A volts=120_V'), RIGHT), 'filter:Z1:volts')!.verdict).toBe('fails');
  });

  test('derived: wires in and out in one jacket, and on one way', () => {
    const jacket = RIGHT.map((each) => (/^F1.2 Z1|^Z1.L1-load/.test(each) ? `${each} / W1` : each));
    expect(ask(wired(DEVICES(), jacket, { W1: {} }), 'filter:Z1:apart')!.verdict).toBe('fails');
    const way = RIGHT.map((each) =>
      /^F1.2 Z1/.test(each) ? `${each} / W1` : /^Z1.L1-load/.test(each) ? `${each} / W2` : each,
    );
    const on = (one: string, other: string) =>
      ask(wired(DEVICES(), way, { W1: { route: one }, W2: { route: other } }), 'filter:Z1:apart')?.verdict;
    expect(on('left', 'left')).toBe('tight');
    expect(on('left', 'right')).toBeUndefined();
  });

  test('derived: without earth it fails; one that leaks over 10 mA wants a conductor that cannot be lost', () => {
    expect(
      ask(
        wired(
          DEVICES(),
          RIGHT.filter((each) => !each.startsWith('Z1.PE')),
        ),
        'earth:Z1.PE',
      )!.verdict,
    ).toBe('fails');
    const leaky = DEVICES('current=10_A leakage=16_mA');
    expect(ask(wired(leaky, RIGHT), 'filter:Z1:earth')!.verdict).toBe('tight');
    expect(ask(wired(leaky, [...RIGHT, 'Z1.PE X1.4']), 'filter:Z1:earth')!.verdict).toBe('fits');
  });

  test('derived: its leakage, taken to the mains there are, adds to what a residual current device sees', () => {
    const leakage = (filter: string) => {
      const wiring = wired(
        DEVICES(filter).map((each) => (each.startsWith('T1') ? `${each} leakage=1_mA` : each)),
        RIGHT,
      );
      const found = judgeSupply(
        {
          ...newRefit({ id: 'bench', name: 'Bench', machine: 'other' }),
          wiring: { ...wiring, settings: { 'residual-type': 'A', 'residual-amps': '30 mA' } },
        },
        readWiring(wiring),
      ).findings.find(({ id }) => id.startsWith('leakage:'))!;
      return found.figures.find(({ name }) => name === 'leakage')!.value;
    };
    expect(leakage('leakage=2_mA leakage-volts=230_V')).toBeCloseTo(0.003, 12);
    // Through capacitors: twice the volts, twice the current.
    expect(leakage('leakage=2_mA leakage-volts=115_V')).toBeCloseTo(0.005, 12);
    expect(leakage('leakage=2_mA')).toBeCloseTo(0.003, 12);
  });
});
