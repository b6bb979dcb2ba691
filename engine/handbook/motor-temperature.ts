import { constant, defineSheet, formula, input } from '../sheet/index.ts';
import { copperZero } from './electrical-constants.ts';

const COPPER = 'IEC 60034-1, temperature rise by resistance (from memory)';

/** Winding resistance and magnet strength against temperature. */
export const motorTemperature = defineSheet({
  id: 'motor-temperature',
  title: 'Resistance and torque constant of a warm motor',
  about:
    'Copper resists more when warm and magnets pull less, so a hot motor needs more volts and more amperes for the same work. Read backwards, the resistance is a thermometer inside the winding.',
  symbols: {
    R1: input('winding resistance as measured cold', 'Ω', {
      tex: 'R_1',
      domain: 'positive',
      note: 'Without brushes and leads.',
    }),
    t1: input('winding temperature then', '°C', { tex: 't_1' }),
    t2: input('winding temperature to work with', '°C', { tex: 't_2' }),
    R_warm: input('winding resistance as measured warm', 'Ω', { tex: 'R_{warm}', domain: 'positive' }),
    ta: input('room temperature', '°C', { tex: 't_a' }),
    Kt20: input('torque constant at 20 °C', 'N·m/A', { tex: 'K_{t20}', domain: 'positive' }),
    aB: input('change of magnet strength with temperature', '1/K', {
      tex: '\\alpha_B',
      note: 'Negative: weaker when warm. See the table of magnets.',
    }),
    t_m: input('magnet temperature', '°C', { tex: 't_m' }),
    t0: copperZero,
    t0_us: constant('the same as used in North America', '°C', '-234.5 °C', 'common practice, no source', {
      tex: 't_{0,us}',
    }),
    t20: constant('reference temperature', '°C', '20 °C', 'definition of the torque constant at 20 °C', {
      tex: 't_{20}',
    }),
    R2: formula('winding resistance warm', 'Ω', 'R1 * (t2 - t0) / (t1 - t0)', COPPER, {
      tex: 'R_2',
      says: 'Copper gains about 0.4 % for each degree.',
    }),
    R2_us: formula(
      'the same by North American practice',
      'Ω',
      'R1 * (t2 - t0_us) / (t1 - t0_us)',
      'common practice, no source',
      {
        tex: 'R_{2,us}',
        says: 'Nearly the same number; shown so that a North American data sheet can be compared.',
      },
    ),
    t_w: formula('mean winding temperature', '°C', 't0 + R_warm/R1 * (t1 - t0)', COPPER, {
      tex: 't_w',
      says: 'How hot the copper is, read from how much its resistance has grown. The hottest spot is some kelvin above this mean.',
    }),
    rise: formula('rise of the winding above the room', 'K', 't_w - ta', COPPER, {
      tex: '\\Delta t',
      says: 'Winding temperature less room temperature.',
    }),
    Kt: formula(
      'torque constant warm',
      'N·m/A',
      'Kt20 * (1 + aB * (t_m - t20))',
      'derived: torque constant in proportion to magnet strength',
      {
        tex: 'K_t',
        says: 'Each ampere makes less torque when the magnets are warm.',
      },
    ),
  },
});
