import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Refit } from '../../../refit/types.ts';
import { judgeSupply } from '../../power/index.ts';
import { checkWiring } from '../check/checker.ts';
import { proposeWiring } from '../propose/index.ts';
import { readWiring } from '../read.ts';
import { wired } from '../wired.fixture.ts';

const motor = (
  breaker: string,
  amps = 'current=4_A',
  more: readonly string[] = [],
  ways: readonly string[] = [],
) =>
  checkWiring(
    wired(
      [
        'X0 mains-inlet phases=three',
        'Q1 main-switch poles=4',
        `F1 breaker poles=3 ${breaker}`.trim(),
        'K1 contactor main=3',
        `M1 mains-motor ${amps}`.trim(),
        ...more,
      ],
      [
        ...[1, 2, 3].flatMap((n) => [
          `X0.L${n} Q1.${2 * n - 1}`,
          `Q1.${2 * n} F1.${2 * n - 1}`,
          `F1.${2 * n} K1.${2 * n - 1}`,
          `K1.${2 * n} M1.${'UVW'[n - 1]}`,
        ]),
        ...ways,
      ],
    ),
  ).filter(({ rule }) => rule === 'motor-start');

describe('a motor started straight on the mains', () => {
  // The motor takes 24 to 32 A at the start. IEC 60898-1: B trips at once between 3 and 5 times its rating, C between 5 and
  // 10, D between 10 and 20.
  test.each([
    ['B', 4, 'fails', 12 / 32],
    ['B', 6, 'tight', 18 / 32],
    ['B', 16, 'fits', 48 / 32],
    ['C', 4, 'tight', 20 / 32],
    ['C', 6, 'tight', 30 / 32],
    ['C', 10, 'fits', 50 / 32],
    ['D', 4, 'fits', 40 / 32],
  ] as const)('published: IEC 60898-1: %s %d A with 4 A behind it: %s', (curve, amps, verdict, margin) => {
    const [found, ...others] = motor(`curve=${curve} amps=${amps}_A`);
    expect(others).toEqual([]);
    expect(found!.verdict).toBe(verdict);
    expect(found!.margin).toBeCloseTo(margin, 12);
    if (verdict === 'fits') expect(found!.remedy).toBeUndefined();
    else expect(found!.remedy).toMatch(/motor circuit breaker set to 4 A.*characteristic D/);
    // A breaker well over the motor's current does not guard its winding.
    if (verdict === 'fits') expect(/winding/.test(found!.sentence)).toBe(amps > 4.8);
  });

  test('derived: what is not known is asked for where it can be answered', () => {
    const [found] = motor('', '');
    expect(found!.verdict).toBe('unknown');
    expect(found!.needs).toEqual(['M1.U.current', 'F1.2.current', 'F1.2.curve']);
  });

  test('derived: through a residual current device and a reversing contactor; no verdict on another branch', () => {
    const [both] = motor(
      'curve=C amps=4_A',
      'current=4_A',
      ['K2 contactor main=3 reverses=yes'],
      ['K1.1 K2.1', 'K1.3 K2.3', 'K1.5 K2.5', 'K2.2 K1.6', 'K2.4 K1.4', 'K2.6 K1.2'],
    );
    expect(both!.verdict).toBe('tight');
    // Two motors, one of them without a breaker of its own beside the breaker of the other.
    const beside = motor(
      'curve=C amps=4_A',
      'current=4_A',
      ['M2 mains-motor current=4_A'],
      ['Q1.2 M2.U', 'Q1.4 M2.V', 'Q1.6 M2.W'],
    );
    expect(beside.map(({ about }) => about[0])).toEqual(['M1.U']);
  });

  test('derived: a pump that is proposed gets a motor circuit breaker, set to its plate once that is known', () => {
    const base = sample('carriage-works-lathe');
    const asked = [
      {
        id: 'coolant',
        name: 'coolant',
        inputs: [],
        outputs: [{ id: 'pump', name: 'pump', by: '24 V', moves: 'motor' }],
      },
    ] as const;
    const bare: Refit = {
      ...base,
      wiring: { devices: {}, wires: {}, cables: {}, settings: { homes: 'none', limits: 'none' } },
    };
    const first = proposeWiring(bare, asked);
    const pump = Object.values(first.wiring.devices).find(({ kind }) => kind === 'mains-motor')!;
    const of = ({ wiring }: typeof first) =>
      Object.values(wiring.devices).find(
        ({ kind, name }) => kind === 'motor-breaker' && name.includes('coolant'),
      )!;
    expect(of(first).settings.amps).toBeUndefined();
    const told: Refit = {
      ...bare,
      wiring: {
        ...bare.wiring,
        devices: { [pump.id]: { ...pump, settings: { ...pump.settings, current: '1.3 A', volts: '400 V' } } },
      },
    };
    const again = proposeWiring(told, asked);
    expect(of(again).settings).toMatchObject({ amps: '1.3 A' });
    for (const rule of ['motor-start', 'motor-guard'])
      expect(again.findings.find((each) => each.rule === rule)!.verdict).toBe('fits');
    const wire = Object.values(again.wiring.wires).find(({ to }) => to === `${pump.id}.U`)!;
    expect(wire.settings.section).toBe('1.5 mm²');
    expect(again.reasons[wire.id]).toContain(`1.3 A of ${of(again).id}`);
    // One that is there already stays, with what somebody set on it.
    const mine = { ...of(again), settings: { ...of(again).settings, amps: '1.5 A' } };
    const kept = proposeWiring(
      { ...told, wiring: { ...again.wiring, devices: { ...again.wiring.devices, [mine.id]: mine } } },
      asked,
    );
    expect(kept.changes).toEqual([]);
    expect(kept.findings.find(({ rule }) => rule === 'motor-guard')!.verdict).toBe('tight');
  });
});

describe('a pair of contactors drawn by hand for both ways', () => {
  const pair = (setting = '', crossed = true) => {
    const [a, b, c] = crossed ? ['6', '4', '2'] : ['2', '4', '6'];
    return wired(
      [
        'X0 mains-inlet phases=three volts=230_V',
        'F1 breaker poles=3 curve=D amps=6_A',
        'K1 contactor main=3',
        `K2 contactor main=3 ${setting}`.trim(),
        'M1 mains-motor current=4_A',
      ],
      [
        ...[1, 2, 3].flatMap((n) => [
          `X0.L${n} F1.${2 * n - 1}`,
          `F1.${2 * n} K1.${2 * n - 1}`,
          `K1.${2 * n - 1} K2.${2 * n - 1}`,
          `K1.${2 * n} M1.${'UVW'[n - 1]}`,
        ]),
        `K2.2 K1.${a}`,
        `K2.4 K1.${b}`,
        `K2.6 K1.${c}`,
      ],
    );
  };
  const about = (wiring: ReturnType<typeof wired>) =>
    checkWiring(wiring).filter(({ rule }) => rule === 'reversing');
  const short = (wiring: ReturnType<typeof wired>) => {
    const refit = { ...sample('boatyard-mill'), chains: [], places: {}, parts: {}, stop: null, wiring };
    return judgeSupply(refit, readWiring(wiring, refit)).findings.find(({ rule }) => rule === 'short');
  };

  test('derived: the short circuit it looks like comes with the setting that mends it', () => {
    expect(short(pair())!.remedy).toMatch(
      /K1 and K2 turn one motor both ways.*\(K1\.reverses or K2\.reverses\)/,
    );
    const [found, ...others] = about(pair());
    expect(others).toEqual([]);
    expect(found!.verdict).toBe('fails');
    expect(found!.remedy).toContain('K2.reverses');
    // Done as it says.
    expect(short(pair('reverses=yes'))).toBeUndefined();
    expect(about(pair('reverses=yes'))).toEqual([]);
  });

  test('derived: two side by side with their phases in one order are no such pair', () => {
    expect(short(pair('', false))).toBeUndefined();
    expect(about(pair('', false))).toEqual([]);
  });
});
