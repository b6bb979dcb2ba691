import { describe, expect, test } from 'vitest';
import { moveSCurve } from '../move-s-curve.ts';
import { moveTrapezoidal } from '../move-trapezoidal.ts';
import { holds, work } from './expect.ts';

const trapezoid = { v: '0.2 m/s', a: '2 m/s²', t_dwell: '0 s' };

holds('derived', 'trapezoidal move of 0.3 m', 'kinematics, second calculation', {
  sheet: moveTrapezoidal,
  given: { ...trapezoid, D: '0.3 m' },
  expected: {
    v_pk: '0.2000000000 m/s',
    ta: '0.1000000000 s',
    tc: '1.4000000000 s',
    T: '1.600000000 s',
    d_acc: '0.0100000000 m',
    a_rms: '0.70710678 m/s²',
  },
});

holds('derived', 'move of 15 mm too short for the full speed', 'kinematics, second calculation', {
  sheet: moveTrapezoidal,
  given: { ...trapezoid, D: '15 mm' },
  expected: { v_pk: '0.17320508 m/s', T: '0.17320508 s', tc: '0.0000000 s' },
});

holds('derived', 'a third each: the profile puts back into the plain one', 'v = 1.5 D/T, a = 4.5 D/T²', {
  sheet: moveTrapezoidal,
  given: { D: '0.3 m', v: '0.3 m/s', a: '0.6 m/s²', t_dwell: '0 s', T_want: '1.5 s' },
  expected: { v_third: '0.3000000 m/s', a_third: '0.6000000 m/s²', T: '1.5000000 s', tc: '0.5000000 s' },
});

const jerk = { v: '0.2 m/s', a: '2 m/s²', j: '20 m/s³', t_dwell: '0 s' };

describe('moves with limited jerk', () => {
  holds('derived', 'full speed', 'closed form, checked by numerical integration', {
    sheet: moveSCurve,
    given: { ...jerk, D: '0.3 m' },
    expected: {
      vp: '0.200000 m/s',
      ap: '2.000000 m/s²',
      tj: '0.100000 s',
      ta: '0.200000 s',
      T: '1.700000 s',
      a_rms: '0.56011203 m/s²',
    },
  });

  holds(
    'derived',
    'neither full speed nor full acceleration, with v = a²/j exactly',
    'closed form, checked by numerical integration',
    {
      sheet: moveSCurve,
      given: { ...jerk, D: '0.03 m' },
      expected: {
        vp: '0.16509636 m/s',
        ap: '1.81712059 m/s²',
        tj: '0.09085603 s',
        ta: '0.18171206 s',
        T: '0.36342412 s',
        a_rms: '1.04911506 m/s²',
      },
    },
  );

  holds('derived', 'a very short move', 'closed form, checked by numerical integration', {
    sheet: moveSCurve,
    given: { ...jerk, D: '5 mm' },
    expected: {
      vp: '0.05000000 m/s',
      ap: '1.00000000 m/s²',
      tj: '0.05000000 s',
      ta: '0.10000000 s',
      T: '0.20000000 s',
      a_rms: '0.57735027 m/s²',
    },
  });

  const branches = {
    'full speed, full acceleration': { D: 0.3, v: 0.2, a: 2, j: 40 },
    'full speed, acceleration never reached': { D: 0.3, v: 0.05, a: 2, j: 20 },
    'full acceleration, speed never reached': { D: 0.05, v: 1, a: 2, j: 100 },
    'full acceleration, only just': { D: 0.003, v: 1, a: 2, j: 100 },
    'neither reached': { D: 0.005, v: 1, a: 2, j: 20 },
  };

  for (const [branch, { D, v, a, j }] of Object.entries(branches)) {
    test(`derived: ${branch}: the jerk integrated three times gives the travel, and the limits hold`, () => {
      const r = work(moveSCurve, {
        D: `${D} m`,
        v: `${v} m/s`,
        a: `${a} m/s²`,
        j: `${j} m/s³`,
        t_dwell: '0 s',
      });
      const motion = integrate(j, r('tj'), r('ta'), r('tc'));
      expect(motion.travel / D).toBeCloseTo(1, 9);
      expect(motion.endSpeed).toBeCloseTo(0, 9);
      // Both ends take the same travel, the middle is run at the speed reached.
      expect((2 * r('d_acc') + r('vp') * r('tc')) / D).toBeCloseTo(1, 9);
      expect(motion.topSpeed / r('vp')).toBeCloseTo(1, 9);
      expect(motion.topSpeed).toBeLessThanOrEqual(v * (1 + 1e-9));
      expect(motion.topAcceleration).toBeLessThanOrEqual(a * (1 + 1e-9));
      expect(motion.rms / r('a_rms')).toBeCloseTo(1, 6);
    });
  }

  test('derived: with boundless jerk it becomes the plain move', () => {
    const plain = work(moveTrapezoidal, { ...trapezoid, D: '0.3 m' });
    const sharp = work(moveSCurve, { ...jerk, j: '1e9 m/s³', D: '0.3 m' });
    expect(sharp('T')).toBeCloseTo(plain('T'), 7);
    expect(sharp('a_rms')).toBeCloseTo(plain('a_rms'), 6);
  });
});

/** Steps through the seven phases; travel is exact for constant jerk, the mean square by Simpson's rule. */
function integrate(j: number, tj: number, ta: number, tc: number) {
  const flat = ta - 2 * tj;
  const phases: [jerk: number, time: number][] = [
    [j, tj],
    [0, flat],
    [-j, tj],
    [0, tc],
    [-j, tj],
    [0, flat],
    [j, tj],
  ];
  let s = 0;
  let v = 0;
  let a = 0;
  let topSpeed = 0;
  let topAcceleration = 0;
  let squares = 0;
  let time = 0;
  const steps = 50;
  for (const [jerkNow, length] of phases) {
    const h = length / steps;
    for (let k = 0; k < steps; k += 1) {
      squares += (h / 6) * (a ** 2 + 4 * (a + (jerkNow * h) / 2) ** 2 + (a + jerkNow * h) ** 2);
      s += v * h + (a * h ** 2) / 2 + (jerkNow * h ** 3) / 6;
      v += a * h + (jerkNow * h ** 2) / 2;
      a += jerkNow * h;
      topSpeed = Math.max(topSpeed, v);
      topAcceleration = Math.max(topAcceleration, Math.abs(a));
    }
    time += length;
  }
  return { travel: s, endSpeed: v, topSpeed, topAcceleration, rms: Math.sqrt(squares / time) };
}
