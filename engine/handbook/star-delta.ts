import { defineSheet, formula, input } from '../sheet/index.ts';

const COIL = 'derivation: a coil in star sees the line voltage divided by √3';
const SQUARE = 'derivation: torque and starting current go with the square of the volts on a coil';

export const starDelta = defineSheet({
  id: 'star-delta',
  title: 'Star or delta, and what the wrong one costs',
  about:
    'A motor marked 230/400 V has coils for 230 V. In delta each coil lies between two leads, in star two of them share the line. Star on a 230 V inverter: each coil gets 133 V, and a third of the torque is left. Delta on 400 V: 1.7 times its volts, and it burns.',
  symbols: {
    U: input('volts between two leads that there are', 'V', { domain: 'positive' }),
    U_Y: input('voltage of the motor in star', 'V', {
      domain: 'positive',
      note: 'The higher one on its plate.',
    }),
    T: input('torque with the right connection', 'N·m', { domain: 'positive' }),
    I: input('starting current with the right connection', 'A', { domain: 'positive' }),
    U_D: formula('voltage of the motor in delta', 'V', 'U_Y / sqrt(3)', COIL, {
      says: 'The lower voltage on its plate.',
    }),
    k_Y: formula('share of the torque in star', '1', '(U / U_Y)^2', SQUARE, {
      says: 'One third where the volts are those for delta.',
    }),
    k_D: formula('share of the torque in delta', '1', '(U / U_D)^2', SQUARE, {
      says: 'Far above one: the iron is full and the current burns the winding.',
    }),
    T_Y: formula('torque in star', 'N·m', 'T * k_Y', SQUARE),
    I_Y: formula('starting current in star', 'A', 'I * k_Y', SQUARE, {
      says: 'Why star-delta starters exist: a third of the current, and a third of the torque.',
    }),
  },
});
