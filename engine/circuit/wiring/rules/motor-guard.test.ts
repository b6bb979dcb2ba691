import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import { symbolOf } from '../../drawing/symbol-of.ts';
import { sayTerminal } from '../../lists/words.ts';
import { judgeSupply } from '../../power/index.ts';
import { checkWiring } from '../check/checker.ts';
import { readWiring } from '../read.ts';
import { wired } from '../wired.fixture.ts';

const drawn = (breaker: string, motor = 'current=4_A volts=400_V') =>
  wired(
    [
      'X0 mains-inlet phases=three volts=230_V',
      'Q1 main-switch poles=4',
      `Q11 motor-breaker ${breaker}`.trim(),
      'K1 contactor main=3',
      `M1 mains-motor ${motor}`.trim(),
    ],
    [1, 2, 3].flatMap((n) => [
      `X0.L${n} Q1.${2 * n - 1}`,
      `Q1.${2 * n} Q11.${2 * n - 1}`,
      `Q11.${2 * n} K1.${2 * n - 1}`,
      `K1.${2 * n} M1.${'UVW'[n - 1]}`,
    ]),
  );
const asked = (breaker: string, motor?: string) =>
  checkWiring(drawn(breaker, motor)).filter(({ rule }) => rule === 'motor-guard' || rule === 'motor-start');
const of = (breaker: string, id: string, motor?: string) =>
  asked(breaker, motor).find((each) => each.id === id);

describe('a motor circuit breaker', () => {
  // The motor takes 4 A. IEC 60947-4-1: 1.05 times the setting is carried, 1.2 times trips (from memory).
  test.each([
    ['3.7 A', 'fails', /may trip while the motor does only what is on its plate/],
    ['3.9 A', 'tight', /may trip while/],
    ['4 A', 'fits', /trips before the winding gets too hot/],
    ['4.2 A', 'fits', /trips before/],
    ['4.5 A', 'tight', /hotter than it should/],
    ['5 A', 'fails', /winding may burn/],
  ] as const)('derived: set to %s before a motor of 4 A: %s', (amps, verdict, says) => {
    const found = of(`amps=${amps.replace(' ', '_')}`, 'motor-guard:M1.U')!;
    expect(found.verdict).toBe(verdict);
    expect(found.sentence).toMatch(says);
    if (verdict === 'fits') expect(found.remedy).toBeUndefined();
    else expect(found.remedy).toMatch(/Set Q11 to 4 A/);
    if (verdict === 'fails') expect(found.margin).toBeLessThan(1);
  });

  test('derived: what its dial does not hold cannot be set; one whose dial does not hold the plate is another to buy', () => {
    const wrong = of('amps=4_A least=4.5_A most=6.3_A', 'motor-guard:M1.U')!;
    expect(wrong.verdict).toBe('fails');
    expect(wrong.sentence).toMatch(/goes from 4.5 A to 6.3 A/);
    expect(wrong.remedy).toMatch(/whose dial holds 4 A/);
    expect(of('amps=7_A least=2.5_A most=6.3_A', 'motor-guard:M1.U')!.remedy).toMatch(/Set Q11 to 4 A/);
    expect(of('amps=4_A least=4_A most=6.3_A', 'motor-guard:M1.U')!.verdict).toBe('fits');
  });

  test('derived: at the start it takes 24 to 32 A; it trips at once at 13 times the end of its dial, or as its sheet has it', () => {
    const usual = of('amps=4_A most=6.3_A', 'motor-start:M1.U')!;
    expect(usual.verdict).toBe('fits');
    expect(usual.margin).toBeCloseTo((13 * 6.3 * 0.8) / 32, 12);
    expect(of('amps=4_A instant=30_A', 'motor-start:M1.U')!.verdict).toBe('tight');
    expect(of('amps=4_A instant=19_A', 'motor-start:M1.U')!.verdict).toBe('fails');
  });

  test('derived: what is not known is asked once, of the motor first', () => {
    expect(asked('', '').map(({ verdict, needs }) => [verdict, needs])).toEqual([
      ['unknown', ['M1.U.current']],
    ]);
    expect(asked('').map(({ verdict, needs }) => [verdict, needs])).toEqual([['unknown', ['Q11.2.current']]]);
  });

  test('derived: a voltage below that of its motor is too little', () => {
    expect(of('amps=4_A ac-volts=230_V', 'motor-guard:M1.U:volts')!.verdict).toBe('fails');
    expect(of('amps=4_A ac-volts=690_V', 'motor-guard:M1.U:volts')!.verdict).toBe('fits');
    expect(of('amps=4_A', 'motor-guard:M1.U:volts')).toBeUndefined();
  });

  test('derived: set to the plate it carries its load; what it breaks is asked once the mains are known', () => {
    const refit = (breaker: string, settings: Readonly<Record<string, string>> = {}) => ({
      ...sample('carriage-works-lathe'),
      wiring: { ...drawn(breaker), settings },
    });
    const judged = (breaker: string, settings?: Readonly<Record<string, string>>) => {
      const of = refit(breaker, settings);
      return judgeSupply(of, readWiring(of.wiring, of)).findings.filter(({ about }) => about.includes('Q11'));
    };
    const load = judged('amps=4_A').find(({ rule }) => rule === 'fuse-load')!;
    expect(load.verdict).toBe('fits');
    expect(load.margin).toBeCloseTo(1.05, 9);
    expect(judged('amps=3_A').find(({ rule }) => rule === 'fuse-load')!.verdict).toBe('fails');
    expect(judged('amps=4_A').some(({ rule }) => rule === 'fuse-breaks')).toBe(false);
    const mains = { 'short-circuit': '6 kA' };
    expect(judged('amps=4_A', mains).find(({ rule }) => rule === 'fuse-breaks')!.needs).toEqual([
      'Q11.breaks',
    ]);
    for (const [breaks, verdict] of [
      ['breaks=3_kA', 'fails'],
      ['breaks=50_kA', 'fits'],
    ] as const)
      expect(judged(`amps=4_A ${breaks}`, mains).find(({ rule }) => rule === 'fuse-breaks')!.verdict).toBe(
        verdict,
      );
  });

  test('derived: it has its own symbol and its own words; auxiliary contacts bear the marks of the trade', () => {
    const read = readWiring(drawn('amps=4_A no=1 nc=1'));
    const device = read.devices.get('Q11')!;
    expect(device.terminals.map((each) => each.slice(4))).toEqual([
      ...['1', '2', '3', '4', '5', '6'],
      ...['13', '14', '21', '22'],
    ]);
    expect(symbolOf('Q11.1', device, read)).toBe('motor-breaker');
    expect(symbolOf('Q11.13', device, read)).toBe('contact-make');
    expect(sayTerminal(read.terminals.get('Q11.1')!)).toBe('in (motor circuit breaker)');
  });
});
