/** Whether the stated ± holds the truth as often as it says: many benches simulated with the truth known. */
import { expect, test } from 'vitest';
import { seeded } from '../handbook/samples.ts';
import { outcome, quantity } from './methods.fixture.ts';

const BENCHES = 2000;

/** Seeded normal and uniform errors. */
function errors(seed: number): { normal: () => number; uniform: () => number } {
  const random = seeded(seed);
  return {
    normal: () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random()),
    uniform: () => 2 * random() - 1,
  };
}

/** Share of benches whose 95 % interval held the truth. */
function share(truth: number, bench: () => { value: number; expanded: number }): number {
  let held = 0;
  for (let n = 0; n < BENCHES; n++) {
    const { value, expanded } = bench();
    if (Math.abs(value - truth) <= expanded) held += 1;
  }
  return held / BENCHES;
}

// 2000 benches scatter by half a per cent themselves, so that 93 to 97 % is four of that either way.
const holds = (of: number): void => {
  expect(of).toBeGreaterThanOrEqual(0.93);
  expect(of).toBeLessThanOrEqual(0.97);
};

test('derived: resistance over eight places, meters wrong within their limits, 2000 benches', {
  timeout: 60_000,
}, () => {
  const { normal, uniform } = errors(1);
  const truth = 1.3;
  holds(
    share(truth, () => {
      // What a meter is wrong by is the same in all its readings.
      const [volts, amps, warm] = [uniform(), uniform(), uniform()];
      const cold = 1.3 * ((235 + 20 + 3 * warm) / 255);
      const V = Array.from({ length: 8 }, () => {
        const exact = 5 * cold + 0.15 * normal();
        return (exact + volts * (0.005 * exact + 0.01)).toFixed(4);
      });
      const I = Array.from({ length: 8 }, () => (5 + amps * (0.01 * 5 + 0.01)).toFixed(4));
      const found = outcome(
        'winding-resistance',
        { temperature: '20 ± 3 °C', voltmeter: '0.5 % + 0.01 V', ammeter: '1 % + 0.01 A' },
        { volts: V, amps: I },
      );
      return quantity(found, 'resistance');
    }),
  );
});

test('derived: back-EMF at four speeds both ways, speed wandering, 2000 benches', { timeout: 60_000 }, () => {
  const { normal, uniform } = errors(2);
  const truth = 0.34;
  holds(
    share(truth, () => {
      const [meter, tacho] = [uniform(), uniform()];
      const rows = [400, 700, 1000, 1300].flatMap((speed) =>
        (['cw', 'ccw'] as const).map((way) => ({ speed, way })),
      );
      const at = rows.map(({ speed, way }) => {
        const w = (speed * 2 * Math.PI) / 60;
        const exact = truth * w * (1 + 0.006 * normal()) + (way === 'cw' ? 0.05 : -0.05) * (w / 100);
        return {
          volts: (exact * (1 + 0.005 * meter)).toFixed(3),
          speed: (speed * (1 + 0.003 * tacho)).toFixed(2),
          way,
        };
      });
      const found = outcome(
        'back-emf',
        { read: 'dc', temperature: '20 °C', magnet: 'ferrite', voltmeter: '0.5 %', tachometer: '0.3 %' },
        {
          volts: at.map((each) => each.volts),
          speed: at.map((each) => each.speed),
          way: at.map((each) => each.way),
        },
      );
      return quantity(found, 'emf');
    }),
  );
});

test('derived: lead over ten turns, five readings, rule and mark in doubt, 2000 benches', {
  timeout: 60_000,
}, () => {
  const { normal, uniform } = errors(3);
  const truth = 0.00508;
  holds(
    share(truth, () => {
      const [rule, mark] = [uniform(), uniform()];
      const travel = Array.from({ length: 5 }, () =>
        (5.08 * (10 + (5 * mark) / 360) + 0.05 * rule + 0.06 * normal()).toFixed(3),
      );
      const found = outcome('travel-per-turn', { turns: '10', mark: '0 ± 5 °', rule: '0.05 mm' }, { travel });
      return quantity(found, 'lead');
    }),
  );
});

test('derived: inertia by a disc, where the formula bends: the ± is not too small, 2000 benches', {
  timeout: 60_000,
}, () => {
  const { normal } = errors(4);
  const truth = 0.0008;
  const held = share(truth, () => {
    // Steady friction of 0.12 N·m from 2000 r/min; the disc of 0.00125 kg·m² scatters less than half of what it adds.
    const run = (J: number): string => ((J * 2000 * 2 * Math.PI) / (60 * 0.12) + 0.25 * normal()).toFixed(3);
    const time = [0, 0, 0, 0, 0, 0.00125, 0.00125, 0.00125, 0.00125, 0.00125].map((added) =>
      run(truth + added),
    );
    const disc = [...Array(5).fill('without'), ...Array(5).fill('with')];
    const found = outcome(
      'coast-down',
      { from: '2000 r/min', discMass: '1 kg', discRadius: '50 mm', watch: '0.01 s' },
      { time, disc },
    );
    return quantity(found, 'inertia');
  });
  expect(held).toBeGreaterThanOrEqual(0.93);
});
