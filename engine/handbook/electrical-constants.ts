/** Constants that several electrical sheets share, so that each stands once with its source. */
import { constant } from '../sheet/index.ts';

export const copperConductivity = constant(
  'conductivity of copper at 20 °C',
  'm/(Ω·mm²)',
  '58 m/(Ω·mm²)',
  'IEC 60028 (1925)',
  { tex: '\\gamma' },
);

export const copperZero = constant(
  'temperature at which copper would stop resisting',
  '°C',
  '-235 °C',
  'IEC 60034-1, temperature rise by resistance (from memory)',
  { tex: 't_0' },
);

export const safeVoltage = constant(
  'voltage below which a charged part need not be guarded',
  'V',
  '60 V',
  'IEC 60204-1:2016, 6.2.4',
  { tex: 'V_{60}' },
);

export const dischargeTime = constant(
  'longest time to get there after switching off',
  's',
  '5 s',
  'IEC 60204-1:2016, 6.2.4',
  { tex: 't_5', note: '1 s where the pins of a plug can be touched.' },
);

export const diodeDropLight = constant(
  'drop of one diode at light load',
  'V',
  '0.7 V',
  'common practice, no source',
  {
    tex: 'V_{d0}',
  },
);

export const diodeDropLoaded = constant(
  'drop of one diode under load',
  'V',
  '1.1 V',
  'common practice, no source',
  {
    tex: 'V_d',
  },
);
