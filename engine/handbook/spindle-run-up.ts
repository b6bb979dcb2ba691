import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { kneesOf, motorTorque, rampTime } from './speed-ramp.ts';

type Given = readonly [J: number, T: number, T_k: number, T_d: number, n_b: number, n: number];

export const spindleRunUp = defineSheet({
  id: 'spindle-run-up',
  title: 'Time for the spindle to come up to speed',
  about:
    'With constant torque the speed grows evenly; above the base speed there is only constant power, and each further turn takes longer. Near the pull-out torque even the power falls.',
  symbols: {
    J: input('inertia at the spindle', 'kg·m²', { domain: 'positive' }),
    T: input('torque for seconds, at the spindle', 'N·m', { domain: 'positive' }),
    T_k: input('usable pull-out torque, at the spindle', 'N·m', { domain: 'positive', tex: 'T_k' }),
    T_d: input('drag', 'N·m', { domain: 'not negative', tex: 'T_d' }),
    n_b: input('spindle speed up to which that torque lasts', 'r/min', { domain: 'positive' }),
    n: input('speed to reach', 'r/min', { domain: 'positive' }),
    t: procedure('time to reach it', 's', {
      reads: ['J', 'T', 'T_k', 'T_d', 'n_b', 'n'],
      run: (...given) => {
        const [J, T, pullOut, drag, base, w] = given as unknown as Given;
        const torque = motorTorque(T, pullOut, base);
        return rampTime(J, (at) => torque(at) - drag, 0, w, kneesOf(T, pullOut, base));
      },
      refuses: (...given) => {
        const [, T, pullOut, drag, base, w] = given as unknown as Given;
        const torque = motorTorque(T, pullOut, base);
        if (torque(0) <= drag) return 'the drag is more than the torque: the spindle never starts';
        return torque(w) <= drag ? 'the drag takes all the torque before that speed is reached' : undefined;
      },
      says: 'Inertia times speed over the torque that is left after drag, added up over the whole run-up.',
      source: 'derivation: torque is inertia times acceleration, integrated',
    }),
    E: formula('energy in the motion', 'kJ', 'J * n^2 / 2', 'definition of kinetic energy'),
  },
});
