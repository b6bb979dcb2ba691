/** Loads on three phases: known ones add as arrows, others by their size. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Wiring } from '../../refit/types.ts';
import { cabinetWith, WIRING } from './cabinet.fixture.ts';
import { channelsOf, fromNano, together } from './grid/channels.ts';
import { judgeSupply } from './index.ts';

type Typed = Readonly<Record<string, string>>;
const device = (id: string, kind: string, settings: Typed) => ({ ...WIRING.devices.G1!, id, kind, settings });
const wire = (id: string, from: string, to: string) => ({
  id,
  from,
  to,
  cable: null,
  settings: { section: '2.5 mm²', length: '1 m' },
});
const listed = <T extends { readonly id: string }>(all: readonly T[]) =>
  Object.fromEntries(all.map((each) => [each.id, each]));

/** A motor on each phase, to a neutral of their own that one wire leads back. */
function three(shapes: readonly Typed[]): Wiring {
  return {
    devices: listed([
      device('X1', 'mains-inlet', { volts: '230 V', phases: 'three', current: '16 A' }),
      device('XN', 'strip', { ways: '8', bridges: '1-8' }),
      ...shapes.map((shape, n) =>
        device(`M${n}`, 'mains-motor', { phases: 'one', current: '10 A', ...shape }),
      ),
    ]),
    wires: listed([
      wire('N', 'XN.8', 'X1.N'),
      ...shapes.flatMap((_, n) => [
        wire(`L${n}`, `X1.L${n + 1}`, `M${n}.L`),
        wire(`N${n}`, `M${n}.N`, `XN.${n + 1}`),
      ]),
    ]),
    cables: {},
    settings: {},
  };
}

function amps(wiring: Wiring, id: string): number {
  const { refit, wiring: read } = cabinetWith({}, {}, wiring);
  expect(read.problems).toEqual([]);
  return judgeSupply(refit, read).context.currents.get(id)!.amps;
}
const pure = { displacement: '100 %', distortion: '0 %' };

describe('the neutral of three phases', () => {
  test('derived: by hand: three equal pure sines cancel; two leave one; unknown ones add to thirty', () => {
    expect(amps(three([pure, pure, pure]), 'N')).toBeCloseTo(0, 6);
    expect(amps(three([pure, pure]), 'N')).toBeCloseTo(10, 6);
    expect(amps(three([{}, {}, {}]), 'N')).toBeCloseTo(30, 6);
    expect(amps(three([{}, {}, {}]), 'L0')).toBeCloseTo(10, 6);
    // Half of it said is not said.
    expect(amps(three([{ displacement: '100 %' }, {}, {}]), 'N')).toBeCloseTo(30, 6);
  });
  test('derived: by hand: harmonics add in the neutral: with 80 % of them 3 × 0.8 ÷ √1.64 of a line', () => {
    const bent = { displacement: '100 %', distortion: '80 %' };
    expect(amps(three([bent, bent, bent]), 'N')).toBeCloseTo((30 * 0.8) / Math.sqrt(1.64), 6);
    expect(amps(three([bent, bent, bent]), 'L1')).toBeCloseTo(10, 6);
  });
  test('derived: known and unknown together: the unknown by its size on top', () => {
    expect(amps(three([pure, pure, {}]), 'N')).toBeCloseTo(20, 6);
  });
});

test('derived: by hand: 10 A in phase and 10 A at cos φ = 0.8 are √(18² + 6²) A', () => {
  const sums = new Map<string, number>();
  for (const displacement of [1, 0.8])
    for (const [channel, whole] of channelsOf(10, { re: 230e6, im: 0 }, { displacement, distortion: 0 }))
      sums.set(channel, (sums.get(channel) ?? 0) + whole);
  expect(fromNano(together(sums))).toBeCloseTo(Math.hypot(18, 6), 8);
});

test('derived: a load between two phases stands at √3 times the volts, and its arrow at 30°', () => {
  const wiring = three([pure]);
  const across = { ...wiring, wires: { ...wiring.wires, N0: { ...wiring.wires.N0!, to: 'X1.L2' } } };
  const { refit, wiring: read } = cabinetWith({}, {}, across);
  const { context } = judgeSupply(refit, read);
  expect(context.flow.takes.get('M0.L')!.volts).toBeCloseTo(230 * Math.sqrt(3), 5);
  expect(context.currents.get('L0')!.amps).toBeCloseTo(10, 8);
  expect(context.currents.get('N0')!.amps).toBeCloseTo(10, 8);
});

test('derived: as arrows loads never come to more than by their size, and alone to the same', () => {
  const load = fc.record({
    amps: fc.double({ min: 0.01, max: 100, noNaN: true }),
    angle: fc.constantFrom(0, 30, 60, 90, 120, -120, 180, -30),
    displacement: fc.double({ min: 0.2, max: 1, noNaN: true }),
    distortion: fc.double({ min: 0, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(load, { minLength: 1, maxLength: 6 }), (loads) => {
      const sum = (known: boolean) => {
        const sums = new Map<string, number>();
        for (const { amps: each, angle, displacement, distortion } of loads) {
          const at = (angle * Math.PI) / 180;
          const over = { re: 230e6 * Math.cos(at), im: 230e6 * Math.sin(at) };
          for (const [channel, whole] of channelsOf(
            each,
            over,
            known ? { displacement, distortion } : undefined,
          ))
            sums.set(channel, (sums.get(channel) ?? 0) + whole);
        }
        return fromNano(together(sums));
      };
      const size = loads.reduce((all, each) => all + each.amps, 0);
      expect(sum(true)).toBeLessThanOrEqual(size + 1e-6);
      expect(sum(false)).toBeLessThanOrEqual(size + 1e-6);
      if (loads.length === 1) expect(sum(true)).toBeCloseTo(size, 6);
    }),
  );
});
