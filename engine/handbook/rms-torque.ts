import { defineSheet, formula, input } from '../sheet/index.ts';

const copper = 'derivation: copper loss goes with the square of the torque, averaged over the cycle';
const torque = (k: number) =>
  input(`torque in segment ${k}`, 'N·m', { tex: `T_${k}`, note: 'Its size counts, not its sign.' });
const time = (k: number) =>
  input(`time of segment ${k}`, 's', {
    domain: 'not negative',
    tex: `t_${k}`,
    note: '0 for a segment that is not used. Any other weight will do, the same for all.',
  });

export const rmsTorque = defineSheet({
  id: 'rms-torque',
  title: 'Torque as the motor’s heating feels it',
  about:
    'The steady torque that would warm the motor as much as the cycle does. Count the rests; a vertical axis holds torque even at rest. Holds for cycles much shorter than the motor takes to warm up.',
  symbols: {
    T1: torque(1),
    T2: torque(2),
    T3: torque(3),
    T4: torque(4),
    T5: torque(5),
    t1: time(1),
    t2: time(2),
    t3: time(3),
    t4: time(4),
    t5: time(5),
    t: formula('time of the cycle', 's', 't1 + t2 + t3 + t4 + t5', 'derivation: sum of the times', {
      domain: 'positive',
    }),
    T_rms: formula(
      'rms torque',
      'N·m',
      'sqrt((T1^2 * t1 + T2^2 * t2 + T3^2 * t3 + T4^2 * t4 + T5^2 * t5) / t)',
      copper,
      {
        tex: 'T_\\mathrm{rms}',
        says: 'Squared, averaged over the whole cycle with its rests, and the root taken: short hard bursts count more than a plain average says.',
      },
    ),
    T_pk: formula(
      'largest torque',
      'N·m',
      'max(abs(T1), abs(T2), abs(T3), abs(T4), abs(T5))',
      'derivation: the largest of the segments',
      {
        tex: 'T_\\mathrm{pk}',
      },
    ),
  },
});
