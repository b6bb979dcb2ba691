import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { dischargeTime, safeVoltage } from './electrical-constants.ts';
import { numbers } from './numbers.ts';

const DECAY = 'derived: exponential decay of a capacitor through a resistor';

/** Discharge of the bus after switching off. */
export const discharge = defineSheet({
  id: 'discharge',
  title: 'Discharge of the bus',
  about:
    'A charged bus can hurt or kill minutes after the machine is off. A bleeder resistor across the capacitor, never switched, brings it down. Even so: always measure before you touch.',
  symbols: {
    V0: input('highest bus voltage', 'V', { tex: 'V_0', domain: 'positive' }),
    C: input('bus capacitance', 'µF', {
      domain: 'positive',
      note: 'Large capacitors are seldom closer than ± 20 % to what is printed on them. The high end is the worst here: it takes longest to empty.',
    }),
    R: input('bleeder resistor', 'Ω', { domain: 'positive' }),
    R_leak: input('what drains the bus without a bleeder', 'Ω', {
      tex: 'R_{leak}',
      domain: 'positive',
      note: 'From a test: time to half the voltage divided by 0.693 and by the capacitance. Good capacitors hold for many minutes.',
    }),
    V60: safeVoltage,
    t5: dischargeTime,
    R_max: procedure('largest bleeder that is quick enough', 'Ω', {
      tex: 'R_{max}',
      reads: ['V0', 'C', 'V60', 't5'],
      run: (...x) => {
        const [V0, C, V60, t5] = numbers<4>(x);
        return t5 / (C * Math.log(V0 / V60));
      },
      refuses: (...x) =>
        (x[0] as number) > (x[2] as number)
          ? undefined
          : 'the bus never exceeds 60 V, so the standard asks for no bleeder; one is good practice all the same',
      says: 'The resistor that reaches the voltage just in time.',
      source: DECAY,
    }),
    above: formula('volts above the safe voltage', 'V', 'max(0, V0 - V60)', 'derived: difference', {
      says: 'Zero: there is nothing to bring down.',
    }),
    t_60: formula('time to 60 V with the bleeder', 's', 'R*C * max(0, ln(V0/V60))', DECAY, {
      tex: 't_{60}',
      says: 'Zero if the bus never exceeds 60 V.',
    }),
    t_60_leak: formula('time to 60 V without the bleeder', 's', 'R_leak*C * max(0, ln(V0/V60))', DECAY, {
      tex: 't_{60,leak}',
      says: 'How long to wait if the bleeder is missing or has burnt out.',
    }),
    P: formula('power of the bleeder', 'W', 'V0^2 / R', DECAY, {
      says: 'It burns this all the time. Take a part of twice the rating; it gets hot.',
    }),
    E_cap: formula('energy in the bus', 'J', 'C * V0^2 / 2', 'definition of the energy of a capacitor', {
      tex: 'E_C',
      says: 'A few joules hurt, some tens are dangerous.',
    }),
    Q: formula('charge in the bus', 'µC', 'C * V0', 'definition of capacitance', {
      says: 'Parts that hold 60 µC or less are exempt (IEC 60204-1:2016, 6.2.4).',
    }),
  },
});
