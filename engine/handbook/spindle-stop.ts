import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { kneesOf, motorTorque, rampTime, type TorqueAt } from './speed-ramp.ts';

type Given = readonly [J: number, T_b: number, T_k: number, P_b: number, T_f: number, n_b: number, n: number];

const braking = ([, T, pullOut, power, friction, base]: Given): TorqueAt => {
  const torque = motorTorque(T, pullOut, base);
  return (w) => Math.min(torque(w), w > 0 ? power / w : Number.POSITIVE_INFINITY) + friction;
};

/** Where the limit of power crosses each of the three pieces of the torque’s curve. */
const powerKnees = ([, T, pullOut, power, , base]: Given): number[] =>
  [power / T, (pullOut * base * base) / power].filter(Number.isFinite);

export const spindleStop = defineSheet({
  id: 'spindle-stop',
  title: 'Time for the spindle to stop',
  about:
    'Left alone, only its drag stops a spindle, and that takes long. A drive brakes with the torque of its motor, as far as its resistor burns the power.',
  symbols: {
    J: input('inertia at the spindle', 'kg·m²', { domain: 'positive' }),
    n: input('speed from which it stops', 'r/min', { domain: 'positive' }),
    T_f: input('drag', 'N·m', { domain: 'not negative', tex: 'T_f' }),
    T_b: input('torque the drive brakes with', 'N·m', { domain: 'not negative', tex: 'T_b' }),
    T_k: input('usable pull-out torque, at the spindle', 'N·m', { domain: 'positive', tex: 'T_k' }),
    n_b: input('spindle speed up to which that torque lasts', 'r/min', { domain: 'positive' }),
    P_b: input('most power it can brake with', 'W', { domain: 'positive', tex: 'P_b' }),
    t_f: formula(
      'time to run down alone',
      's',
      'J * n / T_f',
      'derivation: torque is inertia times deceleration',
      {
        tex: 't_f',
        says: 'What happens when the power goes while it turns.',
      },
    ),
    t_b: procedure('time to stop, braked', 's', {
      tex: 't_b',
      reads: ['J', 'T_b', 'T_k', 'P_b', 'T_f', 'n_b', 'n'],
      run: (...given) => {
        const all = given as unknown as Given;
        const [J, T, pullOut, , , base, w] = all;
        return rampTime(J, braking(all), 0, w, [
          ...(T > 0 ? kneesOf(T, pullOut, base) : []),
          ...powerKnees(all),
        ]);
      },
      refuses: (...given) => {
        const [, T, , , friction] = given as unknown as Given;
        return T + friction > 0 ? undefined : 'nothing brakes it: it never stops';
      },
      says: 'At high speed as fast as the power can be got rid of, then with the whole braking torque; the drag helps.',
      source: 'derivation: torque is inertia times deceleration, integrated',
    }),
    E: formula('energy in the motion', 'kJ', 'J * n^2 / 2', 'definition of kinetic energy'),
    P_1: formula(
      'braking power at the start, were it not limited',
      'W',
      'T_b * n',
      'power is torque times speed',
      {
        tex: 'P_1',
      },
    ),
  },
});
