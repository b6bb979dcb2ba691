import { defineSheet, formula, input } from '../sheet/index.ts';

const RMS = 'derived: mean heat of a constant resistance';

/** R.m.s. current of a move in four stretches. */
export const rmsCurrent = defineSheet({
  id: 'rms-current',
  title: 'Heating current of a move',
  about:
    'A motor does not feel its peaks but the mean of its heat. This turns speeding up, running, slowing down and standing into the one steady current that would heat it as much.',
  symbols: {
    I_a: input('current while speeding up', 'A', { tex: 'I_a' }),
    t_a: input('time speeding up', 's', { tex: 't_a', domain: 'not negative' }),
    I_r: input('current while running or cutting', 'A', { tex: 'I_r' }),
    t_r: input('time running or cutting', 's', { tex: 't_r', domain: 'not negative' }),
    I_d: input('current while slowing down', 'A', { tex: 'I_d' }),
    t_d: input('time slowing down', 's', { tex: 't_d', domain: 'not negative' }),
    I_s: input('current while standing', 'A', { tex: 'I_s', note: 'A vertical axis holds its weight here.' }),
    t_s: input('time standing', 's', { tex: 't_s', domain: 'not negative' }),
    t_cycle: formula('length of the cycle', 's', 't_a + t_r + t_d + t_s', RMS, {
      tex: 't_{cycle}',
      says: 'All four stretches together.',
    }),
    I_rms: formula(
      'heating current',
      'A',
      'sqrt((I_a^2*t_a + I_r^2*t_r + I_d^2*t_d + I_s^2*t_s) / t_cycle)',
      RMS,
      {
        tex: 'I_{rms}',
        says: 'The steady current that heats as much. It must stay below the continuous current of motor and drive.',
      },
    ),
    I_peak: formula('highest current', 'A', 'max(abs(I_a), abs(I_r), abs(I_d), abs(I_s))', RMS, {
      tex: 'I_{peak}',
      says: 'The largest of the four, whichever way it flows.',
    }),
  },
});
