import { defineSheet, formula, input } from '../sheet/index.ts';

const POWER = 'derived: power balance of motor and drive';

/** Current that one axis takes from the bus. */
export const busCurrent = defineSheet({
  id: 'bus-current',
  title: 'Bus current of an axis',
  about:
    'Current in the motor is not current from the bus: a standing motor at full current takes only its heat. The bus pays for shaft power and heat, nothing more.',
  symbols: {
    T: input('torque the motor makes', 'N·m', { note: 'With its own friction.' }),
    w: input('speed', 'r/min', { tex: '\\omega' }),
    Kt: input('torque constant', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    Vbr: input('voltage lost in the brushes', 'V', { tex: 'V_{br}', domain: 'not negative' }),
    Vb: input('bus voltage', 'V', { tex: 'V_b', domain: 'positive' }),
    eta: input('efficiency of the drive', '%', { tex: '\\eta', domain: 'fraction' }),
    I: formula('motor current', 'A', 'T / Kt', POWER, {
      says: 'Torque divided by the torque each ampere makes.',
    }),
    P: formula('power into the motor', 'W', 'T*w + I^2*R + abs(I)*Vbr', POWER, {
      says: 'Shaft, winding and brushes. Negative while it brakes hard: then it sends power back.',
    }),
    I_bus: formula('current from the bus', 'A', 'P / (Vb*eta)', POWER, {
      tex: 'I_{bus}',
      says: 'Power divided by bus voltage, with what the drive loses on top.',
    }),
  },
});
