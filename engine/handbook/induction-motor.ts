import { defineSheet, formula, input } from '../sheet/index.ts';

const FIELD = 'derivation: the field turns with the frequency, two poles to a turn';
const VF = 'IEC 60034-1 terms; volts in step with frequency, from memory';

export const inductionMotor = defineSheet({
  id: 'induction-motor',
  title: 'Induction motor from its plate, and on an inverter',
  about:
    'The field turns a little faster than the rotor; the difference is the slip, and it makes the torque. On an inverter the volts go up with the frequency until they run out: below that the torque is constant, above it the power. The largest torque before it stalls falls with the square.',
  symbols: {
    Pr: input('power on the plate', 'kW', { domain: 'positive', tex: 'P_r' }),
    f: input('frequency on the plate', 'Hz', { domain: 'positive' }),
    p: input('number of poles', '1', { domain: 'positive', note: '2, 4, 6 or 8: always an even number.' }),
    n: input('speed on the plate', 'r/min', { domain: 'positive' }),
    U: input('voltage on the plate, as it is connected', 'V', { domain: 'positive' }),
    eta: input('efficiency', '%', { domain: 'fraction', tex: '\\eta' }),
    phi: input('power factor, cos φ', '1', { domain: 'fraction', tex: '\\cos\\varphi' }),
    f_d: input('frequency the drive gives', 'Hz', { domain: 'positive', tex: 'f_d' }),
    k: input('pull-out torque over rated torque', '1', { domain: 'positive' }),
    n_s: formula('speed of the field', 'r/min', '4 * pi * f / p', FIELD, {
      says: 'At 50 Hz: 3000 r/min with two poles, 1500 with four, 1000 with six.',
    }),
    n_k: formula('slip in turns', 'r/min', 'n_s - n', 'definition of slip', {
      tex: 'n_k',
      says: 'How much the rotor lags under full load. It stays about the same at other frequencies.',
    }),
    s: formula('slip', '%', 'n_k / n_s', 'definition of slip'),
    T_r: formula('rated torque', 'N·m', 'Pr / n', 'derivation: power is torque times speed', { tex: 'T_r' }),
    I: formula('rated current', 'A', 'Pr / (sqrt(3) * U * eta * phi)', 'derivation: three-phase power', {
      says: 'Three phases carry √3 times volts times amperes; only the share cos φ does work.',
    }),
    U_d: formula('voltage at that frequency', 'V', 'U * min(1, f_d / f)', VF, {
      tex: 'U_d',
      says: 'Half the frequency, half the volts; above the plate’s frequency no more come.',
    }),
    n_d: formula('speed at that frequency, loaded', 'r/min', 'n_s * f_d / f - n_k', VF, {
      tex: 'n_d',
      says: 'The field’s speed there, less the same slip in turns.',
    }),
    n_0: formula('speed at that frequency, idling', 'r/min', 'n_s * f_d / f', FIELD, {
      tex: 'n_0',
      says: 'Without load there is next to no slip: the rotor turns as fast as the field. So does one whose drive makes up for the slip.',
    }),
    T_d: formula('torque for hours at that frequency', 'N·m', 'T_r * min(1, f / f_d)', VF, {
      tex: 'T_d',
      says: 'Constant below the plate’s frequency, falling above it.',
    }),
    T_k: formula('pull-out torque at that frequency', 'N·m', 'k * T_r * min(1, f / f_d)^2', VF, {
      tex: 'T_k',
      says: 'Twice the frequency leaves a quarter: beyond it the motor stalls.',
    }),
  },
});
