import { defineSheet, formula, input } from '../sheet/index.ts';

const SUM = 'derivation: sum of the times';
const HEAT = 'derivation: copper loss goes with the square of the torque, averaged over the cycle';

export const axisCycle = defineSheet({
  id: 'axis-cycle',
  title: 'A working minute of an axis, and how it heats the motor',
  about:
    'Rapid moves in both directions in turn, cutting, and standing still between. Gives the shares of the time, the torque as the motor’s heating feels it, and whether the minute is long enough for all that is asked.',
  symbols: {
    N: input('rapid moves a minute', '1/min', { domain: 'positive' }),
    q: input('share of the time spent cutting', '%', { domain: 'fraction' }),
    ta: input('time to gain speed', 's', { domain: 'not negative', tex: 't_a' }),
    tc: input('time at full speed', 's', { domain: 'not negative', tex: 't_c' }),
    n: input('screw speed at rapid', 'r/min', { domain: 'not negative' }),
    T_up: input('torque running upwards', 'N·m'),
    T_dn: input('torque running downwards', 'N·m'),
    T_acc_up: input('torque gaining speed upwards', 'N·m'),
    T_acc_dn: input('torque gaining speed downwards', 'N·m'),
    T_dec_up: input('torque slowing down upwards', 'N·m'),
    T_dec_dn: input('torque slowing down downwards', 'N·m'),
    T_cut: input('torque while cutting', 'N·m'),
    T_still: input('torque held at rest', 'N·m'),
    T_f: input('friction torque of the motor itself', 'N·m', { domain: 'not negative' }),
    t_all: formula('time from move to move', 's', '1 / N', 'derivation: definition of the rate'),
    t_cut: formula('time cutting for each move', 's', 'q * t_all', SUM),
    t_move: formula('time of the move', 's', '2 * ta + tc', SUM),
    t_asked: formula('time that move and cut need', 's', 't_move + t_cut', SUM, {
      says: 'If this is longer than the time from move to move, the axis cannot keep the pace asked of it.',
    }),
    t_cycle: formula('length of the cycle', 's', 'max(t_all, t_asked)', SUM),
    t_rest: formula('time standing still', 's', 't_cycle - t_asked', SUM),
    q_acc: formula('share gaining speed and slowing down', '%', '2 * ta / t_cycle', SUM),
    q_run: formula('share at full speed', '%', 'tc / t_cycle', SUM),
    q_cut: formula('share cutting', '%', 't_cut / t_cycle', SUM),
    q_rest: formula('share standing still', '%', 't_rest / t_cycle', SUM),
    n_acc: formula(
      'mean screw speed while speeding up',
      'r/min',
      'n / 2',
      'derivation: mean of a straight ramp',
    ),
    H_acc: formula(
      'heating while gaining speed',
      'N²·m²·s',
      'ta * ((T_acc_up + T_f)^2 + (T_acc_dn + T_f)^2) / 2',
      HEAT,
    ),
    H_run: formula('heating at full speed', 'N²·m²·s', 'tc * ((T_up + T_f)^2 + (T_dn + T_f)^2) / 2', HEAT),
    H_dec: formula(
      'heating while slowing down',
      'N²·m²·s',
      'ta * ((T_dec_up + T_f)^2 + (T_dec_dn + T_f)^2) / 2',
      HEAT,
    ),
    H_cut: formula('heating while cutting', 'N²·m²·s', 't_cut * (T_cut + T_f)^2', HEAT),
    H_rest: formula('heating at rest', 'N²·m²·s', 't_rest * T_still^2', HEAT),
    T_rms: formula(
      'torque as the motor’s heating feels it',
      'N·m',
      'sqrt((H_acc + H_run + H_dec + H_cut + H_rest) / t_cycle)',
      HEAT,
      {
        tex: 'T_\\mathrm{rms}',
        says: 'The steady torque that would warm the motor as much as the whole minute does.',
      },
    ),
  },
});
