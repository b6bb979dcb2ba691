import { defineSheet, formula, input } from '../sheet/index.ts';

export const motorSpeeds = defineSheet({
  id: 'motor-speeds',
  title: 'Between which speeds a spindle motor is useful',
  about:
    'Down to where it still has torque that can be relied on, up to what its drive gives and its rotor stands.',
  symbols: {
    n_r: input('speed on the plate', 'r/min', { domain: 'positive' }),
    k: input('share of it that is the lowest useful speed', '1', { domain: 'not negative' }),
    n_b: input('speed at which its volts run out', 'r/min', { domain: 'positive' }),
    n_d: input('speed the drive can turn it to', 'r/min', { domain: 'positive' }),
    n_0: input('speed the drive can turn it to, idling', 'r/min', {
      domain: 'positive',
      note: 'An induction motor without load turns as fast as its field.',
    }),
    n_t: input('speed its rotor stands', 'r/min', { domain: 'positive' }),
    k_f: input('share of it below which its own fan cools badly', '1', { domain: 'not negative' }),
    i_slow: input('ratio of the slowest range', '1', { domain: 'positive', tex: 'i_\\mathrm{slow}' }),
    i_fast: input('ratio of the fastest range', '1', { domain: 'positive', tex: 'i_\\mathrm{fast}' }),
    n_l: formula('lowest useful motor speed', 'r/min', 'k * n_r', 'share of the speed on the plate', {
      tex: 'n_l',
    }),
    n_f: formula(
      'motor speed below which it is cooled badly',
      'r/min',
      'k_f * n_r',
      'share of the speed on the plate',
      {
        tex: 'n_f',
      },
    ),
    n_h: formula('highest motor speed', 'r/min', 'min(n_d, n_t)', 'the lesser of drive and rotor', {
      tex: 'n_h',
    }),
    S_l: formula('lowest useful spindle speed', 'r/min', 'n_l / i_slow', 'definition of the ratio', {
      tex: 'S_l',
    }),
    S_h: formula('highest spindle speed', 'r/min', 'n_h / i_fast', 'definition of the ratio', { tex: 'S_h' }),
    S_b: formula(
      'spindle speed at which its volts run out',
      'r/min',
      'n_b / i_fast',
      'definition of the ratio',
      {
        tex: 'S_b',
        says: 'In the fastest range.',
      },
    ),
    S_d: formula(
      'spindle speed the drive can turn it to',
      'r/min',
      'n_d / i_fast',
      'definition of the ratio',
      {
        tex: 'S_d',
        says: 'Whether or not the rotor, the chuck and the bearings stand it.',
      },
    ),
    S_0: formula(
      'spindle speed the drive can turn it to, idling',
      'r/min',
      'n_0 / i_fast',
      'definition of the ratio',
      {
        tex: 'S_0',
        says: 'Before the tool bites: the fastest that can ever be.',
      },
    ),
    span: formula('how many times faster it can turn than it must', '1', 'n_h / n_l', 'quotient of the two'),
  },
});
